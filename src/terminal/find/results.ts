// What the words of a search lead to: samples, lots, specimens, units, loggers, people, entries of the daybook, keys.
import {valueAt} from '../../records/state.ts';
import type {Desk} from '../../work/desk.ts';
import type {Found} from '../../work/find.ts';
import type {Named} from '../bindings.ts';
import type {Sheet, View} from '../sheet.ts';
import {sheetFor} from '../sheet-for.ts';

export interface Result {
  readonly text: string;
  readonly leads: {readonly open: Sheet} | {readonly press: string} | undefined;
}

/** Everything that holds all the words, misspelt a little or only begun; nothing where there are no words. */
export function resultsFor(text: string, {whole}: View, keys: readonly Named[]): Result[] {
  const words = text
    .toLowerCase()
    .split(/\s+/)
    .filter(word => word !== '');
  if (words.length === 0) return [];
  const found = whole === undefined ? [] : whole.finder.find(text).map(one => resultOf(one, whole.desk));
  const pressed = keyResults(keys).filter(({text}) => words.every(word => text.toLowerCase().includes(word)));
  return [...found, ...pressed];
}

function resultOf({kind, code, text}: Found, desk: Desk): Result {
  const said = kind === 'entry' ? `${text}${code === '' ? '' : ` (${code})`}` : `${code}  ${text}`;
  const sheet = kind === 'entry' ? sheetOf(code, desk) : sheetOfKind(kind, code, desk);
  return {text: said, leads: sheet === undefined ? undefined : {open: sheet}};
}

/** The sheet of whatever has the code. */
function sheetOf(code: string, desk: Desk): Sheet | undefined {
  const {lots, samples, specimens, units, loggers} = desk.state;
  if (lots.has(code)) return sheetFor('lot', code);
  if (samples.has(code)) return sheetFor('sample', code);
  if (specimens.has(code)) return sheetFor('specimen', code);
  if (units.has(code)) return sheetFor('unit', code);
  return loggers.has(code) ? sheetOfKind('logger', code, desk) : undefined;
}

function sheetOfKind(kind: Exclude<Found['kind'], 'entry'>, code: string, desk: Desk): Sheet | undefined {
  if (kind === 'person') return undefined;
  if (kind !== 'logger') return sheetFor(kind, code);
  const read = [...desk.state.units.values()]
    .map(unit => valueAt(unit, desk.now))
    .find(({logger}) => logger === code);
  return read === undefined ? undefined : sheetFor('unit', read.code);
}

function keyResults(keys: readonly Named[]): Result[] {
  return keys.map(({strokes, short, says}) => ({text: `${short}: ${says}`, leads: {press: strokes[0]!}}));
}
