// What the words of a search lead to: lots, units, field samples, specimens, loggers, days, keys.

import {valueAt} from '../../records/state.ts';
import {daybook} from '../../work/daybook.ts';
import type {Desk} from '../../work/desk.ts';
import type {Named} from '../bindings.ts';
import type {Sheet} from '../sheet.ts';

export interface Result {
  readonly text: string;
  readonly leads: {readonly open: Sheet} | {readonly press: string} | undefined;
}

const lotSheet = (code: string): Sheet => ({kind: 'lot', code, scroll: 0});
const unitSheet = (code: string): Sheet => ({kind: 'unit', code, span: 'week', shift: 0, scroll: 0});
const sampleSheet = (code: string): Sheet => ({kind: 'sample', code, scroll: 0});

/** Everything that holds all the words, those that begin with them first; nothing where there are no words. */
export function resultsFor(text: string, desk: Desk, keys: readonly Named[]): Result[] {
  const words = text
    .toLowerCase()
    .split(/\s+/)
    .filter(word => word !== '');
  if (words.length === 0) return [];
  const holds = ({text}: Result) => words.every(word => text.toLowerCase().includes(word));
  const begins = ({text}: Result) =>
    text
      .toLowerCase()
      .split(' ')
      .some(part => part.startsWith(words[0]!));
  const found = [...things(desk), ...onDay(words[0]!, desk), ...keyResults(keys)].filter(holds);
  return [...found.filter(begins), ...found.filter(result => !begins(result))];
}

function things({state, now}: Desk): Result[] {
  const {lots, units, samples, specimens, loggers, people} = state;
  return [
    ...[...lots.values()].map(({code, taxon, stays, closed}) =>
      result(
        [code, 'lot', taxon, stays.at(-1)?.unit, closed === undefined ? undefined : 'closed'],
        lotSheet(code),
      ),
    ),
    ...[...units.values()].map(history => {
      const {code, type, place} = valueAt(history, now);
      return result([code, 'unit', type, place], unitSheet(code));
    }),
    ...[...samples.values()].map(({code, method, host, place, collectors}) =>
      result([code, 'field sample', method, place?.locality, host, ...(collectors ?? [])], sampleSheet(code)),
    ),
    ...[...specimens.values()].map(({code, kind, taxon, sex, sample}) =>
      result([code, kind, taxon, sex], sampleSheet(sample)),
    ),
    ...[...loggers.values()].map(history => {
      const {code, kind, name} = valueAt(history, now);
      const read = [...units.values()].map(unit => valueAt(unit, now)).find(({logger}) => logger === code);
      return result(
        [code, 'logger', kind, name, read?.code],
        read === undefined ? undefined : unitSheet(read.code),
      );
    }),
    ...[...people.values()].map(({name, days, places}) =>
      result([name, 'person', ...(days ?? []), ...(places ?? [])], undefined),
    ),
  ];
}

/** What was written of a day, where the word is one: 2026-06-12. */
function onDay(word: string, desk: Desk): Result[] {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(word)) return [];
  return daybook(desk, {})
    .filter(({at}) => at.startsWith(word))
    .map(({at, about, what}) => {
      const lot = about.find(code => desk.state.lots.has(code));
      return result(
        [at.slice(0, 16).replace('T', ' '), about[0], what],
        lot === undefined ? undefined : lotSheet(lot),
      );
    });
}

function keyResults(keys: readonly Named[]): Result[] {
  return keys.map(({strokes, short, says}) => ({text: `${short}: ${says}`, leads: {press: strokes[0]!}}));
}

function result(parts: readonly (string | undefined)[], sheet: Sheet | undefined): Result {
  return {
    text: parts.filter(part => part !== undefined).join('  '),
    leads: sheet === undefined ? undefined : {open: sheet},
  };
}
