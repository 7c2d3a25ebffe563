// Records written into the room: checked together, all or nothing, safe to repeat.
import {civil as civilOf} from '../exchange/civil.ts';
import {inZone} from '../exchange/instants.ts';
import {codesGiven, codesNamed} from '../records/codes.ts';
import {complete} from '../records/complete.ts';
import {decide} from '../records/decide.ts';
import type {Entry} from '../records/entry.ts';
import {fold} from '../records/fold.ts';
import {parseRecord, type RoomRecord} from '../records/schema/index.ts';
import type {RoomState} from '../records/state.ts';
import {changeRoom} from '../room/change.ts';
import {nextIds} from '../room/numbering.ts';
import {openRoom} from '../room/open.ts';
import type {Names, Room} from '../room/room.ts';
import {type Desk, nowOf} from './desk.ts';
import {askAboutDoubts} from './doubts.ts';
import {profileCodes, profilesOf} from './profiles.ts';
import type {Session} from './session.ts';

/** As `teneral apply` answers. */
export interface Applied {
  readonly applied: number;
  /** Records whose key was applied before. */
  readonly passedOver: number;
  /** Ids of the new entries. */
  readonly entries: readonly string[];
}

export interface Recorded {
  readonly applied: Applied;
  readonly written: readonly Entry[];
  /** The room as it is now. */
  readonly desk: Desk;
}

/**
 * Write records, as JSON would hold them.
 * @param where how to name one of them to a person
 * @param unless refuses, by throwing, on the room as it stands when it is written to
 * @throws Refusal for the first record that cannot be accepted, Doubt for one that a person should confirm; nothing is
 *   written then
 */
export async function record(
  session: Session,
  drafts: readonly unknown[],
  where: (index: number) => string = index => (drafts.length === 1 ? '' : `record ${index + 1}`),
  unless?: (room: Room) => void | Promise<void>,
): Promise<Recorded> {
  const given = parsed(drafts, where);
  let written: readonly Entry[] = [];
  const room = await changeRoom(
    session.dir,
    async room => {
      await unless?.(room);
      written = await entriesFor(given, room, session);
      return {entries: written};
    },
    {by: session.by},
  );
  const civil = civilOf(room.zone);
  const now = nowOf(session, civil);
  const desk: Desk = {
    session,
    room,
    civil,
    now,
    state: fold(await room.entriesWith(namesIn(given.map(({record}) => record))), now),
  };
  const applied = {
    applied: written.length,
    passedOver: given.length - written.length,
    entries: written.map(({id}) => id),
  };
  return {applied, written, desk};
}

/**
 * Everything is checked and decided as if it were written; nothing is.
 * @throws Refusal for the first record that could not be accepted
 */
export async function rehearse(
  session: Session,
  drafts: readonly unknown[],
  where: (index: number) => string,
): Promise<Applied> {
  const given = parsed(drafts, where);
  const entries = await entriesFor(given, await openRoom(session.dir), session);
  return {applied: entries.length, passedOver: given.length - entries.length, entries: []};
}

export interface Given {
  readonly record: RoomRecord;
  /** How to name it to a person. */
  readonly where: string;
}

/** Drafts checked for their form. @throws Refusal for the first that has none */
export function parsed(drafts: readonly unknown[], where: (index: number) => string): Given[] {
  return drafts.map((draft, i) => ({record: parseRecord(draft, where(i)), where: where(i)}));
}

/**
 * The records as entries of the room as it stands, decided on; for a change that adds more than entries. Those whose
 * key was applied before are left out.
 * @throws Refusal for the first that cannot be granted
 */
export async function entriesFor(given: readonly Given[], room: Room, session: Session): Promise<Entry[]> {
  const civil = civilOf(room.zone);
  const now = nowOf(session, civil);
  let before = fold(await room.entriesWith(namesIn(given.map(({record}) => record))), now);
  const known = keysOf(before);
  const fresh = given.filter(({record}) => isFresh(record, known));
  const placed = fresh.map(({record, where}) => inZone(record, civil, where));
  const profiles = await profilesOf(candidatesOf(placed, before), before);
  const filledIn = () => complete(placed, {now: civil.iso(now), before, profiles});
  let records = filledIn();
  // A specimen code made here may be one that an archived specimen has: look again with those codes at hand.
  const wider = await room.entriesWith(namesIn(records));
  if (wider.length > before.history.length) {
    before = fold(wider, now);
    records = filledIn();
  }
  const entries = numbered(room, records, session.by, civil.iso(now));
  const whereOf = (index: number) => fresh[index]!.where;
  decide(before, entries, {now, civil, profiles: new Set(await profileCodes())}, whereOf);
  await askAboutDoubts(before, entries, whereOf);
  return entries;
}

/** Everything the records name, so that what is archived about it is at hand. */
function namesIn(records: readonly RoomRecord[]): Names {
  return {
    codes: records.flatMap(record => [...codesGiven(record), ...codesNamed(record).map(({code}) => code)]),
    keys: records.flatMap(({key}) => (key === undefined ? [] : [key])),
    entries: records.flatMap(record => (record.record === 'void' ? [record.entry] : [])),
  };
}

/** Keys of what counts: an entry that was taken back may be written again, corrected, under its key. */
function keysOf({history, voided}: RoomState): Set<string> {
  return new Set(
    history.flatMap(({id, record: {key}}) => (key === undefined || voided.has(id) ? [] : [key])),
  );
}

/** Not applied before, and not already in this batch: the first one with a key counts. */
function isFresh({key}: RoomRecord, known: Set<string>): boolean {
  if (key === undefined) return true;
  if (known.has(key)) return false;
  known.add(key);
  return true;
}

/** The profiles that complete.ts may want to look at: those of the lots concerned. */
function candidatesOf(records: readonly RoomRecord[], {lots}: RoomState): Set<string> {
  const own = records.flatMap(record => (record.record === 'lot' ? record.candidates : []));
  const others = records.flatMap(record =>
    'lot' in record ? (lots.get(record.lot ?? '')?.candidates ?? []) : [],
  );
  return new Set([...own, ...others].map(({profile}) => profile));
}

function numbered(room: Room, records: readonly RoomRecord[], by: string, now: string): Entry[] {
  const ids = nextIds(room, records.length);
  return records.map((record, i) => ({
    id: ids.entries[i]!,
    request: ids.request,
    recordedAt: record.recordedAt ?? now,
    by,
    record,
  }));
}
