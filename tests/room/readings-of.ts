// Invented readings.
import type {Series} from '../../src/climate/series.ts';

/** Readings every so many minutes from an instant on, all different. */
export function readings(from: string, count: number, everyMinutes = 60): Series {
  const start = Date.parse(from);
  return {
    atDays: Float64Array.from({length: count}, (_, i) => (start + i * everyMinutes * 60_000) / 86_400_000),
    temperatureC: Float64Array.from(
      {length: count},
      (_, i) => Math.round(2000 + 500 * Math.sin(i / 4)) / 100,
    ),
    rhPercent: Float64Array.from({length: count}, (_, i) => 60 + (i % 10)),
  };
}
