// How long a course stayed in each class of temperature.
import type {Course} from './course.ts';
import {FILLED} from './course-summary.ts';
import type {Span} from './part.ts';

export interface TimeInClass {
  /** From this temperature, inclusive, to the next class. */
  readonly fromC: number;
  readonly toC: number;
  readonly hours: number;
  /** Of them, those that were filled in. */
  readonly filledHours: number;
}

/** Temperatures this near are one: a smaller difference cannot be divided. */
const SAME_C = 1e-9;

/**
 * Exact time in classes of a width: straight lines cut where they leave a class. Unknown time is in none.
 * @param widthC above 0
 */
export function timeByClass(course: Course, {fromDays, toDays}: Span, widthC: number): TimeInClass[] {
  const found = new Map<number, {hours: number; filled: number}>();
  const add = (index: number, days: number, isFilled: boolean) => {
    const sum = found.get(index) ?? {hours: 0, filled: 0};
    sum.hours += days * 24;
    if (isFilled) sum.filled += days * 24;
    found.set(index, sum);
  };
  const {atDays, temperatureC, stretches} = course;
  let stretch = 0;
  for (let i = 1; i < atDays.length; i++) {
    const [start, end] = [Math.max(atDays[i - 1]!, fromDays), Math.min(atDays[i]!, toDays)];
    const span = atDays[i]! - atDays[i - 1]!;
    if (!(end > start) || Number.isNaN(temperatureC[i - 1]! + temperatureC[i]!)) continue;
    while (stretch < stretches.length - 1 && stretches[stretch]!.toDays <= start) stretch++;
    const isFilled = FILLED.has(stretches[stretch]?.basis ?? 'unknown');
    const at = (instant: number) =>
      temperatureC[i - 1]! + ((temperatureC[i]! - temperatureC[i - 1]!) * (instant - atDays[i - 1]!)) / span;
    const [a, b] = [at(start), at(end)];
    if (Math.abs(a - b) < SAME_C) {
      add(Math.floor(a / widthC), end - start, isFilled);
      continue;
    }
    const [low, high] = [Math.min(a, b), Math.max(a, b)];
    for (let index = Math.floor(low / widthC); index * widthC < high; index++) {
      const share = (Math.min(high, (index + 1) * widthC) - Math.max(low, index * widthC)) / (high - low);
      if (share > 0) add(index, share * (end - start), isFilled);
    }
  }
  return [...found]
    .sort(([a], [b]) => a - b)
    .map(([index, {hours, filled}]) => ({
      fromC: index * widthC,
      toC: (index + 1) * widthC,
      hours,
      filledHours: filled,
    }));
}
