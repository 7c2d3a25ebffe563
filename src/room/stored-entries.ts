// Entries that have left room.json, and how they come together again with those that are in it.
import type {Entry} from '../records/entry.ts';
import {kindOf} from './document-path.ts';
import {readDocument} from './documents.ts';
import type {EntriesDocument} from './entries-document.ts';
import {type Index, indexRow, readIndex} from './index-document.ts';
import {codesIn} from './names.ts';
import {numberIn} from './numbering.ts';
import type {Names} from './room.ts';
import type {DocumentRow, RoomDocument} from './room-document.ts';

/** Every entry ever written, in the order of writing. */
export async function everyEntry(dir: string, room: RoomDocument): Promise<readonly Entry[]> {
  const rows = room.documents.filter(holdsEntries);
  if (rows.length === 0) return room.entries;
  const documents = await Promise.all(rows.map(row => readDocument<EntriesDocument>(dir, row)));
  return inOrder([...room.entries, ...documents.flatMap(({entries}) => entries)]);
}

/** The room's entries and all those stored elsewhere that the names belong to, in the order of writing. */
export async function entriesWith(dir: string, room: RoomDocument, names: Names): Promise<readonly Entry[]> {
  if (indexRow(room.documents) === undefined) return room.entries;
  const found = await findStored(dir, room, await readIndex(dir, room), names);
  return inOrder([...room.entries, ...found.map(({entry}) => entry)]);
}

/** A stored entry and the document that holds it. */
export interface StoredEntry {
  readonly entry: Entry;
  readonly path: string;
}

/**
 * Stored entries that names belong to, with those that these cannot be understood without: from a specimen to its
 * lot, from a lot to its sample or its mother's, from a void to what it takes back.
 */
export async function findStored(
  dir: string,
  {documents}: RoomDocument,
  index: Index,
  {codes = [], keys = [], entries = []}: Names,
): Promise<StoredEntry[]> {
  const rows = new Map(documents.map(row => [row.path, row]));
  const read = new Map<string, readonly Entry[]>();
  const open = async (path: string) => {
    const row = rows.get(path);
    if (row === undefined || read.has(path)) return;
    read.set(path, (await readDocument<EntriesDocument>(dir, row)).entries);
  };

  const wanted = new Set<string>();
  const want = async (code: string) => {
    const path = index.codes.get(code);
    if (path === undefined || wanted.has(code)) return;
    wanted.add(code);
    await open(path);
  };
  const asked = {keys: new Set(keys), ids: new Set<string>()};
  const askFor = async (id: string) => {
    asked.ids.add(id);
    await open(index.entries.get(id) ?? '');
  };
  for (const code of codes) await want(code);
  for (const key of asked.keys) await open(index.keys.get(key) ?? '');
  for (const id of entries) await askFor(id);

  const found = new Map<string, StoredEntry>();
  const belongs = ({id, record}: Entry) =>
    asked.ids.has(id) ||
    (record.key !== undefined && asked.keys.has(record.key)) ||
    (record.record === 'void' && found.has(record.entry)) ||
    codesIn(record).some(code => wanted.has(code));
  for (let before = -1; found.size > before; ) {
    before = found.size;
    for (const [path, held] of read)
      for (const entry of held) {
        if (found.has(entry.id) || !belongs(entry)) continue;
        found.set(entry.id, {entry, path});
        for (const code of codesIn(entry.record)) await want(code);
        if (entry.record.record === 'void') await askFor(entry.record.entry);
      }
  }
  return [...found.values()];
}

export function inOrder(entries: readonly Entry[]): Entry[] {
  return [...entries].sort((a, b) => numberIn(a.id) - numberIn(b.id));
}

export function holdsEntries({path}: DocumentRow): boolean {
  return kindOf(path) === 'archive' || kindOf(path) === 'daybook';
}
