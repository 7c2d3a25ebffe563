// A temperature trace: readings joined by straight lines.

/**
 * Readings in order of time. Time is in days since 1970-01-01T00:00Z; two readings of the same instant make a
 * step. A pause longer than `maxGapDays` is a gap: nothing is known in it, and nothing is added for it.
 */
export interface TemperatureTrace {
  readonly atDays: Float64Array;
  readonly temperatureC: Float64Array;
  readonly maxGapDays: number;
}
