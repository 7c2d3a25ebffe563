// A room's documents brought back one by one, from what backups and older documents still hold.
import type {Entry} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {Backup} from './backups.ts';
import {kindOf, monthOf, numberOf, stemOf} from './document-path.ts';
import {readDocument} from './documents.ts';
import type {EntriesDocument} from './entries-document.ts';
import type {ReadingsDocument} from './readings.ts';
import type {DocumentRow, RoomDocument} from './room-document.ts';
import {readRoomFile} from './room-file.ts';
import {holdsEntries, inOrder} from './stored-entries.ts';

/** The rows whose documents are missing, damaged, or cannot be read. */
export async function damagedRows(dir: string, documents: readonly DocumentRow[]): Promise<DocumentRow[]> {
  const damaged: DocumentRow[] = [];
  for (const row of documents) if (!(await isSound(dir, row))) damaged.push(row);
  return damaged;
}

export interface Mended {
  /** Without the damaged documents, and with what could be brought back. */
  readonly document: RoomDocument;
  /** What could not be, in words. */
  readonly lost: readonly string[];
}

/** Take the damaged documents out of a room, and bring back what older copies hold of them. */
export async function mend(
  dir: string,
  room: RoomDocument,
  damaged: readonly DocumentRow[],
  backups: readonly Backup[],
): Promise<Mended> {
  const older = await roomsIn(backups);
  const sound = room.documents.filter(row => !damaged.includes(row));
  const lost: string[] = [];

  for (const row of damaged.filter(({path}) => kindOf(path) === 'readings')) {
    const version = await olderVersion(dir, row, older);
    if (version !== undefined) sound.push(version);
    const rows = row.rows - (version?.rows ?? 0);
    if (rows > 0)
      lost.push(`${rows} readings of ${loggerOf(row)} in ${monthOf(row.path)}: import their file again`);
  }

  const gone = damaged.filter(holdsEntries).reduce((sum, {rows}) => sum + rows, 0);
  const found = gone === 0 ? [] : await missingEntries(dir, {...room, documents: sound}, older);
  if (gone > found.length) lost.push(`${gone - found.length} entries about what was closed`);
  return {document: {...room, entries: inOrder([...room.entries, ...found]), documents: sound}, lost};
}

/** Of the same month, the newest that is sound. */
async function olderVersion(
  dir: string,
  {path}: DocumentRow,
  older: readonly RoomDocument[],
): Promise<DocumentRow | undefined> {
  const versions = older
    .flatMap(({documents}) => documents)
    .filter(row => stemOf(row.path) === stemOf(path) && row.path !== path)
    .sort((a, b) => numberOf(b.path) - numberOf(a.path));
  for (const row of versions) if (await isSound(dir, row)) return row;
  return undefined;
}

/** Entries that backups, or documents that they name, hold and the room does not. An entry never changes. */
async function missingEntries(
  dir: string,
  room: RoomDocument,
  older: readonly RoomDocument[],
): Promise<Entry[]> {
  const held = new Set(room.entries.map(({id}) => id));
  const read = new Set<string>();
  const found: Entry[] = [];
  const gather = async (row: DocumentRow, take: (entry: Entry) => void) => {
    if (read.has(row.path) || !holdsEntries(row)) return;
    read.add(row.path);
    if (await isSound(dir, row)) (await readDocument<EntriesDocument>(dir, row)).entries.forEach(take);
  };
  for (const row of room.documents) await gather(row, ({id}) => held.add(id));
  const take = (entry: Entry) => {
    if (held.has(entry.id)) return;
    held.add(entry.id);
    found.push(entry);
  };
  for (const {entries, documents} of older) {
    entries.forEach(take);
    for (const row of documents) await gather(row, take);
  }
  return found;
}

/** The rooms of those backups that are as they were written, newest first. */
async function roomsIn(backups: readonly Backup[]): Promise<RoomDocument[]> {
  const rooms: RoomDocument[] = [];
  for (const {path} of backups) {
    const stored = await readRoomFile(path).catch(() => undefined);
    if (stored?.warnings.length === 0) rooms.push(stored.document);
  }
  return rooms;
}

async function isSound(dir: string, row: DocumentRow): Promise<boolean> {
  try {
    await readDocument<ReadingsDocument | EntriesDocument>(dir, row);
    return true;
  } catch (error) {
    if (error instanceof Refusal) return false;
    throw error;
  }
}

function loggerOf({path}: DocumentRow): string {
  return path.split('/')[1] ?? path;
}
