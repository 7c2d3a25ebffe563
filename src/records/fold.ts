// The daybook folded into the state of the room. It never refuses: history is history; the rules are in decide.ts.
import {counting, type Dated, voidedAmong} from './counting.ts';
import {emptyRoom, type RoomDraft} from './draft.ts';
import type {Entry, Instant} from './entry.ts';
import {attend} from './fold-care.ts';
import {divideSamples, furnish} from './fold-furniture.ts';
import {live} from './fold-life.ts';
import {measure} from './fold-readings.ts';
import type {RoomState} from './state.ts';

/**
 * What a daybook adds up to.
 * @param entries in the order of writing; whatever is voided or dated after `asOf` is left out
 * @param asOf the instant of the question
 */
export function fold(entries: readonly Entry[], asOf: Instant): RoomState {
  const {room, dated} = openRoomDraft(entries, asOf);
  live(room, dated);
  return room;
}

/** The room with everything in place but its lots, and the entries that are still to be lived through, in order. */
export function openRoomDraft(
  entries: readonly Entry[],
  asOf: Instant,
): {readonly room: RoomDraft; readonly dated: readonly Dated[]} {
  const room = emptyRoom(asOf);
  room.history = [...entries];
  room.voided = voidedAmong(entries);
  const dated = counting(entries, asOf, room.voided);
  for (const each of dated) {
    room.entries.push(each.entry);
    furnish(room, each);
    measure(room, each);
    attend(room, each);
  }
  divideSamples(room, dated);
  return {room, dated};
}
