// What is not linked, labelled or identified yet, the oldest first.
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {dayWords} from '../../exchange/time-words.ts';
import {type Open, openEnds as openEndsOf} from '../../records/open-ends.ts';
import type {Binding} from '../bindings.ts';
import {formSheet} from '../form/form.ts';
import {firstShown} from '../layout.ts';
import {allLabelsKey, exportKey} from '../out/out-keys.ts';
import type {Page, Room, SheetOf, SheetPart, Step, View} from '../sheet.ts';
import {sheetFor} from '../sheet-for.ts';

type OpenEnds = SheetOf<'open-ends'>;

const keys: readonly Binding<OpenEnds, View, Step<OpenEnds>>[] = [
  {
    strokes: ['enter'],
    short: 'open',
    says: 'open what is under the cursor',
    hint: true,
    disabled: nothingLeft,
    act: (sheet, view) => {
      const {kind, code} = under(sheet, view)!;
      return {open: sheetFor(kind, code)};
    },
  },
  {
    strokes: ['i'],
    short: 'identify',
    says: 'give the specimen under the cursor its name',
    hint: true,
    disabled: (sheet, view) => (under(sheet, view)?.kind === 'specimen' ? undefined : 'this is no specimen'),
    act: (sheet, view) => ({open: formSheet('identify', under(sheet, view)!.code)}),
  },
  allLabelsKey<OpenEnds>(),
  exportKey<OpenEnds>(),
  {strokes: ['down', 'j'], short: 'down', says: 'the line below', hint: true, act: moved(1)},
  {strokes: ['up', 'k'], short: 'up', says: 'the line above', act: moved(-1)},
  {strokes: ['page-down'], short: 'page down', says: 'ten lines down', act: moved(10)},
  {strokes: ['page-up'], short: 'page up', says: 'ten lines up', act: moved(-10)},
];

export const openEnds: SheetPart<OpenEnds> = {
  title: 'what is still open',
  keys,
  needs: (_, {whole, facts}) => (whole?.revision === facts.desk.room.revision ? [] : [{do: 'whole'}]),
  draw: drawOpenEnds,
};

/** One line for each thing, with all that it lacks. */
interface Row extends Pick<Open, 'kind' | 'code' | 'since'> {
  readonly missing: readonly string[];
}

function rowsOf({facts, whole}: View): Row[] {
  const {state, now} = (whole ?? facts).desk;
  const rows = new Map<string, Row>();
  for (const {kind, code, since, what, missing} of openEndsOf(state, now)) {
    const said = what === 'overdue' ? `overdue: ${missing}` : missing;
    rows.set(code, {kind, code, since, missing: [...(rows.get(code)?.missing ?? []), said]});
  }
  return [...rows.values()];
}

function under({cursor}: OpenEnds, view: View): Row | undefined {
  return rowsOf(view)[cursor];
}

function nothingLeft(sheet: OpenEnds, view: View): string | undefined {
  return under(sheet, view) === undefined ? 'nothing is open' : undefined;
}

function moved(by: number) {
  return (sheet: OpenEnds, view: View): Step<OpenEnds> => {
    const last = Math.max(0, rowsOf(view).length - 1);
    return {sheet: {...sheet, cursor: Math.max(0, Math.min(last, sheet.cursor + by))}};
  };
}

function drawOpenEnds(sheet: OpenEnds, view: View, room: Room): Page {
  const {civil, now} = view.facts.desk;
  const rows = rowsOf(view);
  const lines = room.body + room.detail;
  const first = firstShown(sheet.cursor, rows.length, lines);
  return {
    head: 'not linked, labelled or identified yet',
    aside: `${rows.length} open`,
    body:
      rows.length === 0
        ? [line(' Nothing is open: every specimen is linked, labelled and identified.', 'good')]
        : rows.slice(first, first + lines).map(({kind, code, since, missing}, i): Line => {
            const here = first + i === sheet.cursor;
            return [
              piece(` ${here ? view.glyphs.cursor : ' '} ${code.padEnd(16)}`, here ? 'cursor' : 'seen'),
              piece(
                ` ${kind.padEnd(9)}${dayWords(civil.dayOf(since), civil, now).padEnd(14)}${missing.join('; ')}`,
              ),
            ];
          }),
  };
}
