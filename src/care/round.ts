// The list of a day: what is to be done, what is worth doing with it, and what is done already.
import type {Instant} from '../records/entry.ts';
import {grouped} from './grouped.ts';
import {amissUnits} from './last-answers.ts';
import {type CareInput, harmOrder, isOpen, type Standing, type Task} from './task.ts';
import {askedDay, taskOf, turnsToday} from './tasks.ts';
import {compareNaturally, shelfOf} from './walking-order.ts';

export interface PlaceTasks {
  /** The shelf or rack: "rack A" of "rack A/2". */
  readonly place: string;
  /** In walking order, the most urgent first where several are at one place. */
  readonly tasks: readonly Task[];
}

export interface Round {
  /** Overdue first, then what is to be done, then what is done; each in walking order. */
  readonly tasks: readonly Task[];
  /** The same tasks as they are met on the way. */
  readonly places: readonly PlaceTasks[];
  readonly summary: {
    /** Still to be done today: due, overdue, and not skipped. Early tasks may wait. */
    readonly toDo: number;
    readonly late: number;
    readonly skipped: number;
    readonly done: number;
    /** What is to do, in minutes, as the rules estimate it. */
    readonly minutes: number;
  };
}

/** A task may join others of its kind when no more of its interval is missing than this. Common practice, no source. */
const EARLY_SHARE = 0.2;

const stateOrder = {overdue: 0, due: 1, early: 2, done: 3} as const;

/** The list of the day asked about. Only what stands on it is told in full. */
export function roundOf(input: CareInput): Round {
  const {civil} = input;
  const end = civil.at(civil.addDays(askedDay(input), 1), '00:00');
  const turns = turnsToday(input);
  const mouldy = amissUnits('mould', input.state);
  const open = turns.map(({standing}) => standing).filter(isOpen);
  const errands = new Set(open.map(errandOf));
  const joins = (standing: Standing) => isSoonWanted(standing, end) && errands.has(errandOf(standing));
  const walking = turns
    .filter(({standing}) => standing.state !== 'early' || joins(standing))
    .sort((a, b) => compareOnTheWay(a.standing, b.standing, mouldy))
    .map(turn => taskOf(turn, input));
  const toDo = open.filter(({skipped}) => skipped === undefined);
  return {
    tasks: walking.toSorted((a, b) => stateOrder[a.state] - stateOrder[b.state]),
    places: [...grouped(walking, ({place}) => shelfOf(place))].map(([place, list]) => ({place, tasks: list})),
    summary: {
      toDo: toDo.length,
      late: toDo.filter(({state}) => state === 'overdue').length,
      skipped: open.length - toDo.length,
      done: walking.filter(({state}) => state === 'done').length,
      minutes: toDo.reduce((sum, {minutes}) => sum + minutes, 0),
    },
  };
}

/** The same task on the same shelf is one errand. */
function errandOf({task, place}: Standing): string {
  return `${task} at ${shelfOf(place)}`;
}

function isSoonWanted({earliest, since, target}: Standing, end: Instant): boolean {
  return earliest < end && target - EARLY_SHARE * (target - since) < end;
}

/** Of several units at one place those with mould come last. */
function compareOnTheWay(a: Standing, b: Standing, mouldy: ReadonlyMap<string, Instant>): number {
  return (
    compareNaturally(a.place, b.place) ||
    Number(mouldy.has(a.unit)) - Number(mouldy.has(b.unit)) ||
    compareNaturally(a.unit, b.unit) ||
    stateOrder[a.state] - stateOrder[b.state] ||
    harmOrder[a.harm] - harmOrder[b.harm] ||
    a.latest - b.latest ||
    (a.id < b.id ? -1 : 1)
  );
}
