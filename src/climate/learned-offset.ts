// How much warmer one logger reads than another, from the time in which both read.
import {
  firstPieceEndingAfter,
  longestPauseDays,
  type TemperatureTrace,
  temperatureWithin,
} from '../thermal/trace.ts';

export interface LearnedOffset {
  /** Mean difference, own − other; NaN without overlap. */
  readonly offsetC: number;
  /** Standard deviation of the differences about it; NaN without overlap. */
  readonly sdC: number;
  readonly overlapDays: number;
}

/** The time-weighted mean difference at the own readings, where the other is known as well. */
export function learnedOffset(own: TemperatureTrace, other: TemperatureTrace): LearnedOffset {
  const longest = longestPauseDays(own);
  const differences = differencesFrom(own, other);
  let sum = 0;
  let squares = 0;
  let overlapDays = 0;
  for (let i = 1; i < differences.length; i++) {
    const days = own.atDays[i]! - own.atDays[i - 1]!;
    const [a, b] = [differences[i - 1]!, differences[i]!];
    if (days > longest || Number.isNaN(a + b)) continue;
    sum += ((a + b) / 2) * days;
    squares += ((a * a + b * b) / 2) * days;
    overlapDays += days;
  }
  const offsetC = sum / overlapDays;
  return {offsetC, sdC: Math.sqrt(Math.max(0, squares / overlapDays - offsetC ** 2)), overlapDays};
}

/** Own − other at every own reading; NaN where the other is not known. */
export function differencesFrom(own: TemperatureTrace, other: TemperatureTrace): Float64Array {
  const {atDays} = other;
  const longest = longestPauseDays(other);
  const pieces = atDays.length - 1;
  let piece = firstPieceEndingAfter(other, own.atDays[0] ?? 0);
  return own.temperatureC.map((temperature, i) => {
    const at = own.atDays[i]!;
    while (piece < pieces && atDays[piece + 1]! < at) piece++;
    const known = piece < pieces && atDays[piece]! <= at && atDays[piece + 1]! - atDays[piece]! <= longest;
    return known ? temperature - temperatureWithin(other, piece, at) : Number.NaN;
  });
}
