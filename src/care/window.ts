// When a task may be done: its window, counted from when it was really done last.
import type {Civil} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {Rule} from '../records/state.ts';
import type {InstantAfterDegreeDays} from './task.ts';

export interface Window {
  /** From when the time runs. */
  readonly since: Instant;
  /** Sooner is too soon. */
  readonly earliest: Instant;
  /** When the rule wants it. */
  readonly target: Instant;
  /** Later is too late. */
  readonly latest: Instant;
}

/** Where a rule does not say, how early and how late it may be, as shares of its interval. Common practice, no source. */
const EARLIEST_SHARE = 0.5;
const LATEST_SHARE = 1.5;

/** Where a lot's temperatures are not known, its degree-days are counted as if at 20 °C. */
export const REFERENCE_C = 20;

/**
 * However cold, an interval in degree-days is not longer than two weeks, or than twice what it is at 20 °C where that is
 * more, unless the rule itself says how late it may be. Common practice, no source.
 */
const LONGEST_DAYS = 14;
const LONGEST_SHARE = 2;

export interface Clock {
  /** So many days on: whole days keep the time of day, also where the clocks change; the rest is hours. */
  after(from: Instant, days: number): Instant;
  readonly instantAfterDegreeDays: InstantAfterDegreeDays;
}

export function clockOf(civil: Civil, instantAfterDegreeDays: InstantAfterDegreeDays): Clock {
  return {
    after(from, days) {
      const whole = Math.floor(days);
      const there = from + whole * MS_PER_DAY;
      return there + civil.offsetMs(from) - civil.offsetMs(there) + (days - whole) * MS_PER_DAY;
    },
    instantAfterDegreeDays,
  };
}

/**
 * The window of a rule from when it was last done. With an interval in degree-days the limits that the rule does
 * not give in days scale with the warmth as the target does.
 * @param lot the lot whose warmth counts
 */
export function windowOf(rule: Rule, since: Instant, lot: string, clock: Clock): Window {
  const latest = limitOf(rule, rule.latestDays, LATEST_SHARE, since, lot, clock);
  const target = Math.min(instantAtShare(rule, since, 1, lot, clock), latest);
  const earliest = Math.min(limitOf(rule, rule.earliestDays, EARLIEST_SHARE, since, lot, clock), target);
  return {since, earliest, target, latest: Math.max(latest, target)};
}

/** As many days as the rule says, else that share of its interval. */
function limitOf(
  rule: Rule,
  days: number | undefined,
  share: number,
  since: Instant,
  lot: string,
  clock: Clock,
): Instant {
  return days === undefined ? instantAtShare(rule, since, share, lot, clock) : clock.after(since, days);
}

/** The first window of a task that is wanted as soon as there is something to do it for. */
export function firstWindow(rule: Rule, since: Instant, lot: string, clock: Clock): Window {
  return {since, earliest: since, target: since, latest: windowOf(rule, since, lot, clock).target};
}

function instantAtShare(
  {every, latestDays}: Rule,
  since: Instant,
  share: number,
  lot: string,
  clock: Clock,
): Instant {
  if ('days' in every) return clock.after(since, every.days * share);
  const at = clock.instantAfterDegreeDays(lot, since, every.degreeDays * share, every.lower);
  if (at === null) return clock.after(since, daysAtReference(every) * share);
  return Math.round(
    latestDays === undefined ? Math.min(at, clock.after(since, longestDays(every) * share)) : at,
  );
}

/** The longest that cold makes an interval in degree-days. */
export function longestDays(every: {degreeDays: number; lower: number}): number {
  return Math.max(LONGEST_DAYS, LONGEST_SHARE * daysAtReference(every));
}

/** How many days an interval in degree-days takes at 20 °C. */
export function daysAtReference({degreeDays, lower}: {degreeDays: number; lower: number}): number {
  return degreeDays / Math.max(1, REFERENCE_C - lower);
}
