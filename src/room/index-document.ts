// The index: which document holds a code, a key or an entry that has left room.json.
import {codesGiven} from '../records/codes.ts';
import type {Entry} from '../records/entry.ts';
import {kindOf} from './document-path.ts';
import {documentBytes, type NewDocument, readDocument} from './documents.ts';
import type {DocumentRow, RoomDocument} from './room-document.ts';
import {FORMAT} from './sealed.ts';

/** The document as it is written. Places are positions in `documents`. */
export interface IndexDocument {
  readonly format: typeof FORMAT;
  /** Paths. */
  readonly documents: readonly string[];
  /** Codes of samples, lots and specimens, also where their entry is void: no code is ever used again. */
  readonly codes: readonly Named[];
  readonly keys: readonly Named[];
  /** By id. */
  readonly entries: readonly Named[];
}

type Named = readonly [name: string, place: number];

/** The path of the document that holds each name. */
export interface Index {
  readonly codes: Map<string, string>;
  readonly keys: Map<string, string>;
  readonly entries: Map<string, string>;
}

/** Entries that lie in one document. */
export interface Held {
  readonly path: string;
  readonly entries: readonly Entry[];
}

/** The room's index; empty where nothing has left room.json yet. */
export async function readIndex(dir: string, {documents}: RoomDocument): Promise<Index> {
  const row = indexRow(documents);
  return row === undefined ? indexOf([]) : indexIn(await readDocument<IndexDocument>(dir, row));
}

export function indexRow(documents: readonly DocumentRow[]): DocumentRow | undefined {
  return documents.find(({path}) => kindOf(path) === 'index');
}

export function indexIn({documents, codes, keys, entries}: IndexDocument): Index {
  const byName = (named: readonly Named[]) =>
    new Map(named.map(([name, place]) => [name, documents[place] ?? '']));
  return {codes: byName(codes), keys: byName(keys), entries: byName(entries)};
}

/** The index of stored entries, worked out from nothing. */
export function indexOf(stored: readonly Held[]): Index {
  const index: Index = {codes: new Map(), keys: new Map(), entries: new Map()};
  for (const held of stored) include(index, held);
  return index;
}

/**
 * The index after entries have moved.
 * @param renamed the new path of each document that was written anew
 * @param returned entries that went back into room.json
 * @param added entries that left it
 */
export function indexAfter(
  index: Index,
  renamed: ReadonlyMap<string, string>,
  returned: readonly Entry[],
  added: readonly Held[],
): Index {
  const moved = (names: ReadonlyMap<string, string>) =>
    new Map([...names].map(([name, path]) => [name, renamed.get(path) ?? path]));
  const after = {codes: moved(index.codes), keys: moved(index.keys), entries: moved(index.entries)};
  for (const {id, record} of returned) {
    after.entries.delete(id);
    after.keys.delete(record.key ?? '');
    for (const code of codesGiven(record)) after.codes.delete(code);
  }
  for (const held of added) include(after, held);
  return after;
}

/** An index as a document to be written. */
export function indexDocument({codes, keys, entries}: Index): NewDocument {
  const paths = [...new Set([...codes.values(), ...keys.values(), ...entries.values()])];
  const places = new Map(paths.map((path, place) => [path, place]));
  const named = (names: ReadonlyMap<string, string>): Named[] =>
    [...names].map(([name, path]) => [name, places.get(path)!]);
  const content: IndexDocument = {
    format: FORMAT,
    documents: paths,
    codes: named(codes),
    keys: named(keys),
    entries: named(entries),
  };
  return {stem: 'index', bytes: documentBytes(content), rows: codes.size + keys.size + entries.size};
}

function include({codes, keys, entries}: Index, {path, entries: held}: Held): void {
  for (const {id, record} of held) {
    entries.set(id, path);
    if (record.key !== undefined) keys.set(record.key, path);
    for (const code of codesGiven(record)) codes.set(code, path);
  }
}
