// Temperature courses of lots and units, with the readings they need fetched from disk once.
import {composeCourse} from '../climate/compose-course.ts';
import type {Course} from '../climate/course.ts';
import {readingsNeeded} from '../climate/readings-needed.ts';
import type {Series} from '../climate/series.ts';
import type {Lot} from '../records/state.ts';
import type {Desk} from './desk.ts';

export interface CourseSpan {
  readonly fromDays: number;
  readonly nowDays: number;
  readonly toDays: number;
  readonly holdC?: number | undefined;
}

/** Composes courses; lots that lived in the same units share what was read and composed. */
export type CourseOf = (stays: Lot['stays'], span: CourseSpan) => Promise<Course>;

/** @param fromDays the earliest instant that any course will ask for */
export function coursesOf({room, state, civil}: Desk, fromDays: number): CourseOf {
  const readings = new Map<string, Series>();
  const courses = new Map<string, Promise<Course>>();

  const fetch = async (loggers: readonly string[], from: number, to: number) => {
    await Promise.all(
      loggers.map(async logger => {
        if (!readings.has(logger)) readings.set(logger, await room.series(logger, from, to));
      }),
    );
  };

  const compose = async (stays: Lot['stays'], span: CourseSpan): Promise<Course> => {
    const input = {stays, room: state, civil, readings: (logger: string) => readings.get(logger), ...span};
    const needed = readingsNeeded({...input, fromDays});
    await fetch([...needed.own, ...needed.beside], needed.fromDays, needed.toDays);
    return composeCourse(input);
  };

  return (stays, span) => {
    const key = JSON.stringify([stays.map(({unit, from}) => [unit, from]), span]);
    const course = courses.get(key) ?? compose(stays, span);
    courses.set(key, course);
    return course;
  };
}
