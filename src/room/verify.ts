// A room looked through: every document, every checksum, every record.
import {join} from 'node:path';
import type * as z from 'zod';
import {Refusal} from '../records/refusal.ts';
import {refusalFor} from '../records/schema/wording.ts';
import {kindOf, readingsOf, stemOf} from './document-path.ts';
import {readDocument} from './documents.ts';
import {entriesRow} from './entries-document.ts';
import {type Held, type Index, indexIn, indexOf} from './index-document.ts';
import {monthRow} from './new-readings.ts';
import {numberIn} from './numbering.ts';
import {readMonth} from './readings.ts';
import {faultInReadings} from './readings-check.ts';
import {contradictionIn, withoutStop} from './room-check.ts';
import {type DocumentRow, ROOM_FILE, type RoomDocument, type StoredRoom} from './room-document.ts';
import {readRoomFile, signatureOf} from './room-file.ts';
import * as schema from './room-schema.ts';

export interface Problem {
  readonly what: string;
  readonly where: string;
  readonly mend: string;
}

export interface Verified {
  readonly sound: boolean;
  /** How many were looked at, room.json among them. */
  readonly documents: number;
  readonly problems: readonly Problem[];
}

/**
 * Look through everything a room names. Files that nothing names are no fault.
 * @throws Refusal where there is no room at all
 */
export async function verifyRoom(dir: string): Promise<Verified> {
  const path = join(dir, ROOM_FILE);
  const problems: Problem[] = [];
  const examine = async (work: () => unknown) => {
    try {
      await work();
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const {what, where, mend} = error;
      problems.push({what, where, mend});
    }
  };

  let stored: StoredRoom | undefined;
  await examine(async () => {
    if ((await signatureOf(path)) !== 'none') stored = await readRoomFile(path);
  });
  if (stored === undefined && problems.length === 0) await readRoomFile(path);
  if (stored === undefined) return {sound: false, documents: 1, problems};

  const {document, warnings} = stored;
  if (warnings.length > 0)
    problems.push({
      what: 'it is not as it was written, though its form is right: somebody edited it, or the disk did',
      where: path,
      mend: 'Keep it as it is, or run teneral restore.',
    });
  await examine(() => checkForm(schema.roomDocument, document, path));
  await examine(() => refuse(contradictionIn(document), path));
  const found = new Contents(dir, document);
  for (const row of document.documents) await examine(() => found.take(row));
  if (problems.length === 0) await examine(() => refuse(found.contradiction(), path));
  return {sound: problems.length === 0, documents: 1 + document.documents.length, problems};
}

/** What the documents hold, gathered one after the other. */
class Contents {
  readonly #dir: string;
  readonly #room: RoomDocument;
  readonly #batches: ReadonlySet<string>;
  readonly #held: Held[] = [];
  #index: Index = indexOf([]);

  constructor(dir: string, room: RoomDocument) {
    this.#dir = dir;
    this.#room = room;
    this.#batches = new Set(room.imports.map(({id}) => id));
  }

  /** @throws Refusal for a document that is missing, damaged, or breaks its own rules */
  async take(row: DocumentRow): Promise<void> {
    const path = join(this.#dir, row.path);
    const content: unknown = await readDocument(this.#dir, row);
    switch (kindOf(row.path)) {
      case 'readings': {
        const document = checkForm(schema.readingsDocument, content, path);
        refuse(faultInReadings(document, this.#batches), path);
        const {logger, month} = document;
        compare(
          {...row, stem: stemOf(row.path)},
          {...monthRow(readMonth(document)), stem: `${readingsOf(logger)}${month}`},
          path,
        );
        break;
      }
      case 'index':
        this.#index = indexIn(checkForm(schema.indexDocument, content, path));
        break;
      default: {
        const {entries} = checkForm(schema.entriesDocument, content, path);
        compare(row, entriesRow(entries), path);
        this.#held.push({path: row.path, entries});
      }
    }
  }

  /** What does not fit between documents that are each in order. */
  contradiction(): string | undefined {
    const ids = [...this.#room.entries, ...this.#held.flatMap(({entries}) => entries)].map(({id}) => id);
    if (new Set(ids).size < ids.length) return 'an entry is stored twice';
    const next = this.#room.next.entry;
    const beyond = ids.find(id => numberIn(id) >= next);
    if (beyond !== undefined) return `the next entry is numbered e${next}, but there is an entry ${beyond}`;
    const stems = this.#room.documents
      .map(({path}) => stemOf(path))
      .filter(stem => !/^(archive|daybook)/.test(stem));
    if (new Set(stems).size < stems.length)
      return 'two documents hold the same month of a logger, or two the index';
    const expected = indexOf(this.#held);
    const fits = (['codes', 'keys', 'entries'] as const).every(kind =>
      same(expected[kind], this.#index[kind]),
    );
    return fits ? undefined : 'the index does not fit the documents';
  }
}

function checkForm<Content>(form: z.ZodType<Content>, content: unknown, path: string): Content {
  const result = form.safeParse(content);
  if (result.success) return result.data;
  const {what, where, mend} = refusalFor(result.error, content, path);
  throw new Refusal(`${what} (${withoutStop(mend)})`, where, 'Run teneral restore to go back.');
}

function refuse(fault: string | undefined, path: string): void {
  if (fault !== undefined) throw new Refusal(fault, path, 'Run teneral restore to go back.');
}

/** The table must say of a document what the document says of itself. */
function compare<Facts extends object>(stated: Facts, found: Facts, path: string): void {
  for (const [name, value] of Object.entries(found)) {
    const said = Object.entries(stated).find(([key]) => key === name)?.[1];
    if (said !== value) refuse(`the table in room.json says ${name} ${said}, the document ${value}`, path);
  }
}

function same(a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): boolean {
  return a.size === b.size && [...a].every(([name, path]) => b.get(name) === path);
}
