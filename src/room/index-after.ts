// The index after entries have moved.
import {codesGiven} from '../records/codes.ts';
import type {Entry} from '../records/entry.ts';
import type {RoomState} from '../records/state.ts';
import type {NewDocument} from './documents.ts';
import {type Index, indexDocument} from './index-document.ts';

export interface Move {
  /** The new path of each document or stem that was written. */
  readonly paths: ReadonlyMap<string, string>;
  /** Entries that left room.json, by the document or stem they went to. */
  readonly additions: ReadonlyMap<string, readonly Entry[]>;
  /** Entries that went back into it. */
  readonly returning: readonly {readonly entry: Entry}[];
  readonly state: RoomState;
}

export function indexAfter(index: Index, {paths, additions, returning, state}: Move): NewDocument {
  const moved = (path: string) => paths.get(path) ?? path;
  const codes = new Map([...index.codes].map(([code, {path, lot}]) => [code, {path: moved(path), lot}]));
  const keys = new Map([...index.keys].map(([key, path]) => [key, moved(path)]));
  const entries = new Map([...index.entries].map(([id, path]) => [id, moved(path)]));

  const back = new Set<string>();
  for (const {entry} of returning) {
    entries.delete(entry.id);
    if (entry.record.key !== undefined) keys.delete(entry.record.key);
    for (const code of codesGiven(entry.record)) back.add(code);
  }
  for (const [code, {lot}] of codes) if (back.has(code) || back.has(lot ?? '')) codes.delete(code);

  for (const [place, added] of additions)
    for (const {id, record} of added) {
      const path = moved(place);
      entries.set(id, path);
      if (record.key !== undefined) keys.set(record.key, path);
      for (const code of codesGiven(record))
        if (!state.voided.has(id) && !state.specimens.has(code)) codes.set(code, {path, lot: undefined});
    }
  for (const {code, lot, entry} of state.specimens.values()) {
    const path = entries.get(entry);
    if (path !== undefined) codes.set(code, {path, lot});
  }
  return indexDocument({codes, keys, entries});
}
