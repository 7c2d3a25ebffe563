// The tasks of a room on a day: what its jobs come to, with their windows and how they stand.
import type {Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import type {Lot} from '../records/state.ts';
import {amountOf} from './amounts.ts';
import {type OpenTime, openTimeOf} from './calendar.ts';
import type {Job} from './job.ts';
import {jobsOf} from './jobs.ts';
import {levelled} from './levelling.ts';
import {openMoment} from './open-moment.ts';
import type {CareInput, Task, TaskState} from './task.ts';
import {minutesOf} from './time-needed.ts';
import {titleOf} from './titles.ts';
import {whyOf} from './why.ts';
import type {Window} from './window.ts';

/** The day that is asked about. */
interface Today {
  readonly input: CareInput;
  readonly open: OpenTime;
  readonly day: Day;
  readonly start: Instant;
  readonly end: Instant;
  /** As if asked then: now, on any other day its beginning, or its end where it is over. */
  readonly asked: Instant;
  /** When the next turn of what can be moved is best done. */
  readonly moments: ReadonlyMap<Job, Instant>;
}

/**
 * Every task of the room's living lots and of the units they live in: for each the next time it is wanted, however
 * far off (`early`), and what was done on the day asked about. Not in any order; see round.ts for a day's list.
 */
export function careTasks(input: CareInput): Task[] {
  const open = openTimeOf(input.state.calendar, input.civil);
  const jobs = jobsOf(input, open);
  const today = todayOf(input, open, levelled(jobs, open, input));
  return jobs.flatMap(job => tasksOf(job, today));
}

function todayOf(input: CareInput, open: OpenTime, moments: Today['moments']): Today {
  const {civil, now} = input;
  const day = input.day ?? civil.dayOf(now);
  const start = civil.at(day, '00:00');
  const end = civil.at(civil.addDays(day, 1), '00:00');
  return {input, open, day, start, end, asked: Math.min(Math.max(now, start), end - 1), moments};
}

/** What was done on the day, each time against the window that was open then, and what comes next. */
function tasksOf(job: Job, today: Today): Task[] {
  const tasks: Task[] = [];
  let last = job.lastDone(today.start - 1);
  for (const deed of job.deeds) {
    if (deed.skipped !== undefined || deed.at < today.start || deed.at >= today.end) continue;
    const task = taskOf(job, last, today);
    const due = task !== undefined && (tasks.length === 0 || task.state !== 'early');
    if (due) tasks.push({...distinct(task, tasks), state: 'done', done: {at: deed.at, by: deed.by}});
    last = deed.at;
  }
  const next = taskOf(job, job.lastDone(today.end - 1), today);
  return next === undefined ? tasks : [...tasks, distinct(next, tasks)];
}

/** Twice on one day has a number behind its day. */
function distinct(task: Task, before: readonly Task[]): Task {
  const alike = before.filter(({id}) => id === task.id || id.startsWith(`${task.id}.`)).length;
  return alike === 0 ? task : {...task, id: `${task.id}.${alike + 1}`};
}

function taskOf(job: Job, last: Instant | undefined, today: Today): Task | undefined {
  const window = job.windowAfter(last);
  if (window === null) return undefined;
  const {rule, unit, lot, lots} = job;
  const {civil, now, emergence} = today.input;
  const plain = openMoment(window, today.open, civil);
  const isNext = last === job.lastDone(now);
  const even = isNext ? today.moments.get(job) : undefined;
  const planned = even ?? plain;
  const dueDay = civil.dayOf(plain ?? window.target);
  const outlook = emergence.get(lot?.code ?? '');
  return {
    id: `${rule.code}:${lot?.code ?? unit.code}:${dueDay}`,
    rule: rule.code,
    task: rule.task,
    title: titleOf(job),
    amount: amountOf(job),
    unit: unit.code,
    lot: lot?.code ?? null,
    lots: lots.map(({code}) => code),
    place: unit.place,
    since: window.since,
    earliest: window.earliest,
    target: window.target,
    latest: window.latest,
    planned,
    state: stateOf(window, civil.dayOf(planned ?? window.target), today),
    harm: rule.harm,
    observe: rule.observe,
    deadOf: deadOf(lots),
    caution: rule.caution ?? cautionOf(lots, today.input) ?? null,
    get why() {
      return whyOf({
        job,
        window,
        last: last === window.since ? last : undefined,
        planned,
        levelled: even !== undefined && (plain === null || civil.dayOf(even) !== dueDay),
        outlook,
        now,
        civil,
      });
    },
    minutes: minutesOf(job),
    skipped: skippedOn(job, last, today),
  };
}

/** What was wanted from the first moment on is late only when its limit has passed, not on the next morning. */
function stateOf({since, target, latest}: Window, dueDay: Day, {day, asked}: Today): TaskState {
  if (latest < asked) return 'overdue';
  if (dueDay < day) return target === since ? 'due' : 'overdue';
  return dueDay === day ? 'due' : 'early';
}

function deadOf(lots: readonly Lot[]): Task['deadOf'] {
  const [lot, ...others] = lots;
  if (lot === undefined || others.length > 0 || lot.counted !== 'exact' || isHidden(lot)) return null;
  const [stage, ...more] = Object.keys(lot.alive).filter(each => lot.alive[each]! > 0);
  return stage === undefined || more.length > 0 ? null : {lot: lot.code, stage};
}

/** What the profiles of its lots warn of, where the rule itself does not. */
function cautionOf(lots: readonly Lot[], {profiles}: CareInput): string | undefined {
  for (const {candidates} of lots)
    for (const {profile} of candidates) {
      const [caution] = profiles.get(profile)?.cautions ?? [];
      if (caution !== undefined) return caution;
    }
  return undefined;
}

/** The last time it could not be done on this day, until the next round begins. */
function skippedOn(
  {deeds}: Job,
  last: Instant | undefined,
  {open, start, end, asked}: Today,
): Task['skipped'] {
  const deed = deeds.findLast(
    ({at, skipped}) => skipped !== undefined && at >= start && at < end && at >= (last ?? start),
  );
  if (deed?.skipped === undefined) return undefined;
  const next = open.nextRound(deed.at + 1);
  return next !== null && next <= asked ? undefined : {at: deed.at, by: deed.by, why: deed.skipped};
}
