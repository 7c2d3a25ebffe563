// How long readings have been beyond a limit up to now, and by how much.
import {type Instant, MS_PER_HOUR} from '../records/entry.ts';
import type {RecentReadings} from './alert.ts';

export interface Excursion {
  /** The first reading beyond the limit since the last one within it. */
  readonly since: Instant;
  readonly hours: number;
  /** Over time how far beyond, in degree-hours or per cent hours: straight lines between readings. */
  readonly dose: number;
  /** False where readings begin, or pause too long, before one within the limit: it may have begun earlier. */
  readonly isWhole: boolean;
}

/** @param beyond how far a value is beyond the limit; above 0 outside */
export function excursionUpTo(
  at: Instant,
  recent: RecentReadings | undefined,
  values: readonly number[],
  beyond: (value: number) => number,
): Excursion {
  const instants = recent?.at ?? [];
  const last = instants.findLastIndex(instant => instant <= at);
  let first = last + 1;
  let dose = 0;
  let isWhole = false;
  for (let i = last; i >= 0; i--) {
    if (Number.isNaN(values[i]!)) continue;
    const out = beyond(values[i]!);
    if (out <= 0) {
      isWhole = true;
      break;
    }
    const next = first <= last ? instants[first]! : undefined;
    if (next !== undefined) {
      if (next - instants[i]! > (recent?.maxGapMs ?? 0)) break;
      dose += ((out + beyond(values[first]!)) / 2) * ((next - instants[i]!) / MS_PER_HOUR);
    }
    first = i;
  }
  const since = first <= last ? instants[first]! : at;
  return {since, hours: (at - since) / MS_PER_HOUR, dose, isWhole};
}
