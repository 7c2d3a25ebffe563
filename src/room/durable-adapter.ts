// Files that are either the old or the new version, whatever happens: the adapter under lowdb.
// lowdb's own file adapter has one fixed temporary name and never waits for the disk.
import {randomBytes} from 'node:crypto';
import {readFileSync} from 'node:fs';
import {type FileHandle, open, rename, stat, unlink} from 'node:fs/promises';
import {dirname} from 'node:path';
import type {Adapter} from 'lowdb';
import {codeOf} from './disk-refusal.ts';

/** How a document becomes bytes, and bytes a document. */
export interface Form<Content> {
  write(content: Content): Buffer;
  /** @throws Refusal for bytes that are no such document */
  read(bytes: Buffer): Content | Promise<Content>;
}

/**
 * One document in one file. Only a file that does not exist is "nothing yet"; every other trouble is thrown.
 * `beforeRename` is the last moment to call a writing off, by throwing.
 */
export class DurableAdapter<Content> implements Adapter<Content | null> {
  readonly #path: string;
  readonly #form: Form<Content>;
  readonly #beforeRename: (() => Promise<void>) | undefined;

  constructor(path: string, form: Form<Content>, beforeRename?: () => Promise<void>) {
    this.#path = path;
    this.#form = form;
    this.#beforeRename = beforeRename;
  }

  async read(): Promise<Content | null> {
    const bytes = await readIfThere(this.#path);
    return bytes === undefined ? null : this.#form.read(bytes);
  }

  /** There is no writing of nothing. */
  async write(content: Content | null): Promise<void> {
    if (content === null) return;
    await writeDurably(this.#path, this.#form.write(content), this.#beforeRename);
    await syncFolder(dirname(this.#path));
  }
}

/** The bytes of a file, undefined where there is none. */
export async function readIfThere(path: string): Promise<Buffer | undefined> {
  try {
    // At once: handed from thread to thread, reading a room takes longer than the reading itself.
    return readFileSync(path);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}

/**
 * Write a file whole: beside it under a name of its own, through to the disk, then in its place. The caller
 * syncs the folder.
 */
export async function writeDurably(
  path: string,
  bytes: Buffer,
  beforeRename?: () => Promise<void>,
): Promise<void> {
  const temporary = temporaryName(path);
  try {
    const handle = await open(temporary, 'wx');
    try {
      await keepMode(path, handle);
      await handle.writeFile(bytes);
      await handle.sync();
    } finally {
      await handle.close();
    }
    await beforeRename?.();
    await rename(temporary, path);
  } catch (error) {
    await unlink(temporary).catch(() => {});
    throw error;
  }
}

/** A name beside a file that no other process, thread or call uses. */
export function temporaryName(path: string): string {
  return `${path}.${process.pid}-${randomBytes(6).toString('hex')}.tmp`;
}

/** Whether a file is one that a killed process left half done. */
export function isTemporary(path: string): boolean {
  return /\.(?:\d+-[0-9a-f]{12}|lock-[\w-]+)\.tmp$/.test(path);
}

/** Make a folder's new names last. Windows cannot, and keeps them by itself. */
export async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** A file that only some may read stays so. */
async function keepMode(path: string, handle: FileHandle): Promise<void> {
  try {
    await handle.chmod((await stat(path)).mode & 0o777);
  } catch (error) {
    if (codeOf(error) !== 'ENOENT') throw error;
  }
}
