// The course of a unit as lines: the plot with its levels, or words where pictures are not wanted.
import {litSpans} from '../../climate/set-points.ts';
import {courseLevels} from '../../exchange/pictures/course-levels.ts';
import {coursePlot} from '../../exchange/pictures/course-plot.ts';
import {type Line, line} from '../../exchange/pictures/line.ts';
import {MS_PER_DAY} from '../../records/entry.ts';
import type {UnitCourse} from '../../work/unit-course.ts';
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
      levels: courseLevels(unit, thresholds),
      lit: litSpans(unit, view.facts.desk.civil, {fromDays, toDays}),
      humidity: humid ? read : undefined,
      civil: view.facts.desk.civil,
    },
    {columns: Math.max(40, size.columns), rows: Math.max(8, size.rows)},
    view.glyphs,
  );
}

/** The course said in words, for reading aloud. */
function courseWords({course, thresholds, unit}: UnitCourse, fromDays: number, toDays: number): Line[] {
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
    ...courseLevels(unit, thresholds).map(({name, valueC}) => line(` ${name} ${valueC.toFixed(1)} °C`)),
  ];
}
