// A temperature trace: readings joined by straight lines.

/**
 * Readings in order of time. Time is in days since 1970-01-01T00:00Z; two readings of the same instant make a
 * step. A pause longer than `maxGapDays` is a gap: nothing is known in it, and nothing is added for it; without
 * it no pause is too long. A piece with NaN at either end is a gap as well. Temperatures are °C unless the
 * thresholds they meet are °F too.
 */
export interface TemperatureTrace {
  readonly atDays: Float64Array;
  readonly temperatureC: Float64Array;
  readonly maxGapDays?: number;
}

/** Days since 1970 are exact to some picoseconds only: a pause of three hours must not count as longer than that. */
const ROUNDING_DAYS = 1e-9;

/** How long a pause may be before it is a gap, with room for rounding. */
export function longestPauseDays({maxGapDays = Number.POSITIVE_INFINITY}: TemperatureTrace): number {
  return maxGapDays + ROUNDING_DAYS;
}

/** The first piece (from its reading to the next) that ends after an instant. */
export function firstPieceEndingAfter({atDays}: TemperatureTrace, instantDays: number): number {
  let low = 0;
  let high = Math.max(0, atDays.length - 1);
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (atDays[middle + 1]! > instantDays) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** The temperature at an instant of a piece, its ends included. */
export function temperatureWithin(
  {atDays, temperatureC}: TemperatureTrace,
  piece: number,
  instantDays: number,
): number {
  const start = atDays[piece]!;
  const end = atDays[piece + 1]!;
  if (instantDays === start) return temperatureC[piece]!;
  if (instantDays === end) return temperatureC[piece + 1]!;
  return (
    temperatureC[piece]! +
    ((temperatureC[piece + 1]! - temperatureC[piece]!) * (instantDays - start)) / (end - start)
  );
}
