// The climate of a unit in figures: by day, by class of temperature, by hour of the day.
import {classTable, dayTable, meanDayTable} from '../../exchange/climate-tables.ts';
import {type Line, line} from '../../exchange/pictures/line.ts';
import {unitClimate} from '../../work/unit-climate.ts';
import type {UnitCourse} from '../../work/unit-course.ts';
import type {Loaded, View} from '../sheet.ts';
import type {Stretch} from './span.ts';

const CLASS_WIDTH_C = 2;

export function figureLines(loaded: Loaded<UnitCourse> | undefined, stretch: Stretch, view: View): Line[] {
  if (loaded === undefined) return [line(' The course is being read …', 'expected')];
  if ('failed' in loaded) return [line(` ${loaded.failed.message}`, 'late')];
  const {desk} = view.facts;
  const {days, classes, meanDay, water} = unitClimate(loaded.value, desk, stretch, CLASS_WIDTH_C);
  const parts = [dayTable(days, desk.civil, desk.now)];
  if (classes.length > 0) parts.push(classTable(classes, view.glyphs.bars.at(-1)!));
  if (meanDay !== null) parts.push(meanDayTable(meanDay));
  if (water?.evaporation)
    parts.push(
      `evaporates ${water.evaporation.litresPerDay.toFixed(2)} L a day, told over ${water.evaporation.days.toFixed(1)} days`,
    );
  return parts
    .join('\n\n')
    .split('\n')
    .map(text => line(` ${text}`));
}
