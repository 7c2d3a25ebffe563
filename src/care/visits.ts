// What cannot wait for the next round, put into as few comings as will do: visits while the room is closed, and returns
// while it is open.
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import type {OpenTime} from './calendar.ts';
import {
  aboutNoon,
  type Coming,
  type LastTime,
  lastTime,
  MOST_TURNS,
  type Span,
  turnAfter,
} from './following.ts';
import type {Job} from './job.ts';
import {lookDemands} from './look-demands.ts';
import type {CareInput} from './task.ts';
import type {Window} from './window.ts';

export interface Visit extends Span {
  /** Any time between them will do for everything the visit is for. */
  readonly from: Instant;
  readonly to: Instant;
  readonly jobs: readonly Job[];
}

export interface Comings {
  /** On closed time, in order of time. */
  readonly visits: readonly Visit[];
  /** In opening hours, on no round, in order of time. */
  readonly returns: readonly Visit[];
}

/** How far ahead it is thought; a closed spell that begins by then is followed to its end. */
const AHEAD_DAYS = 10;
/** A room that does not open again is followed no further. */
const LONGEST_SPELL_DAYS = 60;

/** The fewest visits and returns that the coming days force. Tasks, days and alerts ask for the same. */
export function comingsOf(jobs: readonly Job[], open: OpenTime, input: CareInput): Comings {
  let comings = known.get(jobs);
  if (comings === undefined) {
    comings = findComings(jobs, open, input);
    known.set(jobs, comings);
  }
  return comings;
}

const known = new WeakMap<readonly Job[], Comings>();

/** A job, and the next time of it that no round is in time for. */
interface Pressing extends Coming {
  readonly job: Job;
  /** In opening hours. */
  readonly isReturn: boolean;
  /** How many times of it were followed; undefined for a look on a closed day, which comes of none. */
  readonly turns?: number | undefined;
}

interface Following {
  readonly open: OpenTime;
  readonly input: CareInput;
  readonly horizon: Instant;
  /** A window as wide always holds a round. */
  readonly gap: number;
}

function findComings(jobs: readonly Job[], open: OpenTime, input: CareInput): Comings {
  const soon = input.now + AHEAD_DAYS * MS_PER_DAY;
  const horizon = open.nextRound(soon) ?? soon + LONGEST_SPELL_DAYS * MS_PER_DAY;
  const following = {open, input, horizon, gap: longestGap(open, input.now, horizon)};
  const pressing = [
    ...jobs.flatMap(job => pressingAfter(lastTime(job, input), job, 0, following) ?? []),
    ...jobs.filter(isLook).flatMap(job => closedLooks(job, following)),
  ];
  if (pressing.length === 0) return {visits: [], returns: []};
  // What is done with something else before its time may save a coming, and may have to be done once more.
  const each = planned(pressing, false, following);
  if (isFewest(each)) return each;
  const together = planned(pressing, true, following);
  return isCheaper(together, each) ? together : each;
}

/** One of the jobs alone asks for as many. */
function isFewest({visits, returns}: Comings): boolean {
  const times = new Map<Job, number>();
  for (const {jobs} of [...visits, ...returns])
    for (const job of jobs) times.set(job, (times.get(job) ?? 0) + 1);
  return Math.max(...times.values()) === visits.length + returns.length;
}

/** Fewer visits count most, then fewer comings, then less to do. */
function isCheaper(a: Comings, b: Comings): boolean {
  const [mine, others] = [costOf(a), costOf(b)];
  const differs = mine.findIndex((cost, i) => cost !== others[i]);
  return differs >= 0 && mine[differs]! < others[differs]!;
}

function costOf({visits, returns}: Comings): readonly number[] {
  const all = [...visits, ...returns];
  return [visits.length, all.length, all.reduce((sum, {jobs}) => sum + jobs.length, 0)];
}

