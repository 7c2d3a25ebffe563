// Find: one prompt for codes, names, places, people, days and keys.
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {typed} from '../ask/answering.ts';
import {everywhere} from '../keys/everywhere.ts';
import {firstShown} from '../layout.ts';
import {roundKeys} from '../round/keys.ts';
import type {Page, Room, SheetOf, SheetPart, Step, View} from '../sheet.ts';
import {isCharacter, type Stroke} from '../strokes.ts';
import {type Result, resultsFor} from './results.ts';

type Find = SheetOf<'find'>;

export const find: SheetPart<Find> = {
  title: 'find',
  keys: [],
  needs: (_, {whole, facts}) => (whole?.revision === facts.desk.room.revision ? [] : [{do: 'whole'}]),
  typedInto: true,
  type: typeInto,
  draw: drawFind,
};

function typeInto(sheet: Find, stroke: Stroke, view: View): Step<Find> | undefined {
  if (stroke === 'enter') return choose(sheet, view);
  if (stroke === 'up') return {sheet: {...sheet, cursor: Math.max(0, sheet.cursor - 1)}};
  if (stroke === 'down') {
    const last = Math.max(0, results(sheet, view).length - 1);
    return {sheet: {...sheet, cursor: Math.min(last, sheet.cursor + 1)}};
  }
  if (stroke === 'delete' || isCharacter(stroke))
    return {sheet: {...sheet, text: typed(sheet.text, stroke), cursor: 0}};
  return undefined;
}

function choose(sheet: Find, view: View): Step<Find> {
  const leads = results(sheet, view)[sheet.cursor]?.leads;
  if (leads === undefined)
    return {say: sheet.text === '' ? 'Type a code, a name or a day first.' : 'There is no sheet for this.'};
  return {back: true, ...leads};
}

function results({text}: Find, view: View): Result[] {
  return resultsFor(text, view, [...roundKeys, ...everywhere]);
}

function drawFind(sheet: Find, view: View, room: Room): Page {
  const found = results(sheet, view);
  const first = firstShown(sheet.cursor, found.length, room.body - 2);
  const nothing =
    sheet.text === ''
      ? 'a code, a name, a place, a person, a day (2026-06-12) or what a key does'
      : view.whole === undefined
        ? 'Everything recorded is being read …'
        : 'Nothing holds all these words, nor words a little like them.';
  return {
    head: 'find',
    aside: sheet.text === '' ? '' : `${found.length} found`,
    body: [
      [piece(' find: ', 'heading'), piece(`${sheet.text}_`, 'seen')],
      [],
      ...(found.length === 0 ? [line(` ${nothing}`, 'expected')] : []),
      ...found.slice(first, first + room.body - 2).map((result, i): Line => {
        const here = first + i === sheet.cursor;
        return [piece(` ${here ? view.glyphs.cursor : ' '} ${result.text}`, here ? 'cursor' : 'plain')];
      }),
    ],
    detail: [line(' enter opens, arrows choose, escape leaves', 'expected')],
  };
}
