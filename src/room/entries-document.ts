// Documents of entries that have left room.json: those of archive/ and daybook/.
import {type Entry, instantOf} from '../records/entry.ts';
import {documentBytes, type NewDocument} from './documents.ts';
import type {DocumentRow} from './room-document.ts';
import {FORMAT} from './sealed.ts';

export interface EntriesDocument {
  readonly format: typeof FORMAT;
  /** In the order of writing. */
  readonly entries: readonly Entry[];
}

/** A document to be written; it holds at least one entry. */
export function entriesDocument(stem: string, entries: readonly Entry[]): NewDocument {
  return {stem, bytes: documentBytes<EntriesDocument>({format: FORMAT, entries}), ...entriesRow(entries)};
}

/** What the table says of such a document. */
export function entriesRow(entries: readonly Entry[]): Pick<DocumentRow, 'rows' | 'from' | 'to'> {
  const utc = (entry: Entry | undefined) => entry && new Date(instantOf(entry.recordedAt)).toISOString();
  return {rows: entries.length, from: utc(entries[0]), to: utc(entries.at(-1))};
}
