// When to look for adults: planned from the forecast, by the rule's interval where there is none.
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import type {Profile} from '../records/schema/index.ts';
import type {Lot, Rule} from '../records/state.ts';
import type {OpenTime} from './calendar.ts';
import type {Deed, Ledger} from './ledger.ts';
import {mayEmerge, since, stagesOf} from './stages.ts';
import type {UnitType} from './start-rule.ts';
import {isStartRule} from './start-rules.ts';
import type {EmergenceOutlook} from './task.ts';
import {type Clock, type Window, windowOf} from './window.ts';

/** Once an adult is out, daily looks go on for so long after the last one. Common practice, no source. */
const DAILY_AFTER_ADULT_DAYS = 14;
/** The first look may not be later than this before one in twenty animals is out. */
const SHORTEST_LEAD_DAYS = 1;

export interface LookCase {
  readonly lot: Lot;
  readonly type: UnitType;
  readonly outlook: EmergenceOutlook | undefined;
  /** How long an adult of this kind may wait unseen. */
  readonly holdHours: number;
  readonly last: Instant | undefined;
  readonly lots: ReadonlyMap<string, Lot>;
}

/** When the next look is wanted; null where no adult can be near. */
export function lookWindow(rule: Rule, each: LookCase, open: OpenTime, clock: Clock): Window | null {
  const {outlook, lot} = each;
  if (outlook === undefined) return byInterval(rule, each, clock);
  const {startChecking, nextCheck} = outlook;
  if (startChecking === null && nextCheck === null)
    return isHidden(lot) ? byInterval(rule, each, clock) : null;
  return byForecast(rule, each, outlook, open);
}

function byForecast(
  rule: Rule,
  {lot, last, holdHours}: LookCase,
  {startChecking, nextCheck, p05}: EmergenceOutlook,
  open: OpenTime,
): Window | null {
  const start = Math.max(Math.round(startChecking ?? nextCheck!), lot.startedAt);
  if (last === undefined || last < start) {
    const latest = p05 === null ? start : Math.max(start, Math.round(p05) - SHORTEST_LEAD_DAYS * MS_PER_DAY);
    return {since: last ?? lot.startedAt, earliest: start, target: start, latest};
  }
  if (nextCheck === null) return null;
  const hold = holdMs(rule, holdHours);
  const within = momentWithin(last, hold, open);
  // The forecast plans for what the kind bears; where the room's own rule lets adults wait longer, that rule plans.
  const bearsMore = hold > holdHours * MS_PER_HOUR;
  const target = nextCheck > last && !bearsMore ? Math.min(Math.round(nextCheck), within) : within;
  return {
    since: last,
    earliest: Math.min(target, last + hold / 2),
    target,
    latest: Math.max(target, last + hold),
  };
}

/** How long an adult may wait unseen: the shortest that any of a lot's candidates allows, else a day (common practice, no source). */
export function holdHoursOf({candidates}: Lot, profiles: ReadonlyMap<string, Profile>): number {
  const hours = candidates.flatMap(({profile}) => profiles.get(profile)?.adult.holdHours ?? []);
  return hours.length === 0 ? 24 : Math.min(...hours);
}

/**
 * How long an adult may wait unseen, ms. A start value says how often to look without a forecast; a rule of the room's
 * own also with one, shorter or longer than the kind bears.
 */
export function holdMs(rule: Rule, kindHours: number): number {
  return ownHoldMs(rule) ?? kindHours * MS_PER_HOUR;
}

/** What the room's own rule says of it; undefined where it says nothing. */
export function ownHoldMs(rule: Rule): number | undefined {
  return isStartRule(rule) || !('days' in rule.every) ? undefined : rule.every.days * MS_PER_DAY;
}

/** A second look on one day comes no sooner than after this share of the hold time. Common practice, no source. */
const SOONEST_SHARE = 0.25;

/**
 * When to look next so that nobody waits longer than `hold` since a look, and looks are as few as can be: the last
 * round in time; where none is, the last moment of opening hours; else the first round after.
 */
export function momentWithin(last: Instant, hold: number, open: OpenTime): Instant {
  const round = open.previousRound(last + hold);
  if (round !== null && round > last) return round;
  const moment = open.lastMoment(last + hold);
  if (moment !== null && moment >= last + SOONEST_SHARE * hold) return moment;
  return open.nextRound(last + hold) ?? last + hold;
}

function byInterval(rule: Rule, {lot, type, last, lots}: LookCase, clock: Clock): Window | null {
  const near = isHidden(lot) || type === 'emergence-box' || stagesOf(lot).some(mayEmerge);
  if (!near) return null;
  const emerged = lot.sightings.findLast(({kind}) => kind === 'emergence')?.at;
  const from = Math.max(last ?? 0, type === 'emergence-box' ? lot.startedAt : since(lot, mayEmerge, lots));
  const daily = emerged !== undefined && from - emerged <= DAILY_AFTER_ADULT_DAYS * MS_PER_DAY;
  if (!daily) return windowOf(rule, from, lot.code, clock);
  return {
    since: from,
    earliest: clock.after(from, 0.5),
    target: clock.after(from, 1),
    latest: clock.after(from, 1.5),
  };
}

/** Every look at a lot, in order of time: the checks, complete counts and emergences too. */
export function lookDeeds(lot: Lot, ledger: Ledger): readonly Deed[] {
  const care = ledger.ofLot('look', lot);
  const seen = new Set(care.filter(({skipped}) => skipped === undefined).map(({at}) => at));
  const others = lot.looks.filter(at => !seen.has(at)).map(at => ({at, by: whoLooked(lot, at)}));
  return [...care, ...others].sort((a, b) => a.at - b.at);
}

function whoLooked(lot: Lot, at: Instant): string {
  const entry = lot.entries.find(
    ({record}) => 'at' in record && record.at !== undefined && Date.parse(record.at) === at,
  );
  return entry?.by ?? '';
}
