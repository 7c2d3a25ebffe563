// A unit, drawn: its course, what lives in it, what is due, cautions.
import type {WaterOffset} from '../../climate/water-offset.ts';
import {type Line, line} from '../../exchange/pictures/line.ts';
import {materialInWords} from '../../records/plain-words.ts';
import {countsInWords} from '../../records/stage-words.ts';
import {valueAt} from '../../records/state.ts';
import {livingIn} from '../../work/unit-course.ts';
import {waterOffsetWords} from '../../work/water-words.ts';
import {scrolled, whereScrolled} from '../scroll.ts';
import type {Page, Room, SheetOf, View} from '../sheet.ts';
import {whenWords} from '../when-words.ts';
import {courseLines} from './course-picture.ts';
import {figureLines} from './figures.ts';
import {courseEffect, stretchOf} from './span.ts';

export function drawUnit(sheet: SheetOf<'unit'>, view: View, room: Room): Page {
  const {desk} = view.facts;
  const {civil, now} = desk;
  const history = desk.state.units.get(sheet.code);
  if (history === undefined)
    return {head: sheet.code, aside: '', body: [line(` There is no unit ${sheet.code}.`)], detail: []};
  const {type, place, logger, offsetC} = valueAt(history, now);
  const stretch = stretchOf(sheet.span, sheet.shift, civil, now);
  const course = view.courses.get(courseEffect(sheet.code, stretch).key);
  const water = course !== undefined && 'value' in course ? course.value.course.water : undefined;
  const words = below(sheet, view, water);
  const picture =
    sheet.figures === true
      ? figureLines(course, stretch, view)
      : courseLines(course, stretch, view, {columns: room.columns - 1, rows: room.body});
  const all = words.length > room.detail ? [...picture, [], ...words] : picture;
  const read =
    logger === undefined
      ? 'no logger'
      : `read by ${logger}${offsetC === undefined ? '' : `, ${offsetC > 0 ? '+' : ''}${offsetC} °C`}`;
  return {
    head: `${sheet.code} ${view.glyphs.dot} ${type} at ${place} ${view.glyphs.dot} ${read}`,
    aside: whereScrolled(all.length, sheet.scroll, room.body) || sheet.span,
    body: scrolled(all, sheet.scroll, room.body),
    detail: words,
  };
}

function below({code}: SheetOf<'unit'>, view: View, water: WaterOffset | undefined): Line[] {
  const {desk, today} = view.facts;
  const tasks = today.tasks.filter(({unit, state}) => unit === code && state !== 'done');
  const cautions = [...new Set(tasks.flatMap(({caution}) => (caution === null ? [] : [caution])))];
  return [
    ...(water === undefined
      ? []
      : [
          line(
            ` water  ${waterOffsetWords(water)}${water.used ? ': gone by; o changes it' : ': too few to go by'}`,
          ),
        ]),
    ...livingIn(desk, code).map(lot => {
      const {material, alive} = lot;
      const what = material === undefined ? countsInWords(alive) : materialInWords(material);
      return line(` lives  ${lot.code}  ${what}${lot.taxon === undefined ? '' : `, ${lot.taxon}`}`);
    }),
    ...tasks.map(task =>
      line(
        ` due    ${task.title}: ${whenWords(task, desk.civil, desk.now)}`,
        task.state === 'overdue' ? 'late' : 'plain',
      ),
    ),
    ...cautions.map(caution => line(` care   ${caution}`)),
  ];
}
