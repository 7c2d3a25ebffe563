// What may be written down about a lot, field sample, specimen or the room: one key each.
import {type Line, piece} from '../../exchange/pictures/line.ts';
import type {Binding} from '../bindings.ts';
import {formSheet} from '../form/form.ts';
import {type Act, acts as actsOf, type Subject} from '../form/forms.ts';
import {firstShown} from '../layout.ts';
import type {Page, Room, SheetOf, SheetPart, Step, View} from '../sheet.ts';
import type {Stroke} from '../strokes.ts';

type Acts = SheetOf<'acts'>;

export function actsSheet(of: Subject, code: string): Acts {
  return {kind: 'acts', of, code, cursor: 0};
}

/** The key that opens them on a sheet about something. */
export function actsKey<Own extends {readonly code: string}>(of: Subject): Binding<Own, View, Step<never>> {
  return {
    strokes: ['d'],
    short: 'write down',
    says: 'everything else that may be written down about it',
    hint: true,
    act: ({code}) => ({open: actsSheet(of, code)}),
  };
}

const keys: readonly Binding<Acts, View, Step<Acts>>[] = [
  {
    strokes: ['enter'],
    short: 'open',
    says: 'open the form under the cursor; its letter does so at once',
    hint: true,
    act: sheet => opened(sheet, actsOf[sheet.of][sheet.cursor]!),
  },
  {strokes: ['down'], short: 'down', says: 'the line below', act: moved(1)},
  {strokes: ['up'], short: 'up', says: 'the line above', act: moved(-1)},
];

export const acts: SheetPart<Acts> = {
  title: 'what may be written down',
  keys,
  type(sheet, stroke: Stroke) {
    const act = actsOf[sheet.of].find(({key}) => key === stroke);
    return act === undefined ? undefined : opened(sheet, act);
  },
  draw: drawActs,
};

function opened({code}: Acts, {form}: Act): Step<Acts> {
  return {back: true, open: formSheet(form, code)};
}

function moved(by: number) {
  return (sheet: Acts): Step<Acts> => {
    const count = actsOf[sheet.of].length;
    return {sheet: {...sheet, cursor: (sheet.cursor + by + count) % count}};
  };
}

function drawActs({of, code, cursor}: Acts, {glyphs}: View, room: Room): Page {
  const all = actsOf[of];
  const lines = room.body + room.detail;
  const first = firstShown(cursor, all.length, lines);
  return {
    head: of === 'room' ? 'write down' : `write down about ${code}`,
    aside: '',
    body: all.slice(first, first + lines).map(({key, says}, i): Line => {
      const here = first + i === cursor;
      return [
        piece(` ${here ? glyphs.cursor : ' '} ${key}  `, 'seen'),
        piece(says, here ? 'cursor' : 'plain'),
      ];
    }),
  };
}
