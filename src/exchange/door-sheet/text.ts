// The sheet for the door as plain text, 80 columns wide.
import {fill, wrap} from '../pictures/fit.ts';
import {DEFERS, type DoorDay, type DoorRow, type DoorSheet, type DoorShelf} from './door-sheet.ts';

const COLUMNS = 80;
const SET_IN = '            ';

export function doorSheetText({title, days, cautions}: DoorSheet): string {
  const blocks = [
    title,
    ...days.flatMap(dayBlocks),
    ...(cautions.length === 0
      ? []
      : [['Care', ...cautions.flatMap((caution, i) => hanging(`${i + 1}  `, caution))].join('\n')]),
    wrap(DEFERS, COLUMNS).join('\n'),
    `done by ${'_'.repeat(28)}   taken over by ${'_'.repeat(26)}`,
  ];
  return `${blocks.join('\n\n')}\n`;
}

function dayBlocks({heading, aside, remarks, shelves}: DoorDay): string[] {
  const head = fill(heading, COLUMNS - aside.length) + aside;
  return [
    `${head}\n${'='.repeat(COLUMNS)}`,
    ...(remarks.length === 0 ? [] : [remarks.flatMap(remark => hanging('!  ', remark)).join('\n')]),
    ...(shelves.length === 0 ? ['Nothing is to be done.'] : shelves.map(shelfBlock)),
  ];
}

function shelfBlock({place, who, rows}: DoorShelf): string {
  const head = who === undefined ? place : fill(place, COLUMNS - who.length) + who;
  return [head, ...rows.flatMap(rowLines)].join('\n');
}

function rowLines({unit, what, until, ask, caution}: DoorRow): string[] {
  const mark = caution === undefined ? '' : ` (${caution})`;
  const end = `${until}${mark}`;
  const width = COLUMNS - SET_IN.length - end.length - 1;
  const [first = '', ...rest] = wrap(what, width);
  return [
    `[ ]  ${fill(unit, SET_IN.length - 6)} ${fill(first, width)} ${end}`,
    ...rest.map(text => `${SET_IN}${text}`),
    ...wrap(
      ask.map(label => `${label.replaceAll(' ', '\u00a0')}\u00a0${'_'.repeat(8)}`).join(' '),
      COLUMNS - SET_IN.length,
    ).map(text => `${SET_IN}${text.replaceAll('\u00a0', ' ')}`),
  ];
}

function hanging(lead: string, text: string): string[] {
  return wrap(text, COLUMNS - lead.length).map(
    (line, i) => (i === 0 ? lead : ' '.repeat(lead.length)) + line,
  );
}
