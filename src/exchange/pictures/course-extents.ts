// A course cut into equal steps of time: between which values it ran in each, and what it rests on.
import type {Course, CourseBasis} from '../../climate/course.ts';

export interface Extent {
  readonly low: number;
  readonly high: number;
}

/** Lowest and highest value within each step; undefined where nothing is known. */
export function extents(
  atDays: ArrayLike<number>,
  values: ArrayLike<number>,
  fromDays: number,
  toDays: number,
  steps: number,
  longestPauseDays = Number.POSITIVE_INFINITY,
): (Extent | undefined)[] {
  const low = new Float64Array(steps).fill(Number.POSITIVE_INFINITY);
  const high = new Float64Array(steps).fill(Number.NEGATIVE_INFINITY);
  const step = (toDays - fromDays) / steps;
  const take = (index: number, value: number) => {
    if (index < 0 || index >= steps) return;
    if (value < low[index]!) low[index] = value;
    if (value > high[index]!) high[index] = value;
  };
  for (let i = 0; i + 1 < atDays.length; i++) {
    const start = atDays[i]!;
    const end = atDays[i + 1]!;
    if (end < fromDays || start > toDays || end - start > longestPauseDays) continue;
    const a = values[i]!;
    const b = values[i + 1]!;
    if (Number.isNaN(a + b)) continue;
    const valueAt = (at: number) => (end === start ? b : a + ((b - a) * (at - start)) / (end - start));
    const first = Math.max(0, Math.floor((start - fromDays) / step));
    const last = Math.min(steps - 1, Math.floor((end - fromDays) / step));
    for (let k = first; k <= last; k++) {
      take(k, valueAt(Math.max(start, fromDays + k * step)));
      take(k, valueAt(Math.min(end, fromDays + (k + 1) * step)));
    }
  }
  return Array.from(low, (value, i) => (value <= high[i]! ? {low: value, high: high[i]!} : undefined));
}

/** How a stretch is drawn: as read, filled from elsewhere, expected, or not known. */
export type Ground = 'read' | 'filled' | 'expected' | 'unknown';

const GROUNDS: Readonly<Record<CourseBasis, Ground>> = {
  logger: 'read',
  extremes: 'read',
  hand: 'read',
  'other-logger': 'filled',
  'mean-day': 'filled',
  'set-points': 'filled',
  expected: 'expected',
  held: 'expected',
  unknown: 'unknown',
};

/** What each step rests on: the ground of the most of it. */
export function grounds(
  stretches: Course['stretches'],
  fromDays: number,
  toDays: number,
  steps: number,
): Ground[] {
  const step = (toDays - fromDays) / steps;
  return Array.from({length: steps}, (_, i) => {
    const from = fromDays + i * step;
    const held = {read: 0, filled: 0, expected: 0, unknown: step * 1e-6};
    for (const stretch of stretches) {
      const shared = Math.min(stretch.toDays, from + step) - Math.max(stretch.fromDays, from);
      if (shared > 0) held[GROUNDS[stretch.basis]] += shared;
    }
    return (['read', 'filled', 'expected', 'unknown'] as const).reduce((a, b) => (held[b] > held[a] ? b : a));
  });
}
