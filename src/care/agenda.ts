// What is to be done on the days ahead, as if everything were done when it is planned.
import type {Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';
import type {Stage} from '../records/stage.ts';
import {amountOf, type Ration, rationOf} from './amounts.ts';
import {openTimeOf} from './calendar.ts';
import {turnsOf} from './following.ts';
import type {Job} from './job.ts';
import {jobsOf} from './jobs.ts';
import {levelled} from './levelling.ts';
import type {CareInput} from './task.ts';
import {minutesOf} from './time-needed.ts';
import {titleOf} from './titles.ts';
import {compareNaturally} from './walking-order.ts';

/** One thing to be done on a day to come. */
export interface AgendaItem {
  /**
   * Rule, lot or unit, and which time of doing it this is, counted from the first: `feed-cage:26-031-A#17`. The same
   * from one call to the next, also when it moves to another day.
   */
  readonly turn: string;
  readonly rule: string;
  readonly task: string;
  readonly title: string;
  /** How much of it, for the animals as last counted. */
  readonly amount: string | null;
  /** The same of food, to be added up. */
  readonly food: Ration | null;
  /** The food for so many of each stage in its lot. */
  rationOf(stages: Readonly<Record<Stage, number>>): Ration | null;
  readonly unit: string;
  readonly lot: string | null;
  readonly place: string;
  /** When it is planned. */
  readonly at: Instant;
  readonly earliest: Instant;
  readonly latest: Instant;
  readonly minutes: number;
  /** What must be answered when it is done. */
  readonly observe: readonly string[];
  readonly caution: string | null;
  /** It cannot be done in open time: somebody has to come. */
  readonly visit: boolean;
}

export interface AgendaDay {
  readonly day: Day;
  readonly open: boolean;
  /** Why it is closed, where that was said. */
  readonly closed: string | null;
  readonly minutes: number;
  /** In walking order. */
  readonly items: readonly AgendaItem[];
}

/** @param days how many, from today on; today holds what is still to do */
export function agendaOf(input: CareInput, days: number): AgendaDay[] {
  const {state, civil, now} = input;
  const open = openTimeOf(state.calendar, civil);
  const jobs = jobsOf(input, open);
  const moments = levelled(jobs, open, input);
  const today = civil.dayOf(now);
  const end = civil.at(civil.addDays(today, days), '00:00');
  const byDay = new Map<Day, AgendaItem[]>();
  for (const job of jobs) {
    const before = job.deeds.filter(({skipped}) => skipped === undefined).length;
    let turn = before;
    for (const {window, at, visit, back} of turnsOf(job, open, input, end - 1, moments.get(job))) {
      turn++;
      const day = civil.dayOf(Math.max(at, now));
      const item = itemOf(job, turn, back?.from ?? at, window, visit !== undefined);
      const others = byDay.get(day);
      if (others === undefined) byDay.set(day, [item]);
      else others.push(item);
    }
  }
  return Array.from({length: days}, (_, n) => {
    const day = civil.addDays(today, n);
    const items = (byDay.get(day) ?? []).sort(onTheWay);
    return {
      day,
      open: open.isOpen(day),
      closed: open.closedBecause(day) ?? null,
      minutes: items.reduce((sum, {minutes}) => sum + minutes, 0),
      items,
    };
  });
}

function itemOf(
  job: Job,
  turn: number,
  at: Instant,
  {earliest, latest}: {earliest: Instant; latest: Instant},
  visit: boolean,
): AgendaItem {
  const {rule, lot, unit} = job;
  return {
    turn: `${rule.code}:${lot?.code ?? unit.code}#${turn}`,
    rule: rule.code,
    task: rule.task,
    title: titleOf(job),
    amount: amountOf(job),
    food: rationOf(job),
    rationOf: stages => rationOf(job, stages),
    unit: unit.code,
    lot: lot?.code ?? null,
    place: unit.place,
    at,
    earliest,
    latest,
    minutes: minutesOf(job),
    observe: rule.observe,
    caution: rule.caution ?? null,
    visit,
  };
}

function onTheWay(a: AgendaItem, b: AgendaItem): number {
  return (
    compareNaturally(a.place, b.place) ||
    compareNaturally(a.unit, b.unit) ||
    a.at - b.at ||
    (a.turn < b.turn ? -1 : 1)
  );
}
