// A form, drawn: a line a field, help beside the one under the cursor, what is to be minded below.
import {cut, wrap} from '../../exchange/pictures/fit.ts';
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {firstShown} from '../layout.ts';
import type {FormSheet, Page, Room, View} from '../sheet.ts';
import {type Field, valueIn} from './field.ts';
import {fieldsOf} from './form.ts';
import {forms} from './forms.ts';

const LABEL = 14;

export function drawForm(sheet: FormSheet, view: View, room: Room): Page {
  const {about, values, cursor, doubted} = sheet;
  const form = forms[sheet.form];
  const fields = fieldsOf(sheet, view);
  const first = firstShown(cursor, fields.length, room.body);
  const hints = 'hints' in form ? form.hints(about, view, values) : [];
  return {
    head: form.title(about),
    aside: `${cursor + 1} of ${fields.length}`,
    body: fields
      .slice(first, first + room.body)
      .map((field, i) => fieldLine(field, sheet, first + i === cursor, view, room)),
    detail: [
      line(doubted ? ' enter once more writes it down all the same' : ' enter writes it down', 'expected'),
      ...hints.flatMap(hint => wrap(hint, room.columns - 2)).map(hint => line(` ${hint}`)),
    ],
  };
}

function fieldLine(field: Field, {values}: FormSheet, here: boolean, view: View, room: Room): Line {
  const value = valueIn(field, values);
  const mark = here ? view.glyphs.cursor : ' ';
  const must = field.required === true && value === '' ? ' must be given' : '';
  const help = here ? (field.help ?? (field.choices === undefined ? '' : 'left and right choose')) : must;
  const shown = here && field.choices === undefined ? `${value}_` : value;
  const left = Math.max(8, room.columns - LABEL - shown.length - 8);
  return [
    piece(` ${mark} ${field.label.padEnd(LABEL)} `, here ? 'cursor' : 'expected'),
    piece(shown, 'seen'),
    ...(help === ''
      ? []
      : [piece(`   ${cut(help, left, view.glyphs.more)}`, must === '' ? 'expected' : 'late')]),
  ];
}
