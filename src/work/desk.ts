// A room opened for one question: what its daybook adds up to now, and its civil time.
import {existsSync} from 'node:fs';
import {join} from 'node:path';
import {readInstant} from '../exchange/instants.ts';
import type {Civil} from '../records/civil.ts';
import {type Entry, type Instant, instantOf} from '../records/entry.ts';
import {fold} from '../records/fold.ts';
import {Refusal} from '../records/refusal.ts';
import type {RoomState} from '../records/state.ts';
import {openRoom} from '../room/open.ts';
import type {Room} from '../room/room.ts';
import {ROOM_FILE} from '../room/room-document.ts';
import {civilOfRoom} from './room-clock.ts';
import type {Session} from './session.ts';

export interface Desk {
  readonly session: Session;
  readonly room: Room;
  readonly civil: Civil;
  readonly now: Instant;
  readonly state: RoomState;
}

/**
 * Open the session's room.
 * @param reach `open` reads what is open; `all` brings in everything archived as well, and costs accordingly
 * @throws Refusal where there is no room, or a damaged one
 */
export async function openDesk(session: Session, reach: 'open' | 'all' = 'open'): Promise<Desk> {
  const room = await openRoom(session.dir);
  const civil = await civilOfRoom(room);
  const now = nowOf(session, civil);
  const entries = reach === 'all' ? await room.allEntries() : room.entries;
  for (const warning of room.warnings) session.warn(warning);
  warnOfSlowClock(session, entries, now, civil);
  return {session, room, civil, now, state: fold(entries, now)};
}

/** The session's room, or undefined where there is none: some questions can do without. */
export async function openDeskIfAny(session: Session): Promise<Desk | undefined> {
  return existsSync(join(session.dir, ROOM_FILE)) ? openDesk(session) : undefined;
}

/** The instant of the question. @throws Refusal where what was given is no instant */
export function nowOf({now}: Session, civil: Civil): Instant {
  if (now === undefined) return Date.now();
  const at = readInstant(now, civil);
  if (at === undefined)
    throw new Refusal(
      `"${now}" is no instant`,
      '--now',
      'Write it like 2026-05-30T09:00 or 2026-05-30T09:00:00+02:00.',
    );
  return at;
}

function warnOfSlowClock(session: Session, entries: readonly Entry[], now: Instant, civil: Civil): void {
  const newest = entries.at(-1)?.recordedAt;
  if (newest === undefined || instantOf(newest) <= now) return;
  session.warn(
    `the clock stands at ${civil.iso(now)}, before the newest entry (${newest}): look at the computer’s date, or at --now.`,
  );
}
