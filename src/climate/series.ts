// What one logger read, as columns.

/** Readings in order of time, no two of the same instant. A missing temperature or humidity is NaN. */
export interface Series {
  /** Days since 1970-01-01T00:00Z. */
  readonly atDays: Float64Array;
  readonly temperatureC: Float64Array;
  readonly rhPercent: Float64Array;
}

/** The series of these rows only, in the order given. */
export function rowsOf({atDays, temperatureC, rhPercent}: Series, rows: readonly number[]): Series {
  const column = (values: Float64Array) => Float64Array.from(rows, row => values[row]!);
  return {atDays: column(atDays), temperatureC: column(temperatureC), rhPercent: column(rhPercent)};
}
