// A course by day: coolest, mean over time, warmest.
import type {Course} from './course.ts';

export interface DaySummary {
  readonly fromDays: number;
  readonly toDays: number;
  /** Null where nothing is known of the day. */
  readonly minimumC: number | null;
  readonly meanC: number | null;
  readonly maximumC: number | null;
  /** Share of the day for which the course is known. */
  readonly known: number;
}

/** One summary for each pair of neighbouring bounds. Straight lines between nodes, cut at the bounds. */
export function daySummaries(
  {atDays, temperatureC}: Pick<Course, 'atDays' | 'temperatureC'>,
  boundsDays: readonly number[],
): DaySummary[] {
  const days = boundsDays.slice(1).map((toDays, i) => ({
    fromDays: boundsDays[i]!,
    toDays,
    lowest: Number.POSITIVE_INFINITY,
    highest: Number.NEGATIVE_INFINITY,
    sum: 0,
    known: 0,
  }));
  let first = 0;
  for (let i = 1; i < atDays.length; i++) {
    const [start, end, a, b] = [atDays[i - 1]!, atDays[i]!, temperatureC[i - 1]!, temperatureC[i]!];
    while (first < days.length && days[first]!.toDays <= start) first++;
    if (Number.isNaN(a) || Number.isNaN(b) || end === start) continue;
    for (let d = first; d < days.length && days[d]!.fromDays < end; d++) {
      const day = days[d]!;
      const from = Math.max(start, day.fromDays);
      const to = Math.min(end, day.toDays);
      const at = (instant: number) => a + ((b - a) * (instant - start)) / (end - start);
      const [left, right] = [at(from), at(to)];
      day.lowest = Math.min(day.lowest, left, right);
      day.highest = Math.max(day.highest, left, right);
      day.sum += ((left + right) / 2) * (to - from);
      day.known += to - from;
    }
  }
  return days.map(({fromDays, toDays, lowest, highest, sum, known}) => ({
    fromDays,
    toDays,
    minimumC: known > 0 ? lowest : null,
    meanC: known > 0 ? sum / known : null,
    maximumC: known > 0 ? highest : null,
    known: known / (toDays - fromDays),
  }));
}
