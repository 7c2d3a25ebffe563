// The codes by which an entry hangs together with others. Units, loggers and profiles are left out: they never
// leave room.json.
import {codesGiven, codesNamed} from '../records/codes.ts';
import type {RoomRecord} from '../records/schema/index.ts';

/** Codes of samples, lots and specimens in a record, its own included. */
export function codesIn(record: RoomRecord): string[] {
  const named = codesNamed(record).filter(({kind}) => !STAYING.has(kind));
  return [...codesGiven(record), ...named.map(({code}) => code)];
}

/** The one sample, lot or specimen that a record is about, and with which it is stored. */
export function subjectOf(record: RoomRecord): string | undefined {
  if (record.record === 'lot' || record.record === 'sample' || record.record === 'subsample')
    return record.code;
  if ('lot' in record && record.lot !== undefined) return record.lot;
  return codesNamed(record).find(({kind}) => !STAYING.has(kind))?.code;
}

const STAYING: ReadonlySet<string> = new Set(['unit', 'logger', 'profile']);
