// Searching everything that is recorded: codes, names, places, people, days and free text, with typing errors.

import MiniSearch from 'minisearch';
import {sentenceOf} from '../records/daybook.ts';
import {atOf} from '../records/entry.ts';
import {keptParts} from '../records/kept-parts.ts';
import {methods} from '../records/methods.ts';
import {valueAt} from '../records/state.ts';
import {aboutOf} from './daybook.ts';
import type {Desk} from './desk.ts';

export interface Found {
  readonly kind: 'sample' | 'lot' | 'specimen' | 'unit' | 'logger' | 'person' | 'entry';
  /** Of an entry, what it is about in the first place; empty where it is about nothing with a code. */
  readonly code: string;
  /** What it is, in words. */
  readonly text: string;
  /** Of an entry: its id. */
  readonly entry: string | null;
}

export interface Finder {
  /** What holds all the words, each begun or misspelt a little; the likeliest first. */
  find(words: string): Found[];
}

/** Reads all that the desk has at hand once. */
export function finderOf(desk: Desk): Finder {
  const documents = [...things(desk), ...entries(desk)].map((one, id) => ({...one, id}));
  const index = new MiniSearch<Document>({
    fields: ['code', 'text', 'more'],
    tokenize: tokensOf,
    searchOptions: {
      tokenize: text =>
        text
          .toLowerCase()
          .split(/\s+/u)
          .filter(word => word !== ''),
      combineWith: 'AND',
      prefix: true,
      // Codes and days that differ by one sign are others.
      fuzzy: term => (/\d/u.test(term) || term.length < 4 ? false : 0.3),
      boost: {code: 4, text: 2},
      boostDocument: (id: number) => WEIGHTS[documents[id]?.kind ?? 'entry'],
    },
  });
  index.addAll(documents);
  return {
    find(words) {
      const wanted = words.trim().toLowerCase();
      const all = index.search(words).flatMap(({id}) => documents[id as number] ?? []);
      const exact = all.filter(({kind, code}) => kind !== 'entry' && code.toLowerCase() === wanted);
      return [...exact, ...all.filter(one => !exact.includes(one))].map(
        ({kind, code, text, entry}): Found => ({kind, code, text, entry}),
      );
    },
  };
}

/** What is above comes before what is below it, and things before what was written of them. */
const WEIGHTS: Readonly<Record<Found['kind'], number>> = {
  sample: 3,
  lot: 2,
  unit: 2,
  logger: 2,
  person: 2,
  specimen: 1,
  entry: 0.3,
};

type Document = Found & {readonly id: number; readonly more: string};
type Told = Found & {readonly more: string};

/** Words, and the parts of words with a sign inside, so that 022 finds 26-022-A too. */
function tokensOf(text: string): string[] {
  const words = text.split(/[\s,;:()«»"“”]+/u).filter(word => word !== '');
  const parts = words.flatMap(word =>
    word.split(/[^\p{L}\p{N}]+/u).filter(part => part !== '' && part !== word),
  );
  return [...words, ...parts];
}

function things({state, now}: Desk): Told[] {
  const {lots, units, samples, specimens, loggers, people} = state;
  return [
    ...[...samples.values()].map(sample => {
      const {code, method, host, hostPart, place, collectors = [], collected, habitat, of} = sample;
      const name = of === undefined ? 'field sample' : `part of ${of}`;
      const where = [place?.locality, place?.region, place?.country];
      const span = [collected.from, collected.to].map(day => day?.slice(0, 10));
      return told(
        'sample',
        code,
        [name, methods[method].words, ...where, host, hostPart],
        [
          ...span,
          ...collectors,
          habitat,
          sample.permit,
          sample.note,
          ...sample.bycatch.map(({what}) => what),
        ],
      );
    }),
    ...[...lots.values()].map(({code, taxon, stays, closed, sample, candidates}) =>
      told(
        'lot',
        code,
        ['lot', taxon, stays.at(-1)?.unit, closed === undefined ? undefined : 'closed'],
        [sample, ...candidates.map(({profile}) => profile)],
      ),
    ),
    ...[...specimens.values()].map(specimen => {
      const {code, kind, taxon, sex, condition, lot, sample} = specimen;
      const parts = keptParts(specimen).map(part => part.code);
      return told('specimen', code, [kind, taxon, sex, condition], [...parts, lot, sample]);
    }),
    ...[...units.values()].map(history => {
      const {code, type, place} = valueAt(history, now);
      return told('unit', code, ['unit', type, place]);
    }),
    ...[...loggers.values()].map(history => {
      const {code, kind, name} = valueAt(history, now);
      return told('logger', code, ['logger', kind, name]);
    }),
    ...[...people.values()].map(({name, places = []}) => told('person', name, ['person', ...places])),
  ];
}

function entries({state: {history, voided}, civil}: Desk): Told[] {
  return history
    .filter(({id}) => !voided.has(id))
    .map(entry => {
      const day = civil.dayOf(atOf(entry));
      const [code = '', ...others] = aboutOf(entry);
      return {
        kind: 'entry',
        code,
        text: `${day}  ${sentenceOf(entry.record)}`,
        entry: entry.id,
        more: [entry.id, entry.by, ...others].join(' '),
      };
    });
}

function told(
  kind: Exclude<Found['kind'], 'entry'>,
  code: string,
  parts: readonly (string | undefined)[],
  more: readonly (string | undefined)[] = [],
): Told {
  const said = (words: readonly (string | undefined)[]) => words.filter(word => word !== undefined);
  return {kind, code, text: said(parts).join(', '), entry: null, more: said(more).join(' ')};
}
