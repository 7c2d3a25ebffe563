// Rising curves that cost much to ask, learned at few instants and then read off smoothly.
import {type Cubic, monotoneCubic} from '../thermal/monotone-cubic.ts';
import type {Span} from './quantiles.ts';

/** Between two instants asked no curve rises by more than this: less where it begins to rise, and ends. */
const fine = (height: number) => 0.01 + 0.16 * height * (1 - height);
const PIECES = 8;
const HALVINGS = 12;
const CLOSE_DAYS = 0.01;

/**
 * Curves that rise together from one instant to another, each asked as one of several values at once. Where they do
 * not rise nobody asks twice; where they rise steeply the instants asked lie close. Between them a cubic that rises
 * where they do.
 * @param rising where all but next to nothing of the rise lies
 */
export function smoothCurves(
  values: (atDays: number) => Float64Array,
  {fromDays, untilDays}: Span,
  rising: Span,
): (curve: number, atDays: number) => number {
  const at: number[] = [];
  const known: Float64Array[] = [];
  const add = (atDays: number, here: Float64Array) => {
    at.push(atDays);
    known.push(here);
  };
  const follow = (a: number, before: Float64Array, b: number, after: Float64Array, halvings: number) => {
    if (halvings > 0 && b - a > CLOSE_DAYS && isSteep(before, after)) {
      const middle = (a + b) / 2;
      const between = values(middle);
      follow(a, before, middle, between, halvings - 1);
      follow(middle, between, b, after, halvings - 1);
    } else add(b, after);
  };

  const begin = Math.min(untilDays, Math.max(fromDays, rising.fromDays));
  const end = Math.max(begin, Math.min(untilDays, rising.untilDays));
  if (begin > fromDays) add(fromDays, values(fromDays));
  let a = begin;
  let before = values(begin);
  add(begin, before);
  for (let piece = 1; piece <= PIECES && end > begin; piece++) {
    const b = begin + ((end - begin) * piece) / PIECES;
    const after = values(b);
    follow(a, before, b, after, HALVINGS);
    a = b;
    before = after;
  }
  if (untilDays > a) add(untilDays, values(untilDays));
  return readOff(at, known);
}

function isSteep(before: Float64Array, after: Float64Array): boolean {
  for (let i = 0; i < before.length; i++)
    if (after[i]! - before[i]! > fine((before[i]! + after[i]!) / 2)) return true;
  return false;
}

function readOff(
  at: readonly number[],
  known: readonly Float64Array[],
): (curve: number, atDays: number) => number {
  const cubics = Array.from({length: known[0]!.length}, (_, curve): Cubic[] => {
    const heights = known.map(values => values[curve]!);
    return at.length > 2 ? monotoneCubic(at, heights) : [];
  });
  return (curve, atDays) => {
    if (atDays <= at[0]!) return known[0]![curve]!;
    const last = at.length - 1;
    if (atDays >= at[last]! || last < 2) return known[last]![curve]!;
    let low = 0;
    let high = last;
    while (high - low > 1) {
      const middle = (low + high) >>> 1;
      if (at[middle]! <= atDays) low = middle;
      else high = middle;
    }
    const [c0, c1, c2, c3] = cubics[curve]![low]!;
    const s = atDays - at[low]!;
    return c0 + s * (c1 + s * (c2 + s * c3));
  };
}
