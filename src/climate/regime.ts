// The spans of a unit's history in which nothing changed that matters to a question.
import {MS_PER_DAY} from '../records/entry.ts';
import type {History, Unit} from '../records/state.ts';
import type {Span} from './part.ts';

/** A unit as it stood from one change to the next; the first reaches back, the last on without end. */
export interface Regime extends Span {
  readonly unit: Unit;
}

/** A unit of a room in a span in which nothing in it changed. */
export interface Standing extends Regime {
  readonly code: string;
}

/** The regimes of a unit, where two records that are the same to the question are one. */
export function regimesOf(history: History<Unit>, same: (a: Unit, b: Unit) => boolean): Regime[] {
  const regimes: Regime[] = [];
  for (const {from, value} of history) {
    const last = regimes.at(-1);
    if (last !== undefined && same(last.unit, value)) continue;
    const fromDays = last === undefined ? Number.NEGATIVE_INFINITY : from / MS_PER_DAY;
    if (last !== undefined) regimes[regimes.length - 1] = {...last, toDays: fromDays};
    regimes.push({unit: value, fromDays, toDays: Number.POSITIVE_INFINITY});
  }
  return regimes;
}

/** The regime in which a unit stood as it did: where the same held, before and after. */
export function regimeOf(
  units: ReadonlyMap<string, History<Unit>>,
  {code, unit, fromDays}: Standing,
  same: (a: Unit, b: Unit) => boolean,
): Regime {
  const regimes = regimesOf(units.get(code) ?? [], same);
  const always = {unit, fromDays: Number.NEGATIVE_INFINITY, toDays: Number.POSITIVE_INFINITY};
  return regimes.findLast(regime => regime.fromDays <= fromDays) ?? always;
}

/** Nothing changed at all. */
export const unchanged = (a: Unit, b: Unit) => a === b;

/** The same logger stood in it. */
export const sameLogger = (a: Unit, b: Unit) => a.logger === b.logger;

/** The same logger, place and set points: what was learned in one part of the regime holds in the other. */
export const sameClimate = (a: Unit, b: Unit) =>
  a.logger === b.logger && a.place === b.place && JSON.stringify(a.setPoints) === JSON.stringify(b.setPoints);

/** What two spans share; empty (to ≤ from) where nothing. */
export function shared(a: Span, b: Span): Span {
  return {fromDays: Math.max(a.fromDays, b.fromDays), toDays: Math.min(a.toDays, b.toDays)};
}
