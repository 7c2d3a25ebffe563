// Temperature courses of lots and units, with the readings they need fetched from disk once.
import {composeCourse} from '../climate/compose-course.ts';
import type {Course} from '../climate/course.ts';
import type {CourseInput} from '../climate/course-input.ts';
import {EARLIER_DAYS} from '../climate/futures.ts';
import {readingsNeeded} from '../climate/readings-needed.ts';
import type {Series} from '../climate/series.ts';
import {setPointsOf} from '../climate/set-points.ts';
import {type Lot, valueAt} from '../records/state.ts';
import type {Desk} from './desk.ts';

export interface CourseSpan {
  readonly fromDays: number;
  readonly nowDays: number;
  readonly toDays: number;
  readonly holdC?: number | undefined;
  readonly waterAs?: CourseInput['waterAs'];
  /** How many futures are wanted beside the one course expected. */
  readonly futures?: number | undefined;
}

/** Composes courses; lots that lived in the same units share what was read and composed. */
export type CourseOf = (stays: Lot['stays'], span: CourseSpan) => Promise<Course>;

/** @param fromDays the earliest instant that any course will ask for */
export function coursesOf({room, state, civil}: Desk, fromDays: number): CourseOf {
  const readings = new Map<string, Promise<Series>>();
  const courses = new Map<string, Promise<Course>>();

  /** Lots are forecast side by side: the first that wants a logger fetches it, the others wait for the same. */
  const fetched = (logger: string, from: number, to: number): Promise<Series> => {
    const key = `${logger} ${from}`;
    const series = readings.get(key) ?? room.series(logger, from, to);
    readings.set(key, series);
    return series;
  };

  /** What is to come of a unit without set points is learned from its earlier years too. */
  const earliest = ({futures = 0, nowDays}: CourseSpan, stays: Lot['stays'], from: number): number => {
    const history = state.units.get(stays.at(-1)?.unit ?? '');
    const isAmbient = history !== undefined && setPointsOf(valueAt(history, state.asOf)) === undefined;
    return futures > 0 && isAmbient ? Math.min(from, nowDays - EARLIER_DAYS) : from;
  };

  const compose = async (stays: Lot['stays'], span: CourseSpan): Promise<Course> => {
    const needed = readingsNeeded({stays, room: state, fromDays, toDays: span.toDays});
    const loggers = [...needed.own, ...needed.beside];
    const own = new Set(needed.own);
    const early = earliest(span, stays, needed.fromDays);
    const fetches = loggers.map(logger =>
      fetched(logger, own.has(logger) ? early : needed.fromDays, needed.toDays),
    );
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
