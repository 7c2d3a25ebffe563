// Visits that closed days force: what cannot wait until the room opens again, put into as few visits as will do.
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {OpenTime} from './calendar.ts';
import type {Demand} from './demand.ts';
import {turnsOf} from './following.ts';
import type {Job} from './job.ts';
import {lookDemands} from './look-demands.ts';
import type {CareInput} from './task.ts';

export interface Visit {
  /** Any time between them will do for everything the visit is for. */
  readonly from: Instant;
  readonly to: Instant;
  readonly jobs: readonly Job[];
}

/** How far ahead closed days are thought through; a spell that begins by then is followed to its end. */
const AHEAD_DAYS = 10;
/** A room that does not open again is followed no further. */
const LONGEST_SPELL_DAYS = 60;

/** The fewest visits that the coming closed days force, in order of time. */
export function visitsOf(jobs: readonly Job[], open: OpenTime, input: CareInput): Visit[] {
  const soon = input.now + AHEAD_DAYS * MS_PER_DAY;
  const horizon = open.nextRound(soon) ?? soon + LONGEST_SPELL_DAYS * MS_PER_DAY;
  const gap = longestGap(open, input.now, horizon);
  const demands = jobs.flatMap(job =>
    job.rule.task === 'look' ? lookDemands(job, open, input) : careDemands(job, open, input, horizon, gap),
  );
  return fewest(demands);
}

function careDemands(job: Job, open: OpenTime, input: CareInput, horizon: Instant, gap: number): Demand[] {
  const demands: Demand[] = [];
  for (const {window, visit} of turnsOf(job, open, input, horizon)) {
    if (window.latest - window.earliest >= gap) break;
    if (visit !== undefined) demands.push({...visit, job});
  }
  return demands;
}

/** The longest time from one round to the next that lies ahead. A window as wide always holds a round. */
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
