// The threads, the second sheet: when something will come out of which box.
import {askKeys} from '../answer/asks.ts';
import {askNote} from '../ask/ask-text.ts';
import type {Binding} from '../bindings.ts';
import {cursorKeys} from '../cursor-keys.ts';
import {emergenceSheet} from '../emergence/form.ts';
import type {Effect, SheetOf, SheetPart, Step, View} from '../sheet.ts';
import {dayColumns, FIRST_CELLS, LABEL_CELLS, ZOOMS} from './columns.ts';
import {drawThreads} from './draw.ts';
import {lotsShown} from './lots-shown.ts';

type Threads = SheetOf<'threads'>;

/** Columns that one key moves the picture by. */
const STEP = 7;

const keys: readonly Binding<Threads, View, Step<Threads>>[] = [
  {
    strokes: ['enter'],
    short: 'open',
    says: 'open the lot under the cursor',
    hint: true,
    disabled: needsLot,
    act: (sheet, view) => ({open: {kind: 'lot', code: lotAt(sheet, view)!.code, scroll: 0}}),
  },
  {
    strokes: ['c'],
    short: 'climate',
    says: 'open the unit the lot lives in',
    hint: true,
    disabled: needsLot,
    act: (sheet, view) => ({
      open: {kind: 'unit', code: lotAt(sheet, view)!.stays.at(-1)!.unit, span: 'week', shift: 0, scroll: 0},
    }),
  },
  {
    strokes: ['e'],
    short: 'adults',
    says: 'write down adults that came out',
    hint: true,
    disabled: needsLot,
    act: (sheet, view) => ({open: emergenceSheet(lotAt(sheet, view)!.code)}),
  },
  {
    strokes: ['n'],
    short: 'note',
    says: 'write a remark about the lot',
    hint: true,
    disabled: needsLot,
    act: (sheet, view) => {
      const about = lotAt(sheet, view)!.code;
      return {ask: askNote(about)};
    },
  },
  {
    strokes: ['left'],
    short: 'earlier',
    says: 'a week earlier',
    hint: true,
    act: sheet => ({sheet: {...sheet, shift: sheet.shift - STEP}}),
  },
  {
    strokes: ['right'],
    short: 'later',
    says: 'a week later',
    hint: true,
    act: sheet => ({sheet: {...sheet, shift: sheet.shift + STEP}}),
  },
  ...askKeys<Threads>((sheet, view) => lotAt(sheet, view)?.code, false),
  {strokes: ['0'], short: 'now', says: 'back to now', act: sheet => ({sheet: {...sheet, shift: 0}})},
  {strokes: ['-'], short: 'wider', says: 'more days to a column', act: sheet => ({sheet: zoomed(sheet, 1)})},
  {
    strokes: ['+', '='],
    short: 'closer',
    says: 'fewer days to a column',
    act: sheet => ({sheet: zoomed(sheet, -1)}),
  },
  ...cursorKeys<Threads>('lot', moved),
];

export const threads: SheetPart<Threads> = {
  title: 'the threads',
  keys,
  draw: drawThreads,
  needs(sheet, view): readonly Effect[] {
    const cells = view.columns - LABEL_CELLS - FIRST_CELLS;
    const days = dayColumns(view, cells, sheet.daysPerColumn, sheet.shift).map(({day}) => day);
    const of = `${days[0]} ${days.at(-1)} ${days.length}`;
    if (view.outlooks.of === of || view.outlooks.failed !== undefined) return [];
    return [{do: 'outlooks', of, days, first: lotAt(sheet, view)?.code}];
  },
};

function lotAt(sheet: Threads, view: View) {
  const lots = lotsShown(view);
  return lots.find(({code}) => code === sheet.cursor) ?? lots[0];
}

function needsLot(sheet: Threads, view: View): string | undefined {
  return lotAt(sheet, view) === undefined ? 'there is no open lot' : undefined;
}

function moved(sheet: Threads, view: View, by: number): Step<Threads> {
  const lots = lotsShown(view);
  const here = lots.findIndex(({code}) => code === lotAt(sheet, view)?.code);
  return {sheet: {...sheet, cursor: lots[Math.max(0, Math.min(lots.length - 1, here + by))]?.code}};
}

function zoomed(sheet: Threads, by: number): Threads {
  const index = ZOOMS.findIndex(days => days >= sheet.daysPerColumn);
  return {...sheet, daysPerColumn: ZOOMS[Math.max(0, Math.min(ZOOMS.length - 1, index + by))]!};
}
