// A new room.
import {mkdir, readdir} from 'node:fs/promises';
import {dirname, join, resolve} from 'node:path';
import {Refusal} from '../records/refusal.ts';
import {codeOf, diskRefusal} from './disk-refusal.ts';
import {syncFolder} from './durable-adapter.ts';
import {LOCK_FILE, takeLock} from './lock.ts';
import {openRoom} from './open.ts';
import type {Room} from './room.ts';
import {ROOM_FILE, type RoomDocument} from './room-document.ts';
import {writeRoomFile} from './room-file.ts';
import {tidyUp} from './tidy.ts';

export interface NewRoom {
  readonly name: string;
  /** IANA zone, such as Europe/Vienna. */
  readonly zone: string;
  readonly by: string;
  /** Ms since 1970. */
  readonly now: number;
}

/**
 * Make an empty room in a folder that is absent or empty.
 * @throws Refusal for a folder that holds anything, an empty name, or a zone that nobody knows
 */
export async function createRoom(dir: string, {name, zone, by, now}: NewRoom): Promise<Room> {
  if (name.trim() === '')
    throw new Refusal('the name is empty', 'the new room', 'Give it a name with --name.');
  if (!isZone(zone))
    throw new Refusal(
      `there is no time zone "${zone}"`,
      'the new room',
      'Name the zone by continent and city, such as Europe/Vienna; for no clock changes, UTC.',
    );
  await makeEmptyFolder(dir);
  const lock = await takeLock(dir, by);
  try {
    if (!(await holdsNothingBut(dir, LOCK_FILE))) throw notEmpty(dir);
    const created = {at: new Date(now).toISOString(), by};
    const next = {entry: 1, request: 1, batch: 1};
    const room: RoomDocument = {
      name: name.trim(),
      zone,
      created,
      next,
      entries: [],
      imports: [],
      documents: [],
    };
    await writeRoomFile(join(dir, ROOM_FILE), room);
    await tidyUp(dir, room, []);
    return await openRoom(dir);
  } finally {
    await lock.release();
  }
}

async function makeEmptyFolder(dir: string): Promise<void> {
  try {
    const made = await mkdir(dir, {recursive: true});
    if (made !== undefined) await syncFolder(dirname(resolve(made)));
    if ((await readdir(dir)).length > 0) throw notEmpty(dir);
  } catch (error) {
    throw codeOf(error) === 'EEXIST' ? notEmpty(dir) : diskRefusal(error, dir);
  }
}

async function holdsNothingBut(dir: string, lock: string): Promise<boolean> {
  return (await readdir(dir)).every(name => name.startsWith(lock));
}

function notEmpty(dir: string): Refusal {
  return new Refusal(
    'something is there already',
    dir,
    'Choose a folder that does not exist yet, or an empty one.',
  );
}

/** Offsets such as +02:00 are no zones: they know no clock changes. */
function isZone(zone: string): boolean {
  try {
    return /^[A-Za-z]/.test(zone) && new Intl.DateTimeFormat('en', {timeZone: zone}) !== undefined;
  } catch {
    return false;
  }
}
