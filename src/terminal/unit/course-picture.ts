// The course of a unit as lines: the plot with its levels, or words where pictures are not wanted.
import {coursePlot} from '../../exchange/pictures/course-plot.ts';
import {type Line, line} from '../../exchange/pictures/line.ts';
import type {Level} from '../../exchange/pictures/value-scale.ts';
import {MS_PER_DAY} from '../../records/entry.ts';
import type {Unit} from '../../records/state.ts';
import type {Threshold, UnitCourse} from '../../work/unit-course.ts';
import type {Loaded, View} from '../sheet.ts';
import type {Stretch} from './span.ts';

export function courseLines(
  loaded: Loaded<UnitCourse> | undefined,
  {fromDays, toDays}: Stretch,
  view: View,
  size: {readonly columns: number; readonly rows: number},
): Line[] {
  if (loaded === undefined) return [line(' The course is being read …', 'expected')];
  if ('failed' in loaded) return [line(` ${loaded.failed.message}`, 'late')];
  const {course, read, thresholds, unit} = loaded.value;
  if (view.plain) return courseWords(loaded.value, fromDays, toDays);
  const humid = read?.rhPercent.some(value => !Number.isNaN(value)) === true;
  return coursePlot(
    {
      course,
      fromDays,
      toDays,
      nowDays: view.facts.desk.now / MS_PER_DAY,
      levels: [...setPointLevels(unit), ...thresholdLevels(thresholds)],
      humidity: humid ? read : undefined,
      civil: view.facts.desk.civil,
    },
    {columns: Math.max(40, size.columns), rows: Math.max(8, size.rows)},
    view.glyphs,
  );
}

function setPointLevels({setPoints}: Unit): Level[] {
  if (setPoints === undefined || 'ambient' in setPoints) return [];
  if ('constant' in setPoints) return [{valueC: setPoints.constant, name: 'set to'}];
  return [
    {valueC: setPoints.day, name: 'set by day'},
    {valueC: setPoints.night, name: 'set by night'},
  ];
}

/** Lots whose stage has the same threshold share a name: "26-016-A, 26-030-A pupa from". */
function thresholdLevels(thresholds: readonly Threshold[]): Level[] {
  const lots = new Map<string, {readonly valueC: number; readonly what: string; readonly codes: string[]}>();
  const add = (code: string, what: string, valueC: number) => {
    const key = `${what} ${valueC}`;
    const level = lots.get(key) ?? {valueC, what, codes: []};
    level.codes.push(code);
    lots.set(key, level);
  };
  for (const {lot, stage, lowerC, upperC} of thresholds) {
    if (lowerC !== null) add(lot, `${stage} from`, lowerC);
    if (upperC !== null) add(lot, `${stage} up to`, upperC);
  }
  return [...lots.values()].map(({valueC, what, codes}) => ({valueC, name: `${codes.join(', ')} ${what}`}));
}

/** The course said in words, for reading aloud. */
function courseWords({course, thresholds}: UnitCourse, fromDays: number, toDays: number): Line[] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  course.temperatureC.forEach((value, i) => {
    const at = course.atDays[i]!;
    if (Number.isNaN(value) || at < fromDays || at > toDays) return;
    low = Math.min(low, value);
    high = Math.max(high, value);
  });
  return [
    line(
      low > high ? ' The temperature is not known.' : ` Between ${low.toFixed(1)} and ${high.toFixed(1)} °C.`,
    ),
    ...thresholdLevels(thresholds).map(({name, valueC}) => line(` ${name} ${valueC.toFixed(1)} °C`)),
  ];
}
