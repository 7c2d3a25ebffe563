// What killed writers and replaced documents leave behind, cleared away once nobody can need it.
import {readdir, readFile, stat, unlink, utimes} from 'node:fs/promises';
import {join} from 'node:path';
import {type Backup, listBackups} from './backups.ts';
import {readCache, writeCache} from './cache.ts';
import {DOCUMENT_PATH} from './document-path.ts';
import {isTemporary} from './durable-adapter.ts';
import {BACKUPS, CACHE, type RoomDocument} from './room-document.ts';

/** A reader may still hold a room.json that names what is unnamed now. */
const NEEDLESS_AFTER_MS = 10 * 60_000;
const CACHE_FOR_MS = 7 * 86_400_000;

/** Forget which backups name what: after going back, room.json names again what it no longer did. */
export async function forgetPins(dir: string): Promise<void> {
  await writeCache({dir}, PINS, []);
}

/** Count the ten minutes of documents that were replaced from now on. */
export async function markReplaced(dir: string, paths: Iterable<string>, now: number): Promise<void> {
  for (const path of paths) await utimes(join(dir, path), now / 1000, now / 1000).catch(() => {});
}

/**
 * Remove documents that neither room.json nor a backup names, and temporary files, once they are ten minutes old;
 * and what was not used for a week in the cache.
 */
export async function sweep(dir: string, {documents}: RoomDocument, now: number): Promise<void> {
  const named = new Set(documents.map(({path}) => path));
  const files = await filesBelow(dir);
  const unnamed = files.filter(path => isTemporary(path) || (DOCUMENT_PATH.test(path) && !named.has(path)));
  const old = await olderThan(dir, unnamed, now - NEEDLESS_AFTER_MS);
  const pinned = await namedByBackups(dir, old);
  const stale = await olderThan(
    dir,
    files.filter(path => path.startsWith(`${CACHE}/`)),
    now - CACHE_FOR_MS,
  );
  for (const path of [...old.filter(path => !pinned.has(path)), ...stale])
    await unlink(join(dir, path)).catch(() => {});
}

/** Files in the room's folder and in the folders that hold documents, backups and cache. */
async function filesBelow(dir: string): Promise<string[]> {
  const files: string[] = [];
  const walk = async (folder: string) => {
    for (const item of await readdir(join(dir, folder), {withFileTypes: true})) {
      const path = folder === '' ? item.name : `${folder}/${item.name}`;
      if (!item.isDirectory()) files.push(path);
      else if (FOLDERS.test(path)) await walk(path);
    }
  };
  await walk('');
  return files;
}

const FOLDERS = new RegExp(`^(?:archive|daybook|readings(?:/[^/]+)?|${BACKUPS}|${CACHE})$`);

async function olderThan(dir: string, paths: readonly string[], before: number): Promise<string[]> {
  const old: string[] = [];
  for (const path of paths) {
    const seen = await stat(join(dir, path)).catch(() => undefined);
    if (seen !== undefined && seen.mtimeMs < before) old.push(path);
  }
  return old;
}

const PINS = 'unnamed-documents';

/**
 * Those of some documents that backups name. A backup never changes, and a later one never names what room.json no
 * longer does, so what was found once is kept in the cache: reading every backup at every change would be felt.
 */
async function namedByBackups(dir: string, paths: readonly string[]): Promise<ReadonlySet<string>> {
  const documents = paths.filter(path => DOCUMENT_PATH.test(path));
  if (documents.length === 0) return new Set();
  const backups = await listBackups(dir);
  const known = await knownPins(dir);
  if (documents.some(path => !known.has(path))) {
    const namedBy = await pathsIn(backups);
    for (const path of documents) known.set(path, namedBy.get(path) ?? []);
    await writeCache(
      {dir},
      PINS,
      [...known].filter(([path]) => documents.includes(path)),
    );
  }
  const there = new Set(backups.map(({name}) => name));
  return new Set(documents.filter(path => known.get(path)?.some(name => there.has(name))));
}

async function knownPins(dir: string): Promise<Map<string, readonly string[]>> {
  const kept = await readCache({dir}, PINS);
  return new Map(Array.isArray(kept) ? (kept as [string, string[]][]) : []);
}

/** The backups that name each path. Their text is searched, so that a damaged one holds on to its documents too. */
async function pathsIn(backups: readonly Backup[]): Promise<Map<string, string[]>> {
  const namedBy = new Map<string, string[]>();
  for (const {name, path: file} of backups) {
    const text = await readFile(file, 'latin1').catch(() => '');
    for (const [, path] of text.matchAll(/"path":\s*"([^"\\]+)"/g))
      namedBy.set(path!, [...(namedBy.get(path!) ?? []), name]);
  }
  return namedBy;
}
