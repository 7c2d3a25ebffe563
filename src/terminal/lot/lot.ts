// A lot: everything about it on one long page.
import {actsKey} from '../acts/acts.ts';
import {askKeys} from '../answer/asks.ts';
import {askNote} from '../ask/ask-text.ts';
import type {Binding} from '../bindings.ts';
import {candidatesSheet} from '../candidates/candidates.ts';
import {emergenceSheet} from '../emergence/form.ts';
import {labelsKey} from '../out/out-keys.ts';
import {scrollKeys} from '../scroll.ts';
import type {SheetOf, SheetPart, Step, View} from '../sheet.ts';
import {threads} from '../threads/threads.ts';
import {courseEffect, stretchOf} from '../unit/span.ts';
import {deskWith} from '../whole-desk.ts';
import {drawLot} from './draw.ts';

type Lot = SheetOf<'lot'>;

const keys: readonly Binding<Lot, View, Step<Lot>>[] = [
  {
    strokes: ['e'],
    short: 'adults',
    says: 'write down adults that came out',
    hint: true,
    disabled: (sheet, view) => (lotOf(sheet, view)?.closed === undefined ? undefined : 'this lot is closed'),
    act: ({code}) => ({open: emergenceSheet(code)}),
  },
  {
    strokes: ['m'],
    short: 'may be',
    says: 'see what it may be and why, and change its candidates',
    hint: true,
    disabled: (sheet, view) => (lotOf(sheet, view)?.closed === undefined ? undefined : 'this lot is closed'),
    act: ({code}) => ({open: candidatesSheet(code)}),
  },
  {
    strokes: ['n'],
    short: 'note',
    says: 'write a remark about the lot',
    hint: true,
    act: ({code}) => ({ask: askNote(code)}),
  },
  {
    strokes: ['c'],
    short: 'climate',
    says: 'open the unit it lives in',
    hint: true,
    disabled: (sheet, view) => (unitOf(sheet, view) === undefined ? 'it lives nowhere now' : undefined),
    act: (sheet, view) => ({
      open: {kind: 'unit', code: unitOf(sheet, view)!, span: 'week', shift: 0, scroll: 0},
    }),
  },
  {
    strokes: ['o'],
    short: 'origin',
    says: 'open the field sample it comes from, with all that came of it',
    hint: true,
    disabled: (sheet, view) =>
      lotOf(sheet, view) === undefined ? 'its field sample is not known' : undefined,
    act: (sheet, view) => ({open: {kind: 'sample', code: lotOf(sheet, view)!.sample, scroll: 0}}),
  },
  labelsKey<Lot>('lot'),
  actsKey<Lot>('lot'),
  ...askKeys<Lot>(({code}) => code, true),
  ...scrollKeys<Lot>(),
];

export const lot: SheetPart<Lot> = {
  title: 'a lot',
  keys,
  draw: drawLot,
  needs(sheet, view) {
    const {civil, now} = view.facts.desk;
    const unit = unitOf(sheet, view);
    const course = unit === undefined ? undefined : courseEffect(unit, stretchOf('week', 0, civil, now));
    const chain = `up ${sheet.code}`;
    return [
      ...(threads.needs?.({kind: 'threads', cursor: sheet.code, shift: 0, daysPerColumn: 1}, view) ?? []),
      ...(course === undefined || view.courses.has(course.key) ? [] : [course]),
      ...(view.trees.has(chain) ? [] : [{do: 'tree', key: chain, code: sheet.code, way: 'up'} as const]),
    ];
  },
};

function lotOf({code}: Lot, view: View) {
  return deskWith(code, view).state.lots.get(code);
}

function unitOf(sheet: Lot, view: View): string | undefined {
  return lotOf(sheet, view)?.stays.at(-1)?.unit;
}
