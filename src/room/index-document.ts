// The index: which document holds a code, a key or an entry that has left room.json.
import {kindOf} from './document-path.ts';
import {documentBytes, type NewDocument, readDocument} from './documents.ts';
import type {DocumentRow, RoomDocument} from './room-document.ts';
import {FORMAT} from './sealed.ts';

/** The document as it is written. Places are positions in `documents`. */
export interface IndexDocument {
  readonly format: typeof FORMAT;
  /** Paths. */
  readonly documents: readonly string[];
  /** Samples, lots and specimens; a specimen with its lot, because no entry need spell out its code. */
  readonly codes: readonly (readonly [code: string, place: number, lot?: string])[];
  readonly keys: readonly (readonly [key: string, place: number])[];
  readonly entries: readonly (readonly [id: string, place: number])[];
}

/** What has left room.json, by name. */
export interface Index {
  /** The document of a code, and the lot where the code is a specimen's. */
  readonly codes: Map<string, {readonly path: string; readonly lot?: string | undefined}>;
  readonly keys: Map<string, string>;
  readonly entries: Map<string, string>;
}

/** The room's index; empty where nothing has left room.json yet. */
export async function readIndex(dir: string, room: RoomDocument): Promise<Index> {
  const row = indexRow(room.documents);
  if (row === undefined) return {codes: new Map(), keys: new Map(), entries: new Map()};
  const {documents, codes, keys, entries} = await readDocument<IndexDocument>(dir, row);
  const pathOf = (place: number) => documents[place]!;
  return {
    codes: new Map(codes.map(([code, place, lot]) => [code, {path: pathOf(place), lot}])),
    keys: new Map(keys.map(([key, place]) => [key, pathOf(place)])),
    entries: new Map(entries.map(([id, place]) => [id, pathOf(place)])),
  };
}

/** An index as a document to be written. */
export function indexDocument(index: Index): NewDocument {
  const rows = index.codes.size + index.keys.size + index.entries.size;
  return {stem: 'index', bytes: documentBytes(contentOf(index)), rows};
}

function contentOf({codes, keys, entries}: Index): IndexDocument {
  const places = new Map<string, number>();
  const placeOf = (path: string) => {
    const place = places.get(path) ?? places.size;
    places.set(path, place);
    return place;
  };
  return {
    format: FORMAT,
    codes: [...codes].map(([code, {path, lot}]) =>
      lot === undefined ? [code, placeOf(path)] : [code, placeOf(path), lot],
    ),
    keys: [...keys].map(([key, path]) => [key, placeOf(path)]),
    entries: [...entries].map(([id, path]) => [id, placeOf(path)]),
    documents: [...places.keys()],
  };
}

export function indexRow(documents: readonly DocumentRow[]): DocumentRow | undefined {
  return documents.find(({path}) => kindOf(path) === 'index');
}
