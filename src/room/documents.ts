// The documents beside room.json: read against their checksum in the table, written anew and never changed.
import {mkdir, readdir, unlink} from 'node:fs/promises';
import {dirname, join} from 'node:path';
import {Refusal} from '../records/refusal.ts';
import {codeOf, diskRefusal} from './disk-refusal.ts';
import {numberOf, stemOf} from './document-path.ts';
import {readIfThere, syncFolder, writeDurably} from './durable-adapter.ts';
import type {DocumentRow} from './room-document.ts';
import {FORMAT, sha256} from './sealed.ts';

/** A document that a room names is not there. A newer room.json may no longer name it. */
export class DocumentMissing extends Refusal {}

/** A document yet to be written: everything of its row but the number in its path and the checksum. */
export interface NewDocument {
  /** Its path without number and ending, such as `readings/L1/2026-05`. */
  readonly stem: string;
  readonly bytes: Buffer;
  readonly rows: number;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

/**
 * The content of a document whose bytes have the checksum of its row; that checksum stands for the check of
 * its form, because only this program writes documents.
 * @throws DocumentMissing, or a Refusal for one that is damaged or cannot be read
 */
export async function readDocument<Content extends {readonly format: typeof FORMAT}>(
  dir: string,
  row: DocumentRow,
): Promise<Content> {
  const path = join(dir, row.path);
  const bytes = await readIfThere(path).catch(error => Promise.reject(diskRefusal(error, path)));
  if (bytes === undefined)
    throw new DocumentMissing('this part of the room is missing', path, 'Run teneral restore to go back.');
  if (sha256(bytes) !== row.sha256)
    throw new Refusal(
      'this part of the room is damaged: it is not as it was written',
      path,
      'Put back an unchanged copy of the file, or run teneral restore to go back.',
    );
  const content = JSON.parse(bytes.toString()) as Content;
  if (content.format !== FORMAT)
    throw new Refusal(
      `it has format ${content.format}, newer than this teneral knows (${FORMAT})`,
      path,
      'Install the newer teneral.',
    );
  return content;
}

/** Bytes of a document from its content. */
export function documentBytes<Content extends {readonly format: typeof FORMAT}>(content: Content): Buffer {
  return Buffer.from(`${JSON.stringify(content)}\n`);
}

/**
 * Write documents through to the disk, folders and all, each under the next free number. Nothing names them
 * until room.json does.
 * @returns their rows, in the order given
 */
export async function writeDocuments(dir: string, documents: readonly NewDocument[]): Promise<DocumentRow[]> {
  const folders = new Map<string, Set<string>>();
  for (const {stem} of documents) {
    const folder = dirname(join(dir, stem));
    if (!folders.has(folder)) folders.set(folder, new Set(await makeFolder(dir, folder)));
  }
  const rows = documents.map(({stem, bytes, rows, from, to}): DocumentRow => {
    const taken = folders.get(dirname(join(dir, stem)))!;
    const path = `${stem}-${nextNumber(stem, taken)}.json`;
    taken.add(path.slice(path.lastIndexOf('/') + 1));
    return {path, sha256: sha256(bytes), rows, from, to};
  });
  try {
    await inTurns(rows, async ({path}, i) => {
      const whole = join(dir, path);
      await writeDurably(whole, documents[i]!.bytes).catch(error =>
        Promise.reject(diskRefusal(error, whole)),
      );
    });
    for (const folder of folders.keys()) await syncFolder(folder);
  } catch (error) {
    await removeDocuments(dir, rows);
    throw diskRefusal(error, dir);
  }
  return rows;
}

/** Take back documents that nothing names. What cannot be removed is swept later. */
export async function removeDocuments(dir: string, rows: readonly DocumentRow[]): Promise<void> {
  for (const {path} of rows) await unlink(join(dir, path)).catch(() => {});
}

/** Make a folder below the room, its own name made to last, and list what it holds. */
async function makeFolder(dir: string, folder: string): Promise<string[]> {
  try {
    const made = await mkdir(folder, {recursive: true});
    for (let at = folder; made !== undefined && at !== dir; at = dirname(at)) await syncFolder(dirname(at));
    return await readdir(folder);
  } catch (error) {
    throw codeOf(error) === 'EEXIST'
      ? diskRefusal(Object.assign(new Error(), {code: 'ENOTDIR'}), folder)
      : diskRefusal(error, folder);
  }
}

/** One more than any file there, named by the room or left over. */
function nextNumber(stem: string, taken: ReadonlySet<string>): number {
  const name = stem.slice(stem.lastIndexOf('/') + 1);
  let highest = 0;
  for (const file of taken) if (stemOf(file) === name) highest = Math.max(highest, numberOf(file));
  return highest + 1;
}

const AT_ONCE = 8;

/** Work on a few items at once. Where one fails, no other is begun, and those under way are waited for. */
async function inTurns<Item>(
  items: readonly Item[],
  work: (item: Item, index: number) => Promise<void>,
): Promise<void> {
  let next = 0;
  const failures: unknown[] = [];
  const worker = async () => {
    while (next < items.length && failures.length === 0) {
      const index = next++;
      await work(items[index]!, index).catch(error => failures.push(error));
    }
  };
  await Promise.all(Array.from({length: AT_ONCE}, worker));
  if (failures.length > 0) throw failures[0];
}
