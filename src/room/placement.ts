// Where every entry belongs: in room.json while it is about something open, else in archive/ or daybook/.
import {atOf, type Entry, type Instant, instantOf, MS_PER_DAY} from '../records/entry.ts';
import type {Lot, RoomState} from '../records/state.ts';
import {lotsLeaving} from './lots-leaving.ts';
import {monthAt} from './months.ts';
import {subjectOf} from './names.ts';

/** What leaves: nothing new; what has been quiet for 35 days; or every closed lot at once. */
export type Reach = 'nothing' | 'quiet' | 'closed';

/** Entries about nothing open stay in room.json so long. */
export const QUIET_MS = 35 * MS_PER_DAY;

/** Entries that do not belong in room.json, each with the stem of the document it goes to. */
export type Leaving = ReadonlyMap<Entry, string>;

/**
 * Sort out which entries leave room.json.
 * @param state of everything open, and of what is stored and concerned
 * @param stored ids of entries that are not in room.json now; they stay out of it while nothing calls them back
 */
export function leavingAmong(
  state: RoomState,
  stored: {has(id: string): boolean},
  {reach, now}: {readonly reach: Reach; readonly now: Instant},
): Leaving {
  const entries = state.history;
  const isQuiet = ({closed}: Lot) => closed !== undefined && closed.at <= now - QUIET_MS;
  const lots = lotsLeaving(
    state,
    lot =>
      reach === 'closed' || (reach === 'quiet' && isQuiet(lot)) || lot.entries.some(({id}) => stored.has(id)),
  );
  const samples = samplesLeaving(state, lots);
  const isCurrent = currentWork(state);
  const neededFrom = now - QUIET_MS;
  const climateNeededFrom = Math.min(now, ...openSince(state, lots)) - QUIET_MS;

  const byId = new Map(entries.map(entry => [entry.id, entry]));
  const stemOf = (entry: Entry): string | undefined => {
    const {id, record} = entry;
    const voided = record.record === 'void' ? byId.get(record.entry) : undefined;
    if (voided !== undefined) return stemOf(voided);
    if (isCurrent(entry)) return undefined;
    const subject = subjectOf(record) ?? '';
    const specimen = state.specimens.get(subject);
    const code = specimen?.lot ?? wholeOf(state, specimen?.sample ?? subject);
    if (state.lots.has(code) || state.samples.has(code)) {
      const closedAt = lots.get(code) ?? samples.get(code);
      return closedAt === undefined ? undefined : `archive/${new Date(closedAt).getUTCFullYear()}`;
    }
    if (FURNITURE.has(record.record) && subject === '') return undefined;
    const isOld = lastInstantOf(entry) < (CLIMATE.has(record.record) ? climateNeededFrom : neededFrom);
    const leaves = stored.has(id) || (reach !== 'nothing' && isOld);
    return leaves ? `daybook/${monthAt(instantOf(entry.recordedAt))}` : undefined;
  };

  const leaving = new Map<Entry, string>();
  for (const entry of entries) {
    const stem = stemOf(entry);
    if (stem !== undefined) leaving.set(entry, stem);
  }
  return leaving;
}

const FURNITURE: ReadonlySet<string> = new Set([
  'logger',
  'unit',
  'rule',
  'calendar',
  'person',
  'profile',
  'setting',
]);

/** The field sample that a part of one belongs to; any other code as it is. */
function wholeOf({samples}: RoomState, code: string): string {
  let whole = code;
  for (let of = samples.get(whole)?.of; of !== undefined; of = samples.get(whole)?.of) whole = of;
  return whole;
}

/** A sample leaves with the last lot of all its parts. One that was never sorted into lots is still open. */
function samplesLeaving(state: RoomState, leaving: ReadonlyMap<string, Instant>): Map<string, Instant> {
  const samples = new Map<string, Instant>();
  for (const {code, sample: own} of state.lots.values()) {
    const sample = wholeOf(state, own);
    samples.set(sample, Math.max(samples.get(sample) ?? 0, leaving.get(code) ?? Number.POSITIVE_INFINITY));
  }
  return new Map([...samples].filter(([, at]) => at < Number.POSITIVE_INFINITY));
}

/** When the lots that stay began: their courses need the readings since then. */
function openSince({lots}: RoomState, leaving: ReadonlyMap<string, Instant>): Instant[] {
  return [...lots.values()].filter(({code}) => !leaving.has(code)).map(({startedAt}) => startedAt);
}

const CLIMATE: ReadonlySet<string> = new Set(['reading', 'extremes', 'mask']);

/** Whether an entry is the newest of its kind about its unit or logger: the next water change counts from it. */
function currentWork({history, voided}: RoomState): (entry: Entry) => boolean {
  const newest = new Map<string, Entry>();
  for (const entry of history) {
    const work = workOf(entry);
    if (work === undefined || voided.has(entry.id)) continue;
    const before = newest.get(work);
    if (before === undefined || lastInstantOf(entry) >= lastInstantOf(before)) newest.set(work, entry);
  }
  return entry => newest.get(workOf(entry) ?? '') === entry;
}

/** What was done or read, and on which unit or logger. */
function workOf({record}: Entry): string | undefined {
  switch (record.record) {
    case 'care':
    case 'skip':
      return record.unit === undefined ? undefined : `${record.record} ${record.unit} ${record.task}`;
    case 'water':
      return `water ${record.unit}`;
    case 'reading':
    case 'extremes':
      return `${record.record} ${record.logger}`;
    default:
      return undefined;
  }
}

/** When it happened, ended or was written down, whichever is last. */
function lastInstantOf(entry: Entry): Instant {
  const {record, recordedAt} = entry;
  const end = record.record === 'mask' ? instantOf(record.to) : atOf(entry);
  return Math.max(end, instantOf(recordedAt));
}
