// What one logger read, as columns.

/** Readings in order of time, no two of the same instant. A missing temperature or humidity is NaN. */
export interface Series {
  /** Days since 1970-01-01T00:00Z. */
  readonly atDays: Float64Array;
  readonly temperatureC: Float64Array;
  readonly rhPercent: Float64Array;
}
