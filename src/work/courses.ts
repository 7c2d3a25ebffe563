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
  const readings = new Map<string, Promise<Series>>();
  const courses = new Map<string, Promise<Course>>();

  /** Lots are forecast side by side: the first that wants a logger fetches it, the others wait for the same. */
  const fetched = (logger: string, from: number, to: number): Promise<Series> => {
    const series = readings.get(logger) ?? room.series(logger, from, to);
    readings.set(logger, series);
    return series;
  };

  const compose = async (stays: Lot['stays'], span: CourseSpan): Promise<Course> => {
    const needed = readingsNeeded({stays, room: state, fromDays, toDays: span.toDays});
    const loggers = [...needed.own, ...needed.beside];
    const fetches = loggers.map(logger => fetched(logger, needed.fromDays, needed.toDays));
    const series = new Map((await Promise.all(fetches)).map((each, i) => [loggers[i]!, each]));
    return composeCourse({stays, room: state, civil, readings: logger => series.get(logger), ...span});
  };

  return (stays, span) => {
    const key = JSON.stringify([stays.map(({unit, from}) => [unit, from]), span]);
    const course = courses.get(key) ?? compose(stays, span);
    courses.set(key, course);
    return course;
  };
}
