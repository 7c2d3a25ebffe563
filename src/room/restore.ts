// The way back from a damaged room, losing as little as can be. What was damaged is kept aside.
import {join} from 'node:path';
import {Refusal} from '../records/refusal.ts';
import {type Backup, listBackups, setAside} from './backups.ts';
import {kindOf} from './document-path.ts';
import {readDocument, removeDocuments, writeDocuments} from './documents.ts';
import type {EntriesDocument} from './entries-document.ts';
import {type Held, indexDocument, indexOf} from './index-document.ts';
import {takeLock} from './lock.ts';
import {damagedRows, mend} from './mend.ts';
import type {Numbering} from './room.ts';
import {type DocumentRow, ROOM_FILE, type RoomDocument, type StoredRoom} from './room-document.ts';
import {readRoomFile, signatureOf, writeRoomFile} from './room-file.ts';
import {holdsEntries} from './stored-entries.ts';
import {forgetPins} from './sweep.ts';

export interface Restored {
  /** The copy that the room stands on now; undefined where room.json itself was sound. */
  readonly from: string | undefined;
  /** When that copy was made, ms since 1970. */
  readonly at: number | undefined;
  /** The folder that keeps what was damaged or replaced. */
  readonly aside: string | undefined;
  /** What could not be brought back, each in words. */
  readonly lost: readonly string[];
}

/**
 * Bring a damaged room back. Where room.json itself is sound, only its damaged documents are brought back, from
 * older versions; else room.json goes back to its newest sound copy, or to the one named.
 * @param from the name of a backup; without it, only a damaged room is touched
 * @throws Refusal where nothing is damaged, or where no copy is sound
 */
export async function restoreRoom(
  dir: string,
  {by, from, now = Date.now()}: {by: string; from?: string | undefined; now?: number},
): Promise<Restored> {
  const path = join(dir, ROOM_FILE);
  const backups = await listBackups(dir);
  if (backups.length === 0 && (await signatureOf(path)) === 'none') await readRoomFile(path);
  const lock = await takeLock(dir, by);
  try {
    const present = await readRoomFile(path).catch(orUndefined);
    const base =
      from === undefined ? await baseFor(dir, present, backups) : await backupNamed(from, dir, backups);
    const damaged = await damagedRows(dir, base.document.documents);
    const {document, lost} = await mend(dir, base.document, damaged, backups);
    const aside = await setAside(dir, [ROOM_FILE, ...damaged.map(({path}) => path)], now);
    await commit(dir, {...document, next: further(document.next, present?.document.next)}, damaged);
    await forgetPins(dir);
    return {from: base.backup?.name, at: base.backup?.at, aside, lost};
  } finally {
    await lock.release();
  }
}

/** What the room is to stand on, and the backup it comes from. */
interface Base {
  readonly document: RoomDocument;
  readonly backup?: Backup;
}

async function baseFor(
  dir: string,
  present: StoredRoom | undefined,
  backups: readonly Backup[],
): Promise<Base> {
  if (present?.warnings.length === 0) {
    if ((await damagedRows(dir, present.document.documents)).length > 0) return {document: present.document};
    throw new Refusal(
      'nothing in this room is damaged',
      dir,
      `To go back all the same, name a copy with --from: ${namesOf(backups)}.`,
    );
  }
  let fallback: Base | undefined;
  for (const backup of backups) {
    const stored = await readRoomFile(backup.path).catch(orUndefined);
    if (stored?.warnings.length !== 0) continue;
    const base = {document: stored.document, backup};
    if ((await damagedRows(dir, stored.document.documents)).length === 0) return base;
    fallback ??= base;
  }
  if (fallback !== undefined) return fallback;
  throw new Refusal('no copy of this room is sound', dir, 'Put back a copy that you made yourself.');
}

async function backupNamed(from: string, dir: string, backups: readonly Backup[]): Promise<Base> {
  const backup = backups.find(
    ({name, path}) => from === name || from.endsWith(`${name}.json`) || from === path,
  );
  if (backup === undefined)
    throw new Refusal(`there is no copy "${from}"`, dir, `There are: ${namesOf(backups)}.`);
  return {document: (await readRoomFile(backup.path)).document, backup};
}

function namesOf(backups: readonly Backup[]): string {
  return backups.length === 0 ? 'none' : backups.map(({name}) => name).join(', ');
}

/** The mended room on disk, with an index worked out anew where documents of entries were lost. */
async function commit(dir: string, room: RoomDocument, damaged: readonly DocumentRow[]): Promise<void> {
  const rows = damaged.some(row => holdsEntries(row) || isIndex(row)) ? await newIndex(dir, room) : [];
  const kept = rows.length === 0 ? room.documents : room.documents.filter(row => !isIndex(row));
  try {
    await writeRoomFile(join(dir, ROOM_FILE), {...room, documents: [...kept, ...rows]});
  } catch (error) {
    await removeDocuments(dir, rows);
    throw error;
  }
}

async function newIndex(dir: string, {documents}: RoomDocument): Promise<DocumentRow[]> {
  const held: Held[] = [];
  for (const row of documents.filter(holdsEntries))
    held.push({path: row.path, entries: (await readDocument<EntriesDocument>(dir, row)).entries});
  return writeDocuments(dir, [indexDocument(indexOf(held))]);
}

function isIndex({path}: DocumentRow): boolean {
  return kindOf(path) === 'index';
}

/** No id that was ever given is given again. */
function further(a: Numbering, b: Numbering = a): Numbering {
  return {
    entry: Math.max(a.entry, b.entry),
    request: Math.max(a.request, b.request),
    batch: Math.max(a.batch, b.batch),
  };
}

/** A damaged file is what this is for; everything else is a mistake of the program. */
function orUndefined(error: unknown): undefined {
  if (error instanceof Refusal) return undefined;
  throw error;
}
