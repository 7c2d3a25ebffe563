// Which readings a course can make use of, so that they can be fetched before it is composed.
import type {CourseInput} from './course-input.ts';
import {neighboursOf} from './neighbours.ts';
import type {Span} from './part.ts';

export interface ReadingsNeeded extends Span {
  /** Loggers of the units where the lot lived. */
  readonly own: readonly string[];
  /** Loggers beside them, nearest first: of use only where the own ones have gaps. */
  readonly beside: readonly string[];
}

/** What is learned of a unit is learned from readings up to this long before. */
const LEARNING_DAYS = 30;

export function readingsNeeded({
  stays,
  room,
  fromDays,
  toDays,
}: Pick<CourseInput, 'stays' | 'room' | 'fromDays' | 'toDays'>): ReadingsNeeded {
  const own = new Set<string>();
  const beside = new Set<string>();
  for (const {unit} of stays)
    for (const {value} of room.units.get(unit) ?? []) {
      if (value.logger !== undefined) own.add(value.logger);
      for (const {logger} of neighboursOf(room.units, unit, value)) beside.add(logger);
    }
  return {
    own: [...own],
    beside: [...beside].filter(logger => !own.has(logger)),
    fromDays: fromDays - LEARNING_DAYS,
    toDays,
  };
}
