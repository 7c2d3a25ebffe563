// Answers kept to be quick the next time. They may vanish at any moment, and no trouble with them is an error.
import {mkdir, rename, unlink, writeFile} from 'node:fs/promises';
import {dirname, join} from 'node:path';
import {readIfThere, temporaryName} from './durable-adapter.ts';
import {CACHE} from './room-document.ts';
import {seal, unseal} from './sealed.ts';

/** What was kept under a name; undefined where there is nothing, or it is damaged. The caller knows its form. */
export async function readCache({dir}: {readonly dir: string}, name: string): Promise<unknown> {
  try {
    const bytes = await readIfThere(fileOf(dir, name));
    return bytes && unseal<unknown>(bytes)?.content;
  } catch {
    return undefined;
  }
}

/** Keep an answer. Needs no lock; where it cannot be written, it is computed again the next time. */
export async function writeCache(
  {dir}: {readonly dir: string},
  name: string,
  content: unknown,
): Promise<void> {
  const path = fileOf(dir, name);
  const temporary = temporaryName(path);
  try {
    await mkdir(dirname(path), {recursive: true});
    await writeFile(temporary, seal(content), {flag: 'wx'});
    await rename(temporary, path);
  } catch {
    await unlink(temporary).catch(() => {});
  }
}

/** A name may hold letters, digits, ".", "_" and "-". */
function fileOf(dir: string, name: string): string {
  if (!/^[A-Za-z0-9][A-Za-z0-9._-]{0,100}$/.test(name))
    throw new RangeError(`"${name}" is no name for the cache`);
  return join(dir, CACHE, `${name}.json`);
}
