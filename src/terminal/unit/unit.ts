// A unit: the temperature and humidity that its animals live in.

import {livingIn} from '../../work/unit-course.ts';
import {askFile, askNote, askOffset, askReading, loggerOfUnit} from '../ask/ask-text.ts';
import type {Binding} from '../bindings.ts';
import {labelsKey} from '../out/out-keys.ts';
import {scrollKeys} from '../scroll.ts';
import type {CourseSpan, SheetOf, SheetPart, Step, View} from '../sheet.ts';
import {drawUnit} from './draw.ts';
import {courseEffect, SPANS, stretchOf} from './span.ts';

type Unit = SheetOf<'unit'>;
type Key = Binding<Unit, View, Step<Unit>>;

const spanKey = (stroke: string, span: CourseSpan): Key => ({
  strokes: [stroke],
  short: span,
  says: `the course of a ${span}`,
  hint: true,
  act: sheet => ({sheet: {...sheet, span, shift: 0}}),
});

const keys: readonly Key[] = [
  ...SPANS.map((span, i) => spanKey(String(i + 1), span)),
  {
    strokes: ['left'],
    short: 'earlier',
    says: 'the stretch before',
    hint: true,
    act: sheet => ({sheet: {...sheet, shift: sheet.shift - 1}}),
  },
  {
    strokes: ['right'],
    short: 'later',
    says: 'the stretch after',
    hint: true,
    act: sheet => ({sheet: {...sheet, shift: sheet.shift + 1}}),
  },
  {
    strokes: ['enter'],
    short: 'lot',
    says: 'open the first lot that lives here',
    hint: true,
    disabled: ({code}, {facts}) =>
      livingIn(facts.desk, code).length === 0 ? 'nothing lives here' : undefined,
    act: ({code}, {facts}) => ({open: {kind: 'lot', code: livingIn(facts.desk, code)[0]!.code, scroll: 0}}),
  },
  {
    strokes: ['l'],
    short: 'log reading',
    says: 'write down what a thermometer shows, or the minimum and maximum it held',
    hint: true,
    disabled: noLogger,
    act: (sheet, view) => askReading(view.facts.desk, loggerOf(sheet, view)!),
  },
  {
    strokes: ['o'],
    short: 'offset',
    says: 'how much warmer its animals are than its logger; 0 goes by the logger as it is',
    disabled: noLogger,
    act: (sheet, view) => ({ask: askOffset(sheet.code, loggerOf(sheet, view)!)}),
  },
  {
    strokes: ['t'],
    short: 'figures',
    says: 'the climate in figures by day, class of temperature and hour, or the picture again',
    hint: true,
    act: sheet => ({sheet: {...sheet, figures: sheet.figures !== true, scroll: 0}}),
  },
  {
    strokes: ['d'],
    short: 'doubts',
    says: 'what its logger said that is hardly true, to be masked or trusted',
    hint: true,
    disabled: noLogger,
    act: (sheet, view) => ({open: {kind: 'doubts', logger: loggerOf(sheet, view)!, cursor: 0}}),
  },
  {
    strokes: ['i'],
    short: 'import',
    says: 'import a file of its logger',
    disabled: noLogger,
    act: (sheet, view) => ({ask: askFile(loggerOf(sheet, view)!)}),
  },
  {
    strokes: ['n'],
    short: 'note',
    says: 'write a remark about the unit',
    hint: true,
    act: ({code}) => ({ask: askNote(code)}),
  },
  labelsKey<Unit>('unit'),
  ...scrollKeys<Unit>(),
];

export const unit: SheetPart<Unit> = {
  title: 'a unit',
  keys,
  draw: drawUnit,
  needs({code, span, shift}, {courses, facts: {desk}}) {
    const effect = courseEffect(code, stretchOf(span, shift, desk.civil, desk.now));
    return courses.has(effect.key) ? [] : [effect];
  },
};

function loggerOf({code}: Unit, {facts: {desk}}: View): string | undefined {
  return loggerOfUnit(desk, code);
}

function noLogger(sheet: Unit, view: View): string | undefined {
  return loggerOf(sheet, view) === undefined
    ? 'this unit has no logger or thermometer; teneral unit gives it one'
    : undefined;
}
