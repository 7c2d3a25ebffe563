// All keys of a sheet and of every sheet, from the same tables that the keys act by.
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {SHADES_FROM} from '../../exchange/pictures/thread.ts';
import {keyName} from '../bindings.ts';
import {scrolled, scrollKeys, whereScrolled} from '../scroll.ts';
import type {Page, Room, SheetOf, SheetPart, View} from '../sheet.ts';
import {everywhere} from './everywhere.ts';

type Keys = SheetOf<'keys'>;

export const keys: SheetPart<Keys> = {title: 'all keys', keys: scrollKeys<Keys>(), draw: drawKeys};

function drawKeys(sheet: Keys, view: View, room: Room): Page {
  const {title, keys} = view.tables[sheet.of];
  const listed = (
    bindings: readonly {readonly strokes: readonly string[]; readonly says: string}[],
  ): Line[] => bindings.map(one => [piece(`   ${keyName(one).padEnd(14)}`, 'seen'), piece(one.says)]);
  const {shades, now, closed, check} = view.glyphs;
  const all = [
    line(` On ${title}`, 'heading'),
    ...listed(keys),
    [],
    line(' On every sheet', 'heading'),
    ...listed(everywhere),
    [],
    line(' Signs of a thread', 'heading'),
    line(
      '   e egg, 1 to 9 then A to Z the instar, l larva or n nymph not told apart, q prepupa, p pupa, s subimago',
    ),
    line(
      `   ${shades.map((shade, i) => `${shade} from ${SHADES_FROM[i]! * 100} %`).join(', ')} of the animals emerge on a day`,
    ),
    line(`   ${now} now, ${closed} closed day, ${check} planned check, numbers below: adults that came out`),
  ];
  const lines = room.body + room.detail;
  return {
    head: `all keys of ${title}`,
    aside: whereScrolled(all.length, sheet.scroll, lines),
    body: scrolled(all, sheet.scroll, lines),
  };
}
