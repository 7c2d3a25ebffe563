// A folder that a logger drops its files into: each is imported once, when it has stopped growing.
import {readdirSync, statSync} from 'node:fs';
import {join} from 'node:path';
import {sha256Of} from '../exchange/logger-file/chunks.ts';
import {Refusal} from '../records/refusal.ts';
import {openRoom} from '../room/open.ts';
import {type Imported, type ImportWishes, importFiles} from './import.ts';
import type {Session} from './session.ts';

/** What came of one file of the folder. */
export type Dropped =
  | {readonly file: string; readonly imported: Imported}
  | {readonly file: string; readonly refused: Refusal};

/** A file that is being written grows; one that did not change between two looks is whole. */
export class WatchedFolder {
  /** By path: how it stood at the last look, and whether that has been dealt with. */
  readonly #seen = new Map<string, {readonly state: string; readonly dealtWith: boolean}>();

  constructor(
    readonly session: Session,
    readonly logger: string,
    readonly folder: string,
    readonly wishes: ImportWishes,
  ) {}

  /**
   * Look at the folder once.
   * @param settled take files as whole that were not seen before
   * @throws Refusal where the folder or the room cannot be read
   */
  async look(settled = false): Promise<Dropped[]> {
    const dropped: Dropped[] = [];
    for (const path of filesIn(this.folder)) {
      const state = stateOf(path);
      if (state === undefined) continue;
      const before = this.#seen.get(path);
      const isWhole = settled || before?.state === state;
      const dealtWith = before?.state === state && before.dealtWith;
      if (isWhole && !dealtWith) dropped.push(...(await this.#take(path)));
      this.#seen.set(path, {state, dealtWith: isWhole});
    }
    return dropped;
  }

  async #take(path: string): Promise<Dropped[]> {
    try {
      if (await isImported(this.session, this.logger, path)) return [];
      const [imported] = await importFiles(this.session, this.logger, [path], this.wishes);
      return imported === undefined ? [] : [{file: path, imported}];
    } catch (error) {
      if (error instanceof Refusal) return [{file: path, refused: error}];
      throw error;
    }
  }
}

/** A file whose very bytes were imported for the logger before is not read again. */
async function isImported({dir}: Session, logger: string, path: string): Promise<boolean> {
  const hash = sha256Of(path);
  return (await openRoom(dir)).imports.some(batch => batch.logger === logger && batch.hash === hash);
}

/** Its files that are not hidden, by name. */
function filesIn(folder: string): string[] {
  try {
    return readdirSync(folder, {withFileTypes: true})
      .filter(entry => entry.isFile() && !entry.name.startsWith('.'))
      .map(({name}) => join(folder, name))
      .sort();
  } catch {
    throw new Refusal('this folder cannot be read', folder, 'Check its name, and that you may read it.');
  }
}

/** Size and time of writing; undefined for a file that is gone by now. */
function stateOf(path: string): string | undefined {
  const stat = statSync(path, {throwIfNoEntry: false});
  return stat === undefined || stat.size === 0 ? undefined : `${stat.size} ${stat.mtimeMs}`;
}
