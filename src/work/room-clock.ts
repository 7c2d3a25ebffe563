// The clock of a room's zone, kept in the room's cache: asking the system for a zone takes longer than a short question.
import {civil as civilOf} from '../exchange/civil.ts';
import {type ClockChanges, clockChanges, rememberClock, zoneNamed} from '../exchange/zone.ts';
import type {Civil} from '../records/civil.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {readCache, writeCache} from '../room/cache.ts';
import type {Room} from '../room/room.ts';
import type {Desk} from './desk.ts';

const CACHE_NAME = 'clock';
/** Kept for so long before and after now, and anew once half of that is used up. */
const KEPT_DAYS = 730;

interface Kept extends ClockChanges {
  /** Of the time zone data of this system. */
  readonly of: string | undefined;
}

/** Civil time in the room's zone. @throws Refusal where no zone has its name */
export async function civilOfRoom(room: Pick<Room, 'dir' | 'zone'>): Promise<Civil> {
  const kept = await keptIn(room);
  if (kept !== undefined) rememberClock(kept);
  return civilOf(room.zone);
}

/** Keep what the zone's clocks do about now, for the next question. */
export async function keepClock({room, now}: Desk): Promise<void> {
  const kept = await keptIn(room);
  const half = (KEPT_DAYS / 2) * MS_PER_DAY;
  if (kept !== undefined && kept.from <= now - half && now + half <= kept.to) return;
  const changes = clockChanges(zoneNamed(room.zone), now - 2 * half, now + 2 * half);
  await writeCache(room, CACHE_NAME, {...changes, of: process.versions.tz} satisfies Kept);
}

/** The cache is the program's own and sealed with a checksum; a damaged one reads as nothing. */
async function keptIn(room: Pick<Room, 'dir' | 'zone'>): Promise<Kept | undefined> {
  const kept = (await readCache(room, CACHE_NAME)) as Kept | undefined;
  return kept?.zone === room.zone && kept.of === process.versions.tz ? kept : undefined;
}
