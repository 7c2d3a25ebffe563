// Can it wait? What falls due before a later round, how long each is safe, and what would make it safe.
import type {Instant} from '../records/entry.ts';
import {type OpenTime, openTimeOf} from './calendar.ts';
import type {Job} from './job.ts';
import {jobsOf} from './jobs.ts';
import type {CareInput} from './task.ts';
import {titleOf} from './titles.ts';
import {compareNaturally} from './walking-order.ts';

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
  const last = lastMomentBefore(until, open, now);
  if (last < window.earliest) {
    const from = Math.max(now, window.earliest);
    return {...said, canWait: false, cure: 'visit', visit: {from, to: window.latest}};
  }
  const done = Math.max(window.earliest, Math.min(last, window.latest), now);
  const next = job.windowAfter(done);
  if (next === null || next.latest >= until) return {...said, canWait: false, cure: 'now'};
  return {...said, canWait: false, cure: 'now-and-visit', visit: {from: next.earliest, to: next.latest}};
}

/** The last moment of open time before the round that is waited for. */
function lastMomentBefore(until: Instant, open: OpenTime, now: Instant): Instant {
  return Math.max(now, open.lastMoment(until - 1) ?? now);
}
