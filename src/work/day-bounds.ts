// The midnights that civil days lie between.
import type {Civil} from '../records/civil.ts';
import {MS_PER_DAY} from '../records/entry.ts';

/** Days since 1970 of every midnight from the one at or before `fromDays` to the one at or after `toDays`. */
export function midnights(civil: Civil, fromDays: number, toDays: number): number[] {
  const bounds: number[] = [];
  let day = civil.dayOf(fromDays * MS_PER_DAY);
  for (;;) {
    const at = civil.at(day, '00:00') / MS_PER_DAY;
    bounds.push(at);
    if (at >= toDays) return bounds;
    day = civil.addDays(day, 1);
  }
}
