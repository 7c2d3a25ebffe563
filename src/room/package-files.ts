// What ships with the program: the bundled profiles and the example season.
import {existsSync} from 'node:fs';
import {readdir, readFile} from 'node:fs/promises';
import {dirname, join} from 'node:path';
import {fileURLToPath} from 'node:url';
import type {Profile} from '../records/schema/index.ts';

/** The program's own folder: the nearest one above this file that holds package.json. */
function packageFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, 'package.json'))) folder = dirname(folder);
  return folder;
}

/** The codes of the bundled profiles, in order of the alphabet. */
export async function bundledProfileCodes(): Promise<string[]> {
  const names = await readdir(join(packageFolder(), 'profiles'));
  return names
    .filter(name => name.endsWith('.json'))
    .map(name => name.slice(0, -'.json'.length))
    .sort();
}

/**
 * A bundled profile, or undefined where none has this code. Read without a check: a test holds every bundled file to
 * be exactly what the check of a profile returns, defaults written out.
 */
export async function bundledProfile(code: string): Promise<Profile | undefined> {
  const path = join(packageFolder(), 'profiles', `${code}.json`);
  if (!/^[\w.-]+$/.test(code) || !existsSync(path)) return undefined;
  return JSON.parse(await readFile(path, 'utf8'));
}

/** A file of the example season, as text. */
export function demoFile(name: string): Promise<string> {
  return readFile(demoPath(name), 'utf8');
}

export function demoPath(name: string): string {
  return join(packageFolder(), 'demo-data', name);
}
