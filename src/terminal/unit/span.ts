// The stretches of time that a course is looked at in.
import type {Civil} from '../../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../../records/entry.ts';
import type {CourseSpan, Effect} from '../sheet.ts';

/** Days before and after today. */
const DAYS: Readonly<Record<CourseSpan, readonly [before: number, after: number]>> = {
  day: [0, 1],
  week: [4, 3],
  month: [21, 9],
  season: [92, 28],
  year: [337, 28],
};

export const SPANS: readonly CourseSpan[] = ['day', 'week', 'month', 'season', 'year'];

export interface Stretch {
  readonly fromDays: number;
  readonly toDays: number;
}

/** Whole civil days around now, moved by so many spans. */
export function stretchOf(span: CourseSpan, shift: number, civil: Civil, now: Instant): Stretch {
  const [before, after] = DAYS[span];
  const first = civil.addDays(civil.dayOf(now), (before + after) * shift - before);
  const end = civil.addDays(first, before + after);
  return {fromDays: civil.at(first, '00:00') / MS_PER_DAY, toDays: civil.at(end, '00:00') / MS_PER_DAY};
}

/** What loads the course of a unit; its key is what it is kept under. */
export function courseEffect(unit: string, {fromDays, toDays}: Stretch): Extract<Effect, {do: 'course'}> {
  return {do: 'course', key: `${unit} ${fromDays} ${toDays}`, unit, fromDays, toDays};
}
