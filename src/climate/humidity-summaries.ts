// Humidity by day: lowest, mean over time, highest.
import type {Series} from './series.ts';

export interface HumiditySummary {
  readonly minimum: number;
  readonly mean: number;
  readonly maximum: number;
}

/** One summary for each pair of neighbouring bounds: of the readings in it; null where there is none. */
export function humiditySummaries(
  {atDays, rhPercent}: Pick<Series, 'atDays' | 'rhPercent'>,
  boundsDays: readonly number[],
): (HumiditySummary | null)[] {
  const days = boundsDays.slice(1).map(() => ({minimum: 100, maximum: 0, sum: 0, rows: 0}));
  let day = 0;
  for (let row = 0; row < atDays.length; row++) {
    const at = atDays[row]!;
    const value = rhPercent[row]!;
    if (Number.isNaN(value) || at < boundsDays[0]!) continue;
    while (day < days.length && at >= boundsDays[day + 1]!) day++;
    const sum = days[day];
    if (sum === undefined) break;
    sum.minimum = Math.min(sum.minimum, value);
    sum.maximum = Math.max(sum.maximum, value);
    sum.sum += value;
    sum.rows++;
  }
  return days.map(({minimum, maximum, sum, rows}) =>
    rows === 0 ? null : {minimum, mean: sum / rows, maximum},
  );
}
