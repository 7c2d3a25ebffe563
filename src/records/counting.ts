// Which entries count, and in which order they are taken.
import {atOf, type Entry, type Instant} from './entry.ts';
import type {RoomRecord} from './schema/index.ts';

/** An entry with the instant from which it counts. */
export interface Dated {
  readonly at: Instant;
  readonly entry: Entry;
}

/**
 * The entries that are neither voided nor dated after `asOf`, by time and then by writing. What holds from the
 * beginning comes first.
 */
export function counting(entries: readonly Entry[], asOf: Instant, voided: ReadonlySet<string>): Dated[] {
  const dated: Dated[] = [];
  for (const entry of entries) {
    if (entry.record.record === 'void' || voided.has(entry.id)) continue;
    const at = holdsFrom(entry);
    if (at <= asOf) dated.push({at, entry});
  }
  return dated.sort((a, b) => a.at - b.at || 0);
}

/** The ids of the entries that a void takes back. A void that is voided itself takes nothing back. */
export function voidedAmong(entries: readonly Entry[]): Set<string> {
  const voided = new Set<string>();
  for (let i = entries.length - 1; i >= 0; i--) {
    const {id, record} = entries[i]!;
    if (record.record === 'void' && !voided.has(id)) voided.add(record.entry);
  }
  return voided;
}

/** What stands or holds from the beginning where its record names no instant. */
const STANDING: ReadonlySet<RoomRecord['record']> = new Set([
  'sample',
  'subsample',
  'unit',
  'logger',
  'rule',
  'profile',
  'person',
  'calendar',
  'setting',
]);

function holdsFrom(entry: Entry): Instant {
  const {record} = entry;
  const given = 'at' in record && record.at !== undefined;
  return STANDING.has(record.record) && !given ? Number.NEGATIVE_INFINITY : atOf(entry);
}
