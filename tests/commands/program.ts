// Runs the built program as a person's shell would, on a room in a temporary folder.
import {spawnSync} from 'node:child_process';
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll} from 'vitest';

export interface Said {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** The built program. */
export const program = new URL('../../dist/main.mjs', import.meta.url).pathname;

const folders = mkdtempSync(join(tmpdir(), 'teneral-test-'));
afterAll(() => rmSync(folders, {recursive: true, force: true}));

/** A new folder, gone when the tests of the file are over. */
export function temporaryFolder(): string {
  return mkdtempSync(join(folders, 'folder-'));
}

/**
 * @param input what stands on standard input
 * @param environment variables beside those of a keeper in UTC
 * @param cwd the folder it is typed in
 */
export function teneral(
  args: readonly string[],
  input = '',
  environment: Readonly<Record<string, string>> = {},
  cwd?: string,
): Said {
  const env = {...process.env, TENERAL_BY: 'A. Keeper', TZ: 'UTC', LANG: 'C.UTF-8', ...environment};
  const {status, stdout, stderr} = spawnSync(process.execPath, [program, ...args], {
    input,
    env,
    cwd,
    encoding: 'utf8',
  });
  return {status, out: stdout, err: stderr};
}

/** What it answers as JSON; a refusal fails the test with its words. */
export function asked<Answer>(args: readonly string[], input = ''): Answer {
  const {status, out, err} = teneral([...args, '--json'], input);
  if (status !== 0) throw new Error(`teneral ${args.join(' ')} ended with ${status}: ${err}`);
  return JSON.parse(out) as Answer;
}

export interface RoomAt {
  readonly dir: string;
  /** A command on this room at one instant. */
  at(now: string, ...args: string[]): Said;
  ask<Answer>(now: string, ...args: string[]): Answer;
  apply(now: string, records: readonly object[]): Said;
}

/** A new empty room, in UTC unless a zone is given. */
export function newRoom(zone = 'UTC'): RoomAt {
  const dir = join(temporaryFolder(), 'room');
  const made = teneral(['init', dir, '--name', 'test room', '--zone', zone]);
  if (made.status !== 0) throw new Error(made.err);
  return {
    dir,
    at: (now, ...args) => teneral(['--room', dir, '--now', now, ...args]),
    ask: (now, ...args) => asked(['--room', dir, '--now', now, ...args]),
    apply: (now, records) => teneral(['--room', dir, '--now', now, 'apply', '-'], JSON.stringify(records)),
  };
}
