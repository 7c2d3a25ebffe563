// Rising curves that cost much to ask, learned at few instants and then read off smoothly.
import {type Cubic, monotoneCubic} from '../thermal/monotone-cubic.ts';
import type {Span} from './quantiles.ts';

/** Between two instants asked no curve rises by more than this. */
const FINE = 0.04;
const PIECES = 8;
const HALVINGS = 12;
/** Less than this is nothing. */
const NOTHING = 1e-7;
const CLOSE_DAYS = 0.01;

/**
 * Curves that rise together from one instant to another, each asked as one of several values at once. Where they do
 * not rise nobody asks twice; where they rise steeply the instants asked lie close. Between them a cubic that rises
 * where they do.
 */
export function smoothCurves(
  values: (atDays: number) => Float64Array,
  {fromDays, untilDays}: Span,
): (curve: number, atDays: number) => number {
  const at: number[] = [];
  const known: Float64Array[] = [];
  const add = (atDays: number, here: Float64Array) => {
    at.push(atDays);
    known.push(here);
  };
  const follow = (a: number, before: Float64Array, b: number, after: Float64Array, halvings: number) => {
    if (halvings > 0 && b - a > CLOSE_DAYS && riseBetween(before, after) > FINE) {
      const middle = (a + b) / 2;
      const between = values(middle);
      follow(a, before, middle, between, halvings - 1);
      follow(middle, between, b, after, halvings - 1);
    } else add(b, after);
  };

  const first = values(fromDays);
  const end = values(untilDays);
  const begin = lastWith(values, fromDays, untilDays, here => riseBetween(first, here) <= NOTHING);
  const until = lastWith(values, begin, untilDays, here => riseBetween(here, end) > NOTHING);
  const last = Math.min(untilDays, until + CLOSE_DAYS);
  let a = begin;
  let before = begin === fromDays ? first : values(begin);
  if (begin > fromDays) add(fromDays, first);
  add(begin, before);
  for (let piece = 1; piece <= PIECES; piece++) {
    const b = begin + ((last - begin) * piece) / PIECES;
    if (b <= a) continue;
    const after = values(b);
    follow(a, before, b, after, HALVINGS);
    a = b;
    before = after;
  }
  if (untilDays > a) add(untilDays, end);
  return readOff(at, known);
}

/** The last instant, to a quarter of a day, at which something holds that holds up to it and not after it. */
function lastWith(
  values: (atDays: number) => Float64Array,
  fromDays: number,
  untilDays: number,
  holds: (here: Float64Array) => boolean,
): number {
  if (!holds(values(fromDays))) return fromDays;
  let low = fromDays;
  let high = untilDays;
  while (high - low > 0.25) {
    const middle = (low + high) / 2;
    if (holds(values(middle))) low = middle;
    else high = middle;
  }
  return low;
}

function riseBetween(before: Float64Array, after: Float64Array): number {
  let most = 0;
  for (let i = 0; i < before.length; i++) most = Math.max(most, after[i]! - before[i]!);
  return most;
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
