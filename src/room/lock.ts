// One writer at a time: a lock file that names its holder, and is taken over when that process is gone.
import {randomUUID} from 'node:crypto';
import {type FileHandle, link, open, stat, unlink} from 'node:fs/promises';
import {join} from 'node:path';
import {setTimeout as pause} from 'node:timers/promises';
import {Refusal} from '../records/refusal.ts';
import {codeOf, diskRefusal} from './disk-refusal.ts';
import {temporaryName} from './durable-adapter.ts';
import {type Holder, holderIn, stateOf, thisProcess, type Whereabouts} from './lock-holder.ts';

export const LOCK_FILE = 'lock.json';

const WAIT_MS = 30_000;
const SIGN_OF_LIFE_MS = 10_000;
/** After so long without a sign of life, a holder that cannot be asked is taken for dead. */
const SILENT_MS = 60_000;
/** Removing a dead lock takes an instant; a claim to do it that is older was left by a killed process. */
const REMOVING_MS = 10_000;
const LOOK_AGAIN_MS = 20;

export interface Lock {
  /** Whether this process still holds it: after a long sleep another may have taken it for dead. */
  isHeld(): Promise<boolean>;
  release(): Promise<void>;
}

/**
 * Take the lock of a room, waiting while somebody else holds it.
 * @throws Refusal naming who holds it since when, once the wait is over
 */
export async function takeLock(dir: string, by: string, waitMs = WAIT_MS): Promise<Lock> {
  const path = join(dir, LOCK_FILE);
  const candidate = temporaryName(path);
  const here = await thisProcess();
  const mine: Holder = {token: randomUUID(), by, since: new Date().toISOString(), ...here};
  const bytes = Buffer.from(`${JSON.stringify(mine)}\n`);
  const until = performance.now() + waitMs;
  const file = await writeCandidate(candidate, bytes, path);
  try {
    const clock = await clockOf(file);
    for (;;) {
      const placed = await place(file, candidate, path, bytes);
      if (placed !== undefined) return held(path, mine.token, bytes, placed);
      const other = await lockAt(path);
      if (other === undefined) continue;
      if (await isDead(other, here, clock())) await removeDead(path, other.token, clock);
      else if (performance.now() > until) throw heldBy(other, dir);
      else await pause(LOOK_AGAIN_MS * (0.5 + Math.random()));
    }
  } catch (error) {
    await file.close();
    throw diskRefusal(error, path);
  } finally {
    await unlink(candidate).catch(() => {});
  }
}

/** Signs of life are written into the file's own inode, so they never touch a successor's lock. */
function held(path: string, token: string, bytes: Buffer, file: FileHandle): Lock {
  const signs = setInterval(() => file.write(bytes, 0, bytes.length, 0).catch(() => {}), SIGN_OF_LIFE_MS);
  signs.unref();
  const isHeld = async () => (await lockAt(path))?.token === token;
  return {
    isHeld,
    async release() {
      clearInterval(signs);
      await file.close();
      for (let tries = 0; tries < RELEASE_TRIES; tries++) {
        if (tries > 0) await pause(LOOK_AGAIN_MS);
        const gone = await removeIf(isHeld, path).catch(() => false);
        if (gone) return;
      }
    },
  };
}

/** A disk that fails once must not leave a lock that nobody would ever give up. */
const RELEASE_TRIES = 3;

async function removeIf(isHeld: () => Promise<boolean>, path: string): Promise<true> {
  if (await isHeld()) await unlink(path);
  return true;
}

interface LockSeen {
  /** Undefined in a file that is not one of ours, or was cut by a power failure. */
  readonly holder: Holder | undefined;
  readonly token: string;
  /** By the clock of the disk. */
  readonly signOfLifeMs: number;
}

async function lockAt(path: string): Promise<LockSeen | undefined> {
  let file: FileHandle | undefined;
  try {
    file = await open(path, 'r');
    const [text, {mtimeMs, ino}] = [await file.readFile('utf8'), await file.stat()];
    const holder = holderIn(text);
    return {holder, token: holder?.token ?? `unknown-${ino}`, signOfLifeMs: mtimeMs};
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  } finally {
    await file?.close();
  }
}

async function writeCandidate(candidate: string, bytes: Buffer, path: string): Promise<FileHandle> {
  try {
    const file = await open(candidate, 'wx+');
    await file.write(bytes, 0, bytes.length, 0);
    return file;
  } catch (error) {
    throw diskRefusal(error, path);
  }
}

/** A clock that agrees with the times of files, whosever machine keeps them. */
async function clockOf(justWritten: FileHandle): Promise<() => number> {
  const {mtimeMs} = await justWritten.stat();
  const start = performance.now();
  return () => mtimeMs + performance.now() - start;
}

/**
 * Put the lock in place, whole: as another name of the candidate; on a disk without such names as a new file.
 * @returns undefined where somebody else's is there
 */
async function place(file: FileHandle, candidate: string, path: string, bytes: Buffer) {
  try {
    await link(candidate, path);
    return file;
  } catch (error) {
    const code = codeOf(error) ?? '';
    if (code === 'EEXIST') return undefined;
    if (!NO_LINKS.includes(code)) throw error;
    return placeWithoutLink(file, path, bytes);
  }
}

const NO_LINKS = ['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS', 'EMLINK'];

async function placeWithoutLink(candidate: FileHandle, path: string, bytes: Buffer) {
  try {
    const file = await open(path, 'wx+');
    await file.write(bytes, 0, bytes.length, 0);
    await candidate.close();
    return file;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return undefined;
    throw error;
  }
}

async function isDead({holder, signOfLifeMs}: LockSeen, here: Whereabouts, nowMs: number): Promise<boolean> {
  const state = holder === undefined ? 'unknown' : await stateOf(holder, here);
  return state === 'gone' || (state === 'unknown' && nowMs - signOfLifeMs > SILENT_MS);
}

/**
 * Remove a dead holder's lock. Of all who see it dead only one may: whoever makes the file named after its token,
 * and still finds it in place then.
 */
async function removeDead(path: string, token: string, clock: () => number): Promise<void> {
  const claim = `${path}.lock-${token}.tmp`;
  try {
    await (await open(claim, 'wx')).close();
  } catch (error) {
    if (codeOf(error) !== 'EEXIST') throw error;
    await pause(LOOK_AGAIN_MS);
    const {mtimeMs} = await stat(claim).catch(() => ({mtimeMs: Number.POSITIVE_INFINITY}));
    if (clock() - mtimeMs > REMOVING_MS) await unlink(claim).catch(() => {});
    return;
  }
  try {
    if ((await lockAt(path))?.token === token) await unlink(path);
  } finally {
    await unlink(claim);
  }
}

function heldBy({holder}: LockSeen, dir: string): Refusal {
  const who =
    holder === undefined
      ? 'somebody unknown'
      : `${holder.by} (process ${holder.pid} on ${holder.host}) since ${holder.since}`;
  return new Refusal(
    `the room is being written by ${who}`,
    join(dir, LOCK_FILE),
    'Try again when that is done; a program that hangs must be ended first.',
  );
}
