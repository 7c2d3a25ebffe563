// Everything a change will write, worked out before anything is written.
import {type Entry, instantOf} from '../records/entry.ts';
import type {NewDocument} from './documents.ts';
import {movesFor} from './moves.ts';
import {batchesOf, monthsWith} from './new-readings.ts';
import {numberingAfter} from './numbering.ts';
import {QUIET_MS, type Reach} from './placement.ts';
import type {Change} from './room.ts';
import type {DocumentRow, RoomDocument} from './room-document.ts';

export interface Plan {
  readonly documents: readonly NewDocument[];
  /** Paths of documents that the room names no longer. */
  readonly replaced: ReadonlySet<string>;
  /** More documents, that can only be written once the others have their paths. */
  indexFor(written: readonly DocumentRow[]): readonly NewDocument[];
  /** room.json once all are written. */
  roomWith(written: readonly DocumentRow[]): RoomDocument;
}

/** @returns undefined where there is nothing to write */
export async function planChange(
  dir: string,
  room: RoomDocument,
  {entries, readings = []}: Change,
  {by, now = writingTime(entries), archive}: {by: string; now?: number; archive?: 'closed'},
): Promise<Plan | undefined> {
  if (entries.length + readings.length === 0 && archive === undefined) return undefined;
  const batches = batchesOf(readings, room, {by, recordedAt: new Date(now).toISOString()});
  const months = await monthsWith(dir, room, readings, batches);
  const next = numberingAfter(room.next, entries, batches.length);
  const moves = await movesFor(dir, room, entries, {reach: archive ?? reachOf(room, next.entry, now), now});
  if (entries.length + readings.length + moves.replaced.size + moves.documents.length === 0) return undefined;

  const replaced = new Set([...months.replaced, ...moves.replaced]);
  return {
    documents: [...moves.documents, ...months.documents],
    replaced,
    indexFor: written => moves.indexFor(written),
    roomWith: written => ({
      ...room,
      next,
      entries: moves.entries,
      imports: [...room.imports, ...batches],
      documents: [...room.documents.filter(({path}) => !replaced.has(path)), ...written],
    }),
  };
}

/** When the newest of the entries was written down, else the clock: whoever writes as of another day means that day. */
function writingTime(entries: readonly Entry[]): number {
  if (entries.length === 0) return Date.now();
  return entries.reduce((newest, {recordedAt}) => Math.max(newest, instantOf(recordedAt)), 0);
}

const LOOK_EVERY = 50;
const WORTHWHILE = 200;

/**
 * A writer archives by itself what is worth it. It looks only now and then, because most of what is old may
 * belong to lots that are still open.
 */
function reachOf({entries, next}: RoomDocument, nextEntry: number, now: number): Reach {
  if (Math.floor(next.entry / LOOK_EVERY) === Math.floor(nextEntry / LOOK_EVERY)) return 'nothing';
  const old = entries.filter(({recordedAt}) => instantOf(recordedAt) < now - QUIET_MS);
  return old.length < WORTHWHILE ? 'nothing' : 'quiet';
}
