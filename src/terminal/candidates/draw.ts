// The candidates of a lot, drawn: weight as it would be kept, weight suggested, and why.
import {cut, wrap} from '../../exchange/pictures/fit.ts';
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {clueWords} from '../../work/choice.ts';
import {firstShown} from '../layout.ts';
import type {CandidatesSheet, Page, Room, View} from '../sheet.ts';
import {choicesOf, cluesShown, draftOf, keyOf, type Row, rowAt, rowsOf} from './draft.ts';

const NAME_COLUMNS = 26;
const HEAD_LINES = 3;

export function drawCandidates(sheet: CandidatesSheet, view: View, room: Room): Page {
  const rows = rowsOf(sheet, view);
  const shown = Math.max(1, room.body - HEAD_LINES);
  const first = firstShown(sheet.cursor, rows.length, shown);
  const whole = draftOf(sheet, view).reduce((sum, {weight}) => sum + weight, 0);
  const known = clueWords(cluesShown(sheet, view));
  return {
    head: `what ${sheet.lot} may be`,
    aside: rows.length > shown ? `${sheet.cursor + 1} of ${rows.length}` : '',
    body: [
      line(cut(` known  ${known === '' ? 'nothing yet: t tells more' : known}`, room.columns)),
      [],
      line(cut(`    weight  suggested  ${'candidate'.padEnd(NAME_COLUMNS)}  why`, room.columns), 'heading'),
      ...rows.slice(first, first + shown).map((row, i) => {
        return rowLine(row, first + i === sheet.cursor, whole, view, room);
      }),
      ...(rows.length > 0 ? [] : [line(` ${waitingWords(sheet, view)}`, 'expected')]),
    ],
    detail: detail(sheet, view, room),
  };
}

function rowLine(
  {profile, weight, suggested, choice}: Row,
  here: boolean,
  whole: number,
  view: View,
  room: Room,
): Line {
  const share = weight === undefined || whole === 0 ? '' : (weight / whole).toFixed(2);
  const text = [
    ` ${here ? view.glyphs.cursor : ' '} `,
    share.padStart(7),
    '  ',
    (suggested?.toFixed(2) ?? '').padStart(9),
    '  ',
    profile.padEnd(NAME_COLUMNS),
    '  ',
    [...(choice?.dated === false ? ['no date'] : []), ...(choice?.why ?? [])].join('; '),
  ].join('');
  return [piece(cut(text, room.columns), here ? 'cursor' : weight === undefined ? 'expected' : 'plain')];
}

function waitingWords(sheet: CandidatesSheet, view: View): string {
  if (keyOf(sheet, view) === undefined) return `There is no open lot ${sheet.lot}.`;
  const loaded = view.choices.get(keyOf(sheet, view)!);
  if (loaded === undefined) return 'The profiles are being looked through …';
  if ('failed' in loaded) return loaded.failed.message;
  return 'No profile fits all of this. t tells it otherwise; a names a profile.';
}

function detail(sheet: CandidatesSheet, view: View, room: Room): Line[] {
  if (sheet.fault !== undefined)
    return wrap(sheet.fault, room.columns - 2).map(text => line(` ${text}`, 'late'));
  const row = rowAt(sheet, view);
  if (row === undefined) return [];
  const {choice} = row;
  const about =
    choice === undefined
      ? choicesOf(sheet, view) === undefined
        ? []
        : ['Not among the suggestions: it was named by hand.']
      : [
          `${choice.name} (${choice.rank})${choice.fromMemory ? ': some of its figures are from memory' : ''}`,
          ...(choice.why.length === 0 ? [] : [`Why: ${choice.why.join('; ')}.`]),
          ...(choice.dated ? [] : ['No honest date exists for it: its moults are counted.']),
        ];
  return [
    line(` ${row.profile}`, 'heading'),
    ...about.flatMap(text => wrap(text, room.columns - 2)).map(text => line(` ${text}`)),
    line(' Weights are shares of what it may be; what is seen later weighs them anew.', 'expected'),
  ];
}
