// The tasks of a room on a day: what its jobs come to, with their windows and how they stand.
import type {Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import type {Lot} from '../records/state.ts';
import {amountOf} from './amounts.ts';
import {type OpenTime, openTimeOf} from './calendar.ts';
import type {Job} from './job.ts';
import {jobsOf} from './jobs.ts';
import type {Deed} from './ledger.ts';
import {levelled} from './levelling.ts';
import {openMoment} from './open-moment.ts';
import type {CareInput, Standing, Task, TaskState} from './task.ts';
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

/** One turn of a job: how it stands, and what its task is told from. */
export interface Turn {
  readonly standing: Standing;
  readonly job: Job;
  /** When it was done before; undefined when it never was. */
  readonly last: Instant | undefined;
  /** It was moved to a day with less work. */
  readonly levelled: boolean;
}

/**
 * Every task of the room's living lots and of the units they live in: for each the next time it is wanted, however
 * far off (`early`), and what was done on the day asked about. Not in any order; see round.ts for a day's list.
 */
export function careTasks(input: CareInput): Task[] {
  return turnsToday(input).map(turn => taskOf(turn, input));
}

/** The same, but only how each stands. */
export function turnsToday(input: CareInput): Turn[] {
  const open = openTimeOf(input.state.calendar, input.civil);
  const jobs = jobsOf(input, open);
  const today = todayOf(input, open, levelled(jobs, open, input));
  return jobs.flatMap(job => turnsOfJob(job, today));
}

/** The day that is asked about. */
export function askedDay({day, civil, now}: CareInput): Day {
  return day ?? civil.dayOf(now);
}

/** A turn in all that a person needs to do it. */
export function taskOf({standing, job, last, levelled: isLevelled}: Turn, input: CareInput): Task {
  const {rule, lot, lots} = job;
  const {civil, now, emergence} = input;
  const {id, task, unit, place, since, earliest, target, latest, planned, state, harm} = standing;
  // Why only when it is asked for: a large room has a thousand tasks on one day.
  return {
    id,
    rule: rule.code,
    task,
    title: titleOf(job),
    amount: amountOf(job),
    unit,
    lot: lot?.code ?? null,
    lots: lots.map(({code}) => code),
    place,
    since,
    earliest,
    target,
    latest,
    planned,
    state,
    harm,
    observe: rule.observe,
    deadOf: deadOf(lots),
    caution: rule.caution ?? cautionOf(lots, input) ?? null,
    why: () =>
      whyOf({
        job,
        window: standing,
        last: last === since ? last : undefined,
        planned,
        levelled: isLevelled,
        outlook: emergence.get(lot?.code ?? ''),
        now,
        civil,
      }),
    minutes: standing.minutes,
    done: standing.done,
    skipped: standing.skipped,
  };
}

function todayOf(input: CareInput, open: OpenTime, moments: Today['moments']): Today {
  const {civil, now} = input;
  const day = askedDay(input);
  const start = civil.at(day, '00:00');
  const end = civil.at(civil.addDays(day, 1), '00:00');
  return {input, open, day, start, end, asked: Math.min(Math.max(now, start), end - 1), moments};
}

/** What was done on the day, each time against the window that was open then, and what comes next. */
function turnsOfJob(job: Job, today: Today): Turn[] {
  const turns: Turn[] = [];
  let last = job.lastDone(today.start - 1);
  for (const deed of job.deeds) {
    if (deed.skipped !== undefined || deed.at < today.start || deed.at >= today.end) continue;
    const turn = turnAfter(last, job, today);
    const due = turn !== undefined && (turns.length === 0 || turn.standing.state !== 'early');
    if (due) turns.push(doneBy(deed, distinct(turn, turns)));
    last = deed.at;
  }
  const next = turnAfter(job.lastDone(today.end - 1), job, today);
  return next === undefined ? turns : [...turns, distinct(next, turns)];
}

function doneBy({at, by}: Deed, turn: Turn): Turn {
  return {...turn, standing: {...turn.standing, state: 'done', done: {at, by}}};
}

/** Twice on one day has a number behind its day. */
function distinct(turn: Turn, before: readonly Turn[]): Turn {
  const {id} = turn.standing;
  const alike = before.filter(({standing}) => standing.id === id || standing.id.startsWith(`${id}.`)).length;
  return alike === 0 ? turn : {...turn, standing: {...turn.standing, id: `${id}.${alike + 1}`}};
}

function turnAfter(last: Instant | undefined, job: Job, today: Today): Turn | undefined {
  const window = job.windowAfter(last);
  if (window === null) return undefined;
  const {rule, unit, lot} = job;
  const {civil, now} = today.input;
  const plain = openMoment(window, today.open, civil);
  const even = last === job.lastDone(now) ? today.moments.get(job) : undefined;
  const planned = even ?? plain;
  const dueDay = civil.dayOf(plain ?? window.target);
  return {
    standing: {
      id: `${rule.code}:${lot?.code ?? unit.code}:${dueDay}`,
      task: rule.task,
      unit: unit.code,
      place: unit.place,
      since: window.since,
      earliest: window.earliest,
      target: window.target,
      latest: window.latest,
      planned,
      state: stateOf(window, civil.dayOf(planned ?? window.target), today),
      harm: rule.harm,
      minutes: minutesOf(job),
      done: undefined,
      skipped: skippedOn(job, last, today),
    },
    job,
    last,
    levelled: even !== undefined && (plain === null || civil.dayOf(even) !== dueDay),
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
