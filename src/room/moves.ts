// Entries on the move between room.json and the documents: what a change takes out, and what it calls back.

import {codesGiven} from '../records/codes.ts';
import type {Entry, Instant} from '../records/entry.ts';
import {fold} from '../records/fold.ts';
import {stemOf} from './document-path.ts';
import {type NewDocument, readDocument} from './documents.ts';
import {type EntriesDocument, entriesDocument} from './entries-document.ts';
import {type Index, indexAfter, indexDocument, indexRow, readIndex} from './index-document.ts';
import {codesIn, subjectOf} from './names.ts';
import {leavingAmong, type Reach} from './placement.ts';
import type {Names} from './room.ts';
import type {DocumentRow, RoomDocument} from './room-document.ts';
import {findStored, inOrder} from './stored-entries.ts';

export interface Moves {
  /** What room.json holds after the change, in the order of writing. */
  readonly entries: readonly Entry[];
  readonly documents: readonly NewDocument[];
  /** Paths of documents whose place is taken. */
  readonly replaced: ReadonlySet<string>;
  /** The index once the documents have their paths; nothing where it stays as it is. */
  indexFor(written: readonly DocumentRow[]): readonly NewDocument[];
}

/**
 * Where the entries of a room belong once a change has added some. An entry about an archived lot goes to that
 * lot's document; one that opens something again calls its entries back.
 * @param reach what else is to leave
 */
export async function movesFor(
  dir: string,
  room: RoomDocument,
  added: readonly Entry[],
  {reach, now}: {readonly reach: Reach; readonly now: Instant},
): Promise<Moves> {
  const all = [...room.entries, ...added];
  const names = reach === 'nothing' ? namesBeyond(room.entries, added) : namesOf(all);
  const index = names === undefined ? undefined : await readIndex(dir, room);
  const found = index === undefined ? [] : await findStored(dir, room, index, names ?? {});
  if (index === undefined || (reach === 'nothing' && found.length === 0)) return nothingMoves(all);

  const stored = new Map(found.map(({entry, path}) => [entry.id, path]));
  const state = fold(inOrder([...all, ...found.map(({entry}) => entry)]), Number.POSITIVE_INFINITY);
  const leaving = leavingAmong(state, stored, {reach, now});
  const returning = found.filter(({entry}) => !leaving.has(entry));
  const returned = new Set(returning.map(({entry}) => entry.id));

  const additions = new Map<string, Entry[]>(returning.map(({path}) => [path, []]));
  for (const [entry, stem] of leaving) {
    if (stored.has(entry.id)) continue;
    const place = documentOf(entry, index) ?? stem;
    const there = additions.get(place);
    if (there === undefined) additions.set(place, [entry]);
    else there.push(entry);
  }

  const rows = new Map(room.documents.map(row => [row.path, row]));
  const contents: {readonly place: string; readonly entries: readonly Entry[]}[] = [];
  for (const [place, entries] of additions) {
    const row = rows.get(place);
    const before = row === undefined ? [] : (await readDocument<EntriesDocument>(dir, row)).entries;
    const kept = before.filter(({id}) => !returned.has(id));
    if (kept.length + entries.length > 0) contents.push({place, entries: inOrder([...kept, ...entries])});
  }
  const replaced = new Set([...additions.keys()].filter(place => rows.has(place)));
  const moved = additions.size > 0;
  const oldIndex = indexRow(room.documents);
  if (moved && oldIndex !== undefined) replaced.add(oldIndex.path);
  return {
    entries: state.history.filter(entry => !leaving.has(entry)),
    documents: contents.map(({place, entries}) =>
      entriesDocument(rows.has(place) ? stemOf(place) : place, entries),
    ),
    replaced,
    indexFor: written => {
      if (!moved) return [];
      const paths = new Map(contents.map(({place}, i) => [place, written[i]!.path]));
      const added = [...additions].map(([place, entries]) => ({path: paths.get(place) ?? place, entries}));
      const back = returning.map(({entry}) => entry);
      return [indexDocument(indexAfter(index, paths, back, added))];
    },
  };
}

function nothingMoves(entries: readonly Entry[]): Moves {
  return {entries, documents: [], replaced: new Set(), indexFor: () => []};
}

function namesOf(entries: readonly Entry[]): {codes: string[]; entries: string[]} {
  return {
    codes: entries.flatMap(({record}) => codesIn(record)),
    entries: entries.flatMap(({record}) => (record.record === 'void' ? [record.entry] : [])),
  };
}

/** What is named, but does not stand in room.json; undefined where all of it does and the index need not be read. */
function namesBeyond(open: readonly Entry[], added: readonly Entry[]): Names | undefined {
  const codes = new Set(open.flatMap(({record}) => codesGiven(record)));
  const ids = new Set([...open, ...added].map(({id}) => id));
  const named = namesOf(added);
  const beyond = {
    codes: named.codes.filter(code => !codes.has(code)),
    entries: named.entries.filter(id => !ids.has(id)),
  };
  return beyond.codes.length + beyond.entries.length > 0 ? beyond : undefined;
}

/** The document that holds what an entry is about. */
function documentOf({record}: Entry, {codes, entries}: Index): string | undefined {
  return record.record === 'void' ? entries.get(record.entry) : codes.get(subjectOf(record) ?? '');
}
