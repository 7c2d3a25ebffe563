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
  readonly record: Entry['record'];
}

export interface DaybookQuestion {
  /** Only what names this code of a sample, lot, unit, logger or specimen. */
  readonly code?: string | undefined;
  readonly since?: Instant | undefined;
}

/** Entries in order of time, oldest first. @throws Refusal where nothing names the code */
export function daybook({state, civil}: Desk, {code, since}: DaybookQuestion): DaybookLine[] {
  const all = state.history.filter(entry => code === undefined || aboutOf(entry).includes(code));
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
      record: entry.record,
    }));
}

/** One entry in a line: when, about what, what was done or seen. */
export function lineOf(entry: Entry, {civil, now}: Desk): string {
  const about = aboutOf(entry)[0];
  return `${entry.id}  ${instantWords(atOf(entry), civil, now)}${about === undefined ? '' : `  ${about}`}  ${sentenceOf(entry.record)}`;
}

/** The codes an entry is about, the foremost first. */
function aboutOf({record}: Entry): string[] {
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
