// Degree-days day by day: from a trace's lowest and highest readings, as a min–max thermometer would give them.
import {type DailyMethod, degreeDaysOfDay} from './daily.ts';
import type {Thresholds} from './degree-day.ts';
import type {TemperatureTrace} from './trace.ts';

/** Extremes of successive civil days, as columns. A day without a reading has NaN and counts for nothing. */
export interface DailyExtremes {
  readonly minimum: Float64Array;
  readonly maximum: Float64Array;
}

/**
 * The lowest and the highest reading stamped within each day. Bounds are the days' beginnings and the end of the
 * last one, in days since 1970; a reading at a day's beginning belongs to that day.
 */
export function extremesByDay(
  {atDays, temperatureC}: TemperatureTrace,
  boundsDays: Float64Array,
): DailyExtremes {
  const days = Math.max(0, boundsDays.length - 1);
  const minimum = new Float64Array(days).fill(Number.NaN);
  const maximum = new Float64Array(days).fill(Number.NaN);
  let day = 0;
  for (let i = 0; i < atDays.length; i++) {
    const at = atDays[i]!;
    const temperature = temperatureC[i]!;
    while (day < days && at >= boundsDays[day + 1]!) day++;
    if (day === days) break;
    if (at < boundsDays[day]! || Number.isNaN(temperature)) continue;
    if (!(minimum[day]! <= temperature)) minimum[day] = temperature;
    if (!(maximum[day]! >= temperature)) maximum[day] = temperature;
  }
  return {minimum, maximum};
}

/**
 * Degree-days of each day by a daily method; NaN for a day without extremes. The next minimum of a day that is the
 * last, or is followed by one without extremes, is its own.
 * @throws RangeError as degreeDaysOfDay
 */
export function degreeDaysByDay(
  method: DailyMethod,
  {minimum, maximum}: DailyExtremes,
  thresholds: Thresholds,
): Float64Array {
  return minimum.map((low, day) => {
    if (Number.isNaN(low)) return Number.NaN;
    const next = minimum[day + 1] ?? Number.NaN;
    return degreeDaysOfDay(
      method,
      {minimum: low, maximum: maximum[day]!, nextMinimum: Number.isNaN(next) ? low : next},
      thresholds,
    );
  });
}
