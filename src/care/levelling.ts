// Work that can wait is spread over the days of its window, so that it does not all fall on the first day after a weekend.
import type {Day} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {OpenTime} from './calendar.ts';
import {turnsOf} from './following.ts';
import type {Job} from './job.ts';
import {momentsOn, openMoment} from './open-moment.ts';
import type {CareInput} from './task.ts';
import {minutesOf} from './time-needed.ts';
import type {Window} from './window.ts';

/** Work is moved about within so many days. */
const AHEAD_DAYS = 14;
/** What comes back within twice this falls on all days nearly alike and levels nothing. */
const RECURS_DAYS = 1.5;
/** Only the middle of a window is used: the rest is for what comes between. Common practice, no source. */
const MIDDLE_SHARE = 2 / 3;

/**
 * When the next turn of each movable job is best done: a moment in the middle of its window, on the open day with
 * the least work. A job is only moved where that makes the fullest of the two days less full. What causes much harm when
 * missed is not moved, nor what is wanted at an hour.
 */
export function levelled(jobs: readonly Job[], open: OpenTime, input: CareInput): ReadonlyMap<Job, Instant> {
  const movable = jobs.flatMap(job => {
    const days = daysToChoose(job, open, input);
    return days === undefined ? [] : [days];
  });
  const moments = new Map<Job, Instant>();
  if (!movable.some(({choice}) => choice.size > 1)) return moments;
  const load = loadOf(jobs, new Set(movable.map(({job}) => job)), open, input);
  const add = (day: Day, minutes: number) => load.set(day, (load.get(day) ?? 0) + minutes);
  const chosenFirst = movable.toSorted(
    (a, b) =>
      a.choice.size - b.choice.size || a.plainAt - b.plainAt || (nameOf(a.job) < nameOf(b.job) ? -1 : 1),
  );
  for (const {job, choice, plainDay} of chosenFirst) {
    const minutes = minutesOf(job);
    const full = (day: Day) => load.get(day) ?? 0;
    let best = choice.has(plainDay) ? plainDay : [...choice.keys()][0]!;
    for (const day of choice.keys()) if (full(day) < full(best) - EVEN_ENOUGH_MINUTES) best = day;
    add(best, minutes);
    moments.set(job, choice.get(best)!);
  }
  return moments;
}

/** Nothing is moved for less. */
const EVEN_ENOUGH_MINUTES = 1;

interface Movable {
  readonly job: Job;
  /** The open days to choose from, each with its moment, in order of time. Never empty. */
  readonly choice: ReadonlyMap<Day, Instant>;
  readonly plainDay: Day;
  readonly plainAt: Instant;
}

/** Undefined for a job that cannot be moved, or need not be yet. */
function daysToChoose(job: Job, open: OpenTime, input: CareInput): Movable | undefined {
  const {civil, now} = input;
  if (job.rule.harm === 'high' || job.rule.task === 'look') return undefined;
  const window = job.windowAfter(job.lastDone(now));
  if (window === null || !isWide(window) || window.earliest > now + AHEAD_DAYS * MS_PER_DAY) return undefined;
  const middle = middleOf(window);
  const choice = new Map<Day, Instant>();
  const today = civil.dayOf(now);
  const last = civil.dayOf(middle.latest);
  for (let day = latestOf(civil.dayOf(middle.earliest), today); day <= last; day = open.neighbour(day, 1)) {
    const [moment] = momentsOn(day, middle, open);
    if (moment !== undefined) choice.set(day, moment);
  }
  if (choice.size === 0) return undefined;
  const plainAt = openMoment(window, open, civil) ?? window.target;
  return {job, choice, plainAt, plainDay: civil.dayOf(plainAt)};
}

function isWide({earliest, target, latest}: Window): boolean {
  return target > earliest && latest - earliest >= RECURS_DAYS * 2 * MS_PER_DAY;
}

function middleOf({since, earliest, target, latest}: Window): Window {
  return {
    since,
    target,
    earliest: target - MIDDLE_SHARE * (target - earliest),
    latest: target + MIDDLE_SHARE * (latest - target),
  };
}

/** Minutes by day of what is not moved, and of what was done today of the rest. */
function loadOf(
  jobs: readonly Job[],
  movable: ReadonlySet<Job>,
  open: OpenTime,
  input: CareInput,
): Map<Day, number> {
  const {civil, now} = input;
  const load = new Map<Day, number>();
  const add = (day: Day, minutes: number) => load.set(day, (load.get(day) ?? 0) + minutes);
  const today = civil.dayOf(now);
  const horizon = now + AHEAD_DAYS * MS_PER_DAY;
  for (const job of jobs) {
    if (recursDays(job) <= 2 * RECURS_DAYS) continue;
    const done = job.deeds.findLast(({skipped}) => skipped === undefined);
    if (done !== undefined && civil.dayOf(done.at) === today) add(today, minutesOf(job));
    if (movable.has(job)) continue;
    for (const {at} of turnsOf(job, open, input, horizon)) add(civil.dayOf(at), minutesOf(job));
  }
  return load;
}

function recursDays({rule: {every}}: Job): number {
  return 'days' in every ? every.days : every.degreeDays / 10;
}

function nameOf({rule, lot, unit}: Job): string {
  return `${rule.code} ${lot?.code ?? unit.code}`;
}

function latestOf(a: Day, b: Day): Day {
  return a > b ? a : b;
}
