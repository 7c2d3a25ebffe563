// Programs that work on a room from outside this process.
import {spawn} from 'node:child_process';
import {join} from 'node:path';
import {fileURLToPath} from 'node:url';
import {build} from 'esbuild';
import {newFolder} from './rooms.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** Bundle a program of tests/room/programs, so that it starts quickly. */
export async function programNamed(name: 'writer' | 'importer'): Promise<string> {
  const outdir = await newFolder();
  await build({
    entryPoints: [here(`programs/${name}.ts`)],
    outdir,
    outExtension: {'.js': '.mjs'},
    bundle: true,
    splitting: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
  });
  return join(outdir, `${name}.mjs`);
}

/** Run a program to its end: its exit status, or the signal that ended it. */
export async function run(
  program: string,
  args: readonly string[],
  killAt?: number,
): Promise<string | number | null> {
  const options = killAt === undefined ? [] : ['--import', here('programs/kill-at.mjs')];
  const child = spawn(process.execPath, [...options, program, ...args], {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: {...process.env, KILL_AT: String(killAt)},
  });
  return new Promise(resolve => child.on('exit', (code, signal) => resolve(signal ?? code)));
}
