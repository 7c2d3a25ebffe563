// A change of the room: decided on what is there, and on disk as a whole or not at all.
import {join} from 'node:path';
import {removeDocuments, writeDocuments} from './documents.ts';
import {type Lock, takeLock} from './lock.ts';
import {batchesOf, monthsWith} from './new-readings.ts';
import {numberingAfter} from './numbering.ts';
import {openRoom, roomOf} from './open.ts';
import type {Change, Room} from './room.ts';
import {type DocumentRow, ROOM_FILE, type RoomDocument} from './room-document.ts';
import {readRoomFile, signatureOf, writeRoomFile} from './room-file.ts';

export interface ChangeOptions {
  /** Written beside imports, and told to others who wait for the lock. */
  readonly by: string;
  /** When it is written down, ms since 1970. Default: the clock. */
  readonly now?: number;
  /** How long to wait for another writer. Default: 30 s. */
  readonly waitMs?: number;
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
      if (await attempt(dir, decide, options, lock)) return await openRoom(dir);
    } finally {
      await lock.release();
    }
  }
}

/** The room is not the one that was decided on, or the lock is no longer ours. */
class Overtaken extends Error {}

/** @returns false where another writer was quicker and all is to be decided anew */
async function attempt(
  dir: string,
  decide: (room: Room) => Promise<Change>,
  options: ChangeOptions,
  lock: Lock,
): Promise<boolean> {
  const path = join(dir, ROOM_FILE);
  const signature = await signatureOf(path);
  const stored = await readRoomFile(path);
  const change = await decide(roomOf(dir, stored));
  if (change.entries.length === 0 && (change.readings ?? []).length === 0) return true;

  const plan = await planned(dir, stored.document, change, options);
  const rows = await writeDocuments(dir, plan.documents);
  try {
    await writeRoomFile(path, plan.roomWith(rows), async () => {
      if (!(await lock.isHeld()) || (await signatureOf(path)) !== signature) throw new Overtaken();
    });
  } catch (error) {
    if ((await signatureOf(path)) === signature) await removeDocuments(dir, rows);
    if (error instanceof Overtaken) return false;
    throw error;
  }
  return true;
}

async function planned(
  dir: string,
  room: RoomDocument,
  {entries, readings = []}: Change,
  {by, now = Date.now()}: ChangeOptions,
) {
  const batches = batchesOf(readings, room, {by, recordedAt: new Date(now).toISOString()});
  const {documents, replaced} = await monthsWith(dir, room, readings, batches);
  const next = numberingAfter(room.next, entries, batches.length);
  return {
    documents,
    roomWith: (rows: readonly DocumentRow[]): RoomDocument => ({
      ...room,
      next,
      entries: [...room.entries, ...entries],
      imports: [...room.imports, ...batches],
      documents: [...room.documents.filter(({path}) => !replaced.has(path)), ...rows],
    }),
  };
}
