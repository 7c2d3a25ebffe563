// Copies of room.json: one after every change, thinned to one an hour, a day and a week as they age.
import {copyFile, mkdir, readdir, rename, unlink} from 'node:fs/promises';
import {dirname, join} from 'node:path';
import {MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {codeOf, diskRefusal} from './disk-refusal.ts';
import {temporaryName} from './durable-adapter.ts';
import {BACKUPS, ROOM_FILE} from './room-document.ts';
import {signatureOf} from './room-file.ts';

export interface Backup {
  /** Its file's name without the ending. */
  readonly name: string;
  readonly path: string;
  /** When it was made, ms since 1970. */
  readonly at: number;
}

/** The copies there are, newest first. */
export async function listBackups(dir: string): Promise<Backup[]> {
  const folder = join(dir, BACKUPS);
  const files = await readdir(folder).catch(error => {
    if (codeOf(error) === 'ENOENT') return [];
    throw diskRefusal(error, folder);
  });
  return files
    .map(file => ({name: file.replace(/\.json$/, ''), path: join(folder, file), at: timeIn(file)}))
    .filter(({at}) => !Number.isNaN(at))
    .sort((a, b) => b.at - a.at);
}

/** Copy room.json as it stands, and drop the copies that are no longer needed. */
export async function keepBackup(dir: string, now: number): Promise<void> {
  const path = join(dir, BACKUPS, `${stampOf(now)}.json`);
  const temporary = temporaryName(path);
  await mkdir(dirname(path), {recursive: true});
  await copyFile(join(dir, ROOM_FILE), temporary);
  await rename(temporary, path);
  for (const backup of thinned(await listBackups(dir), now)) await unlink(backup.path);
}

/**
 * The copies that are no longer needed. Kept are the newest three, and the newest of each hour of the last day, of
 * each day of the last two weeks, and of each week of the last half year.
 */
export function thinned<Copy extends {readonly at: number}>(
  newestFirst: readonly Copy[],
  now: number,
): Copy[] {
  const kept = new Set(newestFirst.slice(0, 3));
  for (const {every, forMs} of SPANS) {
    const seen = new Set<number>();
    for (const copy of newestFirst) {
      const span = Math.floor(copy.at / every);
      if (now - copy.at > forMs || seen.has(span)) continue;
      seen.add(span);
      kept.add(copy);
    }
  }
  return newestFirst.filter(copy => !kept.has(copy));
}

const SPANS = [
  {every: MS_PER_HOUR, forMs: MS_PER_DAY},
  {every: MS_PER_DAY, forMs: 14 * MS_PER_DAY},
  {every: 7 * MS_PER_DAY, forMs: 26 * 7 * MS_PER_DAY},
];

/**
 * Copy files of the room to where nothing touches them again, under their own paths. What the disk cannot read any
 * more is left.
 * @returns the folder, undefined where there was nothing to copy
 */
export async function setAside(
  dir: string,
  paths: readonly string[],
  now: number,
): Promise<string | undefined> {
  const folder = join(dir, BACKUPS, `set-aside-${stampOf(now)}`);
  let used = false;
  for (const path of paths) {
    const [from, to] = [join(dir, path), join(folder, path)];
    if ((await signatureOf(from)) === 'none') continue;
    try {
      await mkdir(dirname(to), {recursive: true});
      await copyFile(from, to);
    } catch (error) {
      if (codeOf(error) !== 'EIO') throw diskRefusal(error, from);
    }
    used = true;
  }
  return used ? folder : undefined;
}

/** ISO 8601 in its basic form, which every disk takes for a name: 2026-06-12T084000123Z. */
function stampOf(ms: number): string {
  return new Date(ms).toISOString().replace(/[:.]/g, '');
}

function timeIn(file: string): number {
  const [, day, h, m, s, ms] = /^(\d{4}-\d{2}-\d{2})T(\d{2})(\d{2})(\d{2})(\d{3})Z\.json$/.exec(file) ?? [];
  return day === undefined ? Number.NaN : Date.parse(`${day}T${h}:${m}:${s}.${ms}Z`);
}
