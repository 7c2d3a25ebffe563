// The daybook as people read it: one line an entry.
import {instantWords} from '../exchange/time-words.ts';
import {codesGiven, codesNamed} from '../records/codes.ts';
import {sentenceOf} from '../records/daybook.ts';
import {atOf, type Entry, type Instant} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {Desk} from './desk.ts';

/** One entry as `teneral daybook` answers it. */
export interface DaybookLine {
  readonly id: string;
  readonly at: string;
  readonly recordedAt: string;
  readonly by: string;
  readonly about: readonly string[];
  readonly what: string;
  /** It was wrong, and does not count. */
  readonly voided: boolean;
  /** By whom it was taken back, when that was written down, why, and which entry stands in its place. */
  readonly void: {
    readonly by: string;
    readonly recordedAt: string;
    readonly reason: string | null;
    readonly replacedBy: string | null;
  } | null;
  /** The void entry that it is the correction of. */
  readonly replaces: string | null;
  readonly record: Entry['record'];
}

export interface DaybookQuestion {
  /** Only what names this code of a sample, lot, unit, logger or specimen; of an entry's id, all that became of it. */
  readonly code?: string | undefined;
  readonly since?: Instant | undefined;
}

/** Entries in order of time, oldest first. @throws Refusal where nothing names the code */
export function daybook({state, civil}: Desk, {code, since}: DaybookQuestion): DaybookLine[] {
  const chain = corrections(state.history, code ?? '');
  const all = state.history.filter(
    entry => code === undefined || aboutOf(entry).includes(code) || chain.has(entry.id),
  );
  const voids = voidsIn(state);
  if (code !== undefined && all.length === 0)
    throw new Refusal(
      `nothing was ever recorded of "${code}"`,
      'daybook',
      'teneral list shows the codes there are.',
    );
  return all
    .filter(entry => since === undefined || atOf(entry) >= since)
    .sort((a, b) => atOf(a) - atOf(b))
    .map(entry => ({
      id: entry.id,
      at: civil.iso(atOf(entry)),
      recordedAt: entry.recordedAt,
      by: entry.by,
      about: aboutOf(entry),
      what: sentenceOf(entry.record),
      voided: state.voided.has(entry.id),
      void: voids.get(entry.id) ?? null,
      replaces: entry.record.replaces ?? null,
      record: entry.record,
    }));
}

/** An entry, the void that took it back, what stands in its place, and so on, both ways. */
function corrections(history: readonly Entry[], id: string): ReadonlySet<string> {
  const chain = new Set<string>();
  const follow = (one: string) => {
    if (chain.has(one)) return;
    chain.add(one);
    for (const {id: other, record} of history) {
      const target = record.record === 'void' ? record.entry : record.replaces;
      if (target === undefined) continue;
      if (target === one) follow(other);
      if (other === one) follow(target);
    }
  };
  if (history.some(entry => entry.id === id)) follow(id);
  return chain;
}

function voidsIn({history, voided}: Desk['state']): ReadonlyMap<string, NonNullable<DaybookLine['void']>> {
  const replacements = new Map(
    history.flatMap(({id, record: {replaces}}) => (replaces === undefined ? [] : [[replaces, id] as const])),
  );
  return new Map(
    history.flatMap(({id, by, recordedAt, record}) => {
      if (record.record !== 'void' || voided.has(id)) return [];
      const replacedBy = replacements.get(record.entry) ?? null;
      return [[record.entry, {by, recordedAt, reason: record.reason ?? null, replacedBy}] as const];
    }),
  );
}

/** One entry in a line: when, about what, what was done or seen. */
export function lineOf(entry: Entry, {civil, now}: Desk): string {
  const about = aboutOf(entry)[0];
  return `${entry.id}  ${instantWords(atOf(entry), civil, now)}${about === undefined ? '' : `  ${about}`}  ${sentenceOf(entry.record)}`;
}

/** The codes an entry is about, the foremost first. */
export function aboutOf({record}: Entry): string[] {
  const named = codesNamed(record)
    .filter(({kind}) => kind !== 'profile')
    .map(({code}) => code);
  const own = record.record === 'unit' || record.record === 'logger' ? [record.code] : codesGiven(record);
  const ownFirst =
    record.record === 'sample' ||
    record.record === 'subsample' ||
    record.record === 'lot' ||
    record.record === 'unit' ||
    record.record === 'logger';
  return [...new Set(ownFirst ? [...own, ...named] : [...named, ...own])];
}
