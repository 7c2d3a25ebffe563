// Visits that closed days force: what cannot wait until the room opens again, put into as few visits as will do.
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import type {OpenTime} from './calendar.ts';
import type {Demand} from './demand.ts';
import type {Job} from './job.ts';
import {lookDemands} from './look-demands.ts';
import {openMoment} from './open-moment.ts';
import type {CareInput} from './task.ts';
import type {Window} from './window.ts';

export interface Visit {
  /** Any time between them will do for everything the visit is for. */
  readonly from: Instant;
  readonly to: Instant;
  readonly jobs: readonly Job[];
}

/** How far ahead closed days are thought through. */
const AHEAD_DAYS = 10;
/** Nobody comes within a shorter time than this. */
const SHORTEST_VISIT_MS = 6 * MS_PER_HOUR;
/** No task is done more often in that time. */
const MOST_STEPS = 40;

/** The fewest visits that the coming closed days force, in order of time. */
export function visitsOf(jobs: readonly Job[], open: OpenTime, input: CareInput): Visit[] {
  const gap = longestGap(open, input.now);
  const demands = jobs.flatMap(job =>
    job.rule.task === 'look' ? lookDemands(job, open, input) : careDemands(job, open, input, gap),
  );
  return fewest(demands);
}

/** As if everything were done when it is planned, and each visit were made about noon of its last day. */
function careDemands(job: Job, open: OpenTime, input: CareInput, gap: number): Demand[] {
  const {now} = input;
  const horizon = now + AHEAD_DAYS * MS_PER_DAY;
  const demands: Demand[] = [];
  const soonest = open.isOpenAt(now) ? now : (open.nextRound(now) ?? horizon);
  let last = job.lastDone(now);
  for (let step = 0; step < MOST_STEPS; step++) {
    const window = job.windowAfter(last);
    if (window === null || window.target > horizon || window.latest - window.earliest >= gap) break;
    const moment = momentFor(window, soonest, open, input);
    if (moment === null) {
      const demand = demandOf(window, job, open, now);
      demands.push(demand);
      last = visitedAt(demand, input);
    } else {
      last = moment;
    }
  }
  return demands;
}

/** A visit is wanted late enough that the next round is in time again, where that leaves some hours for it. */
function demandOf({earliest, latest, since}: Window, job: Job, open: OpenTime, now: Instant): Demand {
  const soonest = Math.max(earliest, now);
  const safe = (open.nextRound(latest) ?? latest) - (latest - since);
  const from = safe > soonest && latest - safe >= SHORTEST_VISIT_MS ? safe : soonest;
  return {from, to: latest, job};
}

function visitedAt({from, to}: Demand, {civil}: CareInput): Instant {
  return Math.min(to, Math.max(from, civil.at(civil.dayOf(to), '12:00')));
}

/** When it will be done: as planned, or as soon as there is somebody where that has passed. Null: not in time. */
function momentFor(
  window: Window,
  soonest: Instant,
  open: OpenTime,
  {civil, now}: CareInput,
): Instant | null {
  const planned = openMoment(window, open, civil);
  if (planned !== null && planned >= soonest) return planned;
  if (now <= window.latest && (planned === null || window.latest < soonest)) return null;
  return Math.max(soonest, window.earliest);
}

/** The longest time from one round to the next that lies ahead. A window as wide always holds a round. */
function longestGap(open: OpenTime, now: Instant): number {
  let longest = 0;
  let round: Instant | null = now;
  while (round !== null && round <= now + AHEAD_DAYS * MS_PER_DAY) {
    const next = open.nextRound(round + 1);
    longest = next === null ? Number.POSITIVE_INFINITY : Math.max(longest, next - round);
    round = next;
  }
  return longest;
}

/** Each visit is made at the last moment of the demand that ends first, and serves all that have begun by then. */
function fewest(demands: readonly Demand[]): Visit[] {
  const visits: Visit[] = [];
  let waiting = demands.filter(({from, to}) => from <= to).sort((a, b) => a.to - b.to);
  while (waiting.length > 0) {
    const {to} = waiting[0]!;
    const served = waiting.filter(({from}) => from <= to);
    visits.push({
      from: Math.max(...served.map(({from}) => from)),
      to,
      jobs: [...new Set(served.map(({job}) => job))],
    });
    waiting = waiting.filter(({from}) => from > to);
  }
  return visits;
}
