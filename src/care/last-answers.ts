// What people last answered of a unit: whether there is mould in it, whether its air supply bubbles.
import type {Instant} from '../records/entry.ts';
import type {RoomState} from '../records/state.ts';
import {unitAt} from './occupancy.ts';

/** The answer that something is amiss. */
const amiss = {mould: true, bubbles: false} as const;

type Question = keyof typeof amiss;

/** When somebody last answered of a unit that it is amiss; undefined where nobody has, or somebody has seen since that it is not. */
export function amissSince(question: Question, unit: string, state: RoomState): Instant | undefined {
  return amissUnits(question, state).get(unit);
}

/** The same of every unit of which it holds. */
export function amissUnits(question: Question, state: RoomState): ReadonlyMap<string, Instant> {
  let known = knownAnswers.get(state.care);
  if (known === undefined) {
    known = {mould: amissByUnit('mould', state), bubbles: amissByUnit('bubbles', state)};
    knownAnswers.set(state.care, known);
  }
  return known[question];
}

type ByUnit = ReadonlyMap<string, Instant>;

const knownAnswers = new WeakMap<RoomState['care'], Readonly<Record<Question, ByUnit>>>();

function amissByUnit(question: Question, {care, lots}: RoomState): ByUnit {
  const units = new Map<string, Instant>();
  for (const {unit, lot, at, seen} of care) {
    const answer = seen[question];
    if (typeof answer !== 'boolean') continue;
    const where = unit ?? unitAt(lots.get(lot ?? ''), at);
    if (where === undefined) continue;
    if (answer === amiss[question]) units.set(where, at);
    else units.delete(where);
  }
  return units;
}
