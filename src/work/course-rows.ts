// A course at every full hour, with what each value rests on.
import type {Course, CourseBasis} from '../climate/course.ts';

export interface CourseRow {
  readonly atDays: number;
  /** Null where nothing is known. */
  readonly temperatureC: number | null;
  readonly basis: CourseBasis;
}

export function courseRows(
  {atDays, temperatureC, stretches}: Course,
  fromDays: number,
  toDays: number,
): CourseRow[] {
  const rows: CourseRow[] = [];
  let piece = 0;
  let stretch = 0;
  for (let hour = Math.ceil(fromDays * 24 - 1e-6); hour <= toDays * 24 + 1e-6; hour++) {
    const at = hour / 24;
    while (piece < atDays.length - 2 && atDays[piece + 1]! < at) piece++;
    while (stretch < stretches.length - 1 && stretches[stretch]!.toDays <= at) stretch++;
    const span = atDays[piece + 1]! - atDays[piece]!;
    const share = span > 0 ? (at - atDays[piece]!) / span : 0;
    const value = temperatureC[piece]! + (temperatureC[piece + 1]! - temperatureC[piece]!) * share;
    rows.push({
      atDays: at,
      temperatureC: Number.isNaN(value) ? null : value,
      basis: stretches[stretch]?.basis ?? 'unknown',
    });
  }
  return rows;
}
