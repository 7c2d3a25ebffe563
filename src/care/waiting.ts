// Can it wait? What falls due before a later round, how long each is safe, and what would make it safe.
import type {Instant} from '../records/entry.ts';
import {type OpenTime, openTimeOf} from './calendar.ts';
import type {Job} from './job.ts';
import {jobsOf} from './jobs.ts';
import type {CareInput} from './task.ts';
import {titleOf} from './titles.ts';
import {comingsOf, type Visit} from './visits.ts';
import {compareNaturally} from './walking-order.ts';
import type {Window} from './window.ts';

export interface WaitingTask {
  readonly task: string;
  readonly title: string;
  readonly unit: string;
  readonly lot: string | null;
  readonly place: string;
  readonly canWait: boolean;
  /** Later is too late. */
  readonly safeUntil: Instant;
  /**
   * What makes it safe: nothing; doing it now, or at the last moment before the room closes; somebody who comes; or
   * both, where doing it now does not last.
   */
  readonly cure: 'nothing' | 'now' | 'visit' | 'now-and-visit';
  /** When a visit is wanted, where one is. */
  readonly visit?: {readonly from: Instant; readonly to: Instant} | undefined;
}

/** The first round after the next closed day; the next round of another day where no day is closed in two weeks. */
export function nextAfterClosing(open: OpenTime, {civil, now}: CareInput): Instant | null {
  let day = civil.dayOf(now);
  for (let step = 0; step < 14; step++) {
    day = open.neighbour(day, 1);
    if (!open.isOpen(day)) return open.nextRound(civil.at(day, '00:00'));
  }
  return open.nextRound(civil.at(civil.addDays(civil.dayOf(now), 1), '00:00'));
}

/** What would be due before then, in walking order; looking for adults is another question. */
export function waitingTasks(input: CareInput, until: Instant): WaitingTask[] {
  const open = openTimeOf(input.state.calendar, input.civil);
  return jobsOf(input, open)
    .filter(({rule}) => rule.task !== 'look')
    .flatMap(job => waitingTask(job, until, open, input) ?? [])
    .sort(
      (a, b) =>
        compareNaturally(a.place, b.place) || compareNaturally(a.unit, b.unit) || a.safeUntil - b.safeUntil,
    );
}

function waitingTask(job: Job, until: Instant, open: OpenTime, {now}: CareInput): WaitingTask | undefined {
  const window = job.windowAfter(job.lastDone(now));
  if (window === null || window.target >= until) return undefined;
  const {rule, unit, lot} = job;
  const said = {
    task: rule.task,
    title: titleOf(job),
    unit: unit.code,
    lot: lot?.code ?? null,
    place: unit.place,
    safeUntil: window.latest,
  };
  if (window.latest >= until) return {...said, canWait: true, cure: 'nothing'};
  const done = doneBefore(window, until, open, now);
  if (done === undefined) {
    const from = Math.max(now, window.earliest);
    return {...said, canWait: false, cure: 'visit', visit: {from, to: window.latest}};
  }
  const next = job.windowAfter(done);
  if (next === null || next.latest >= until) return {...said, canWait: false, cure: 'now'};
  return {...said, canWait: false, cure: 'now-and-visit', visit: {from: next.earliest, to: next.latest}};
}

/** Nothing is done more often than this before the room closes. */
const MOST_TIMES = 20;

/** The visits on closed time that waiting costs, where all else that cannot wait is done as late as the room is open. */
export function visitsWhileWaiting(jobs: readonly Job[], until: Instant, input: CareInput): Visit[] {
  const open = openTimeOf(input.state.calendar, input.civil);
  const {now} = input;
  const doneLate = jobs.map(job => {
    let last = job.lastDone(now);
    for (let times = 0; times < MOST_TIMES && job.rule.task !== 'look'; times++) {
      const window = job.windowAfter(last);
      const done =
        window === null || window.latest >= until ? undefined : doneBefore(window, until, open, now);
      if (done === undefined || (last !== undefined && done <= last)) break;
      last = done;
    }
    return {...job, lastDone: () => last};
  });
  return comingsOf(doneLate, open, input).visits.filter(({to}) => to < until);
}

/** When it can still be done before the room closes; undefined where that is too soon. */
function doneBefore(
  {earliest, latest}: Window,
  until: Instant,
  open: OpenTime,
  now: Instant,
): Instant | undefined {
  const last = lastMomentBefore(until, open, now);
  return last < earliest ? undefined : Math.max(earliest, Math.min(last, latest), now);
}

/** The last moment of open time before the round that is waited for. */
function lastMomentBefore(until: Instant, open: OpenTime, now: Instant): Instant {
  return Math.max(now, open.lastMoment(until - 1) ?? now);
}
