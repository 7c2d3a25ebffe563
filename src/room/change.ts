// A change of the room: decided on what is there, and on disk as a whole or not at all.
import {join} from 'node:path';
import {setAside} from './backups.ts';
import {removeDocuments, writeDocuments} from './documents.ts';
import {type Lock, takeLock} from './lock.ts';
import {roomOf} from './open.ts';
import {type Plan, planChange} from './plan.ts';
import type {Change, Room} from './room.ts';
import {type DocumentRow, ROOM_FILE} from './room-document.ts';
import {readRoomFile, revisionOf, signatureOf, writeRoomFile} from './room-file.ts';
import {tidyUp} from './tidy.ts';

export interface ChangeOptions {
  /** Written beside imports, and told to others who wait for the lock. */
  readonly by: string;
  /** Now, ms since 1970. Default: when the newest entry of the change was written down, else the clock. */
  readonly now?: number;
  /** How long to wait for another writer. Default: 30 s. */
  readonly waitMs?: number;
  /** What else leaves room.json. Default: what has been quiet for 35 days, when enough of it has gathered. */
  readonly archive?: 'closed';
}

/**
 * Change the room in a folder. What `decide` returns is on disk when this returns; where it throws, or anything
 * fails, the room is as it was.
 * @param decide what to add to the room as it stands; entries are numbered with nextIds. It runs under the lock,
 *   and again where somebody else changed the room all the same
 * @returns the room after the change
 * @throws Refusal where the room cannot be read or written, or another writer does not finish
 */
export async function changeRoom(
  dir: string,
  decide: (room: Room) => Promise<Change>,
  options: ChangeOptions,
): Promise<Room> {
  const path = join(dir, ROOM_FILE);
  if ((await signatureOf(path)) === 'none') await readRoomFile(path);
  for (;;) {
    const lock = await takeLock(dir, options.by, options.waitMs);
    try {
      const room = await attempt(dir, decide, options, lock);
      if (room !== undefined) return room;
    } finally {
      await lock.release();
    }
  }
}

/** The room is not the one that was decided on, or the lock is no longer ours. */
class Overtaken extends Error {}

/** @returns undefined where another writer was quicker and all is to be decided anew */
async function attempt(
  dir: string,
  decide: (room: Room) => Promise<Change>,
  options: ChangeOptions,
  lock: Lock,
): Promise<Room | undefined> {
  const path = join(dir, ROOM_FILE);
  const signature = await signatureOf(path);
  const stored = await readRoomFile(path);
  const before = roomOf(dir, stored);
  const change = await decide(before);
  const plan = await planChange(dir, stored.document, change, options);
  if (plan === undefined) return before;
  if (stored.warnings.length > 0) await setAside(dir, [ROOM_FILE], Date.now());
  const rows = await writePlanned(dir, plan);
  const document = plan.roomWith(rows);
  try {
    await writeRoomFile(path, document, async () => {
      if (!(await lock.isHeld()) || (await signatureOf(path)) !== signature) throw new Overtaken();
    });
  } catch (error) {
    if ((await signatureOf(path)) === signature) await removeDocuments(dir, rows);
    if (error instanceof Overtaken) return undefined;
    throw error;
  }
  await tidyUp(dir, document, plan.replaced);
  return roomOf(dir, {document, revision: revisionOf(document), warnings: []});
}

/** The documents of a plan; the index last, because it names the others. */
async function writePlanned(dir: string, {documents, indexFor}: Plan): Promise<DocumentRow[]> {
  const rows = await writeDocuments(dir, documents);
  try {
    return [...rows, ...(await writeDocuments(dir, indexFor(rows)))];
  } catch (error) {
    await removeDocuments(dir, rows);
    throw error;
  }
}