/** @param early whether what has still time is done where somebody comes anyway */
function planned(pressing: readonly Pressing[], early: boolean, following: Following): Comings {
  const comings: {visits: Visit[]; returns: Visit[]} = {visits: [], returns: []};
  let waiting = pressing;
  while (waiting.length > 0) {
    // Somebody comes at the last moment of what ends first, and does all that may be done by then.
    const first = waiting.reduce((a, b) => (b.to < a.to ? b : a));
    const served = waiting.filter(each => joinsFrom(each, first, early) <= first.to);
    const {to} = first;
    const from = Math.max(...served.map(each => joinsFrom(each, first, early)));
    const list = first.isReturn ? comings.returns : comings.visits;
    list.push({from, to, jobs: [...new Set(served.map(({job}) => job))]});
    const done = {from, to, at: first.isReturn ? to : aboutNoon({from, to}, following.input.civil)};
    const later = served.flatMap(({job, turns}) =>
      turns === undefined ? [] : (pressingAfter(done, job, turns, following) ?? []),
    );
    const gone = new Set(served);
    waiting = [...waiting.filter(each => !gone.has(each)), ...later];
  }
  return comings;
}

/** A coming is not squeezed into less than this to save another. */
const SQUEEZED_MS = MS_PER_HOUR / 2;

/** From when on something can be done with what ends first; never where it cannot. */
function joinsFrom({from, to, soonest}: Pressing, first: Pressing, early: boolean): Instant {
  const joins = early ? Math.min(from, Math.max(soonest, first.from)) : from;
  const room = Math.min(SQUEEZED_MS, to - from, first.to - first.from);
  return joins + room <= first.to ? joins : Number.POSITIVE_INFINITY;
}

/** The next time of a job that no round is in time for; undefined where none is to be followed. */
function pressingAfter(
  last: LastTime | undefined,
  job: Job,
  followed: number,
  following: Following,
): Pressing | undefined {
  const {open, input, horizon} = following;
  let before = last;
  for (let turns = followed; turns < MOST_TURNS; ) {
    const window = job.windowAfter(before?.at);
    if (window === null || !isWorthFollowing(window, turns, job, following)) return undefined;
    // What is wanted again at once stands on the list, and nobody has to come back for it.
    if (before !== undefined && window.target <= before.at) return undefined;
    const turn = turnAfter(before, job, open, input, horizon);
    if (turn === undefined) return undefined;
    turns++;
    const {at, visit, back} = turn;
    const coming = visit ?? back;
    // Looks on closed days are asked for by who may come out then, in look-demands.ts.
    if (coming !== undefined && (back !== undefined || !isLook(job)))
      return {...coming, job, isReturn: back !== undefined, turns};
    before = {from: at, to: at, at};
  }
  return undefined;
}

/** Whether this time or one after it may be pressing, which costs something to find out. */
function isWorthFollowing(
  {since, earliest, latest}: Window,
  turns: number,
  job: Job,
  {gap}: Following,
): boolean {
  if (isLook(job)) return turns !== 1 || latest - since < MS_PER_DAY;
  // The next interval in warmth may be much shorter, where the unit was warmed.
  const mayShorten = 'degreeDays' in job.rule.every && turns === 0;
  return latest - earliest < gap || mayShorten;
}

function isLook({rule}: Job): boolean {
  return rule.task === 'look';
}

function closedLooks(job: Job, {open, input}: Following): Pressing[] {
  return lookDemands(job, open, input)
    .filter(({from, to}) => from <= to)
    .map(demand => ({...demand, soonest: demand.from, isReturn: false}));
}

/** The longest time from one round to the next that lies ahead. */
function longestGap(open: OpenTime, now: Instant, horizon: Instant): number {
  let longest = 0;
  let round: Instant | null = now;
  while (round !== null && round < horizon) {
    const next = open.nextRound(round + 1);
    longest = next === null ? Number.POSITIVE_INFINITY : Math.max(longest, next - round);
    round = next;
  }
  return longest;
}
