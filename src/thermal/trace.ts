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
