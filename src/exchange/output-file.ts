// Files that a person asked for, written whole or not at all.
import {mkdirSync, renameSync, rmSync, writeFileSync} from 'node:fs';
import {basename, dirname, join} from 'node:path';
import {Refusal} from '../records/refusal.ts';

/**
 * Write files beside their places first, then put all in place; a file that was there before is replaced.
 * @param meanwhile what must succeed too; where it throws, nothing is put in place
 * @throws Refusal where a place cannot be written to
 */
export async function writeOutput<Value>(
  files: readonly {readonly path: string; readonly content: Uint8Array | string}[],
  meanwhile: () => Promise<Value>,
): Promise<Value> {
  const written: {readonly path: string; readonly fresh: string}[] = [];
  try {
    for (const {path, content} of files) {
      const fresh = join(dirname(path), `.${basename(path)}.${process.pid}.new`);
      writable(path, () => {
        mkdirSync(dirname(path), {recursive: true});
        written.push({path, fresh});
        writeFileSync(fresh, content);
      });
    }
    const value = await meanwhile();
    for (const {path, fresh} of written) writable(path, () => renameSync(fresh, path));
    return value;
  } finally {
    for (const {fresh} of written) rmSync(fresh, {force: true});
  }
}

const reasons: Readonly<Record<string, readonly [what: string, mend: string]>> = {
  EACCES: ['you are not allowed to write here', 'Name a file in a folder of yours.'],
  EPERM: ['you are not allowed to write here', 'Name a file in a folder of yours.'],
  EROFS: ['nothing can be written on this disk', 'Name a file on another disk.'],
  EISDIR: ['this is a folder, not a file', 'Name a file in it.'],
  ENOTDIR: ['a part of this path is a file, not a folder', 'Correct the path.'],
  EEXIST: ['a part of this path is a file, not a folder', 'Correct the path.'],
  ENOSPC: ['the disk is full', 'Make room, or name a file on another disk.'],
};

function writable(path: string, write: () => void): void {
  try {
    write();
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    const [what, mend] = reasons[code] ?? [`the file cannot be written (${code})`, 'Check the disk.'];
    throw new Refusal(what, path, mend);
  }
}
