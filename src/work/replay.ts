// A room as it was known at an earlier instant: by what had been recorded by then, never by what came later.
import {codesGiven, codesNamed} from '../records/codes.ts';
import {type Entry, type Instant, instantOf, MS_PER_DAY} from '../records/entry.ts';
import {fold} from '../records/fold.ts';
import type {RoomRecord} from '../records/schema/index.ts';
import type {Lot, RoomState} from '../records/state.ts';
import type {Desk} from './desk.ts';

/** Records that lots are forecast by beside their own. */
const ABOUT_ALL: ReadonlySet<RoomRecord['record']> = new Set([
  'logger',
  'unit',
  'sample',
  'profile',
  'calendar',
  'setting',
  'mask',
  'reading',
  'extremes',
  'void',
]);

/** Opens the desk again as of any instant, for questions about one lot. Later knowledge is hidden by `recordedAt`. */
export function replayOf(desk: Desk, lot: Lot): (at: Instant) => Desk {
  const kin = kinOf(lot, desk.state);
  const entries = desk.state.history.filter(({record}) => isWanted(record, kin));
  return at => ({
    ...desk,
    now: at,
    room: {
      ...desk.room,
      series: (logger, fromDays, toDays) =>
        desk.room.series(logger, fromDays, Math.min(toDays, at / MS_PER_DAY), at),
    },
    state: fold(knownBy(entries, at), at),
  });
}

function knownBy(entries: readonly Entry[], at: Instant): Entry[] {
  return entries.filter(({recordedAt}) => instantOf(recordedAt) <= at);
}

function isWanted(record: RoomRecord, kin: ReadonlySet<string>): boolean {
  if (ABOUT_ALL.has(record.record)) return true;
  return codesGiven(record).some(code => kin.has(code)) || codesNamed(record).some(({code}) => kin.has(code));
}

/** The lot, and those that its animals came from. */
function kinOf({code}: Lot, {lots}: RoomState): ReadonlySet<string> {
  const kin = new Set([code]);
  for (const one of kin) {
    for (const {fromLot} of lots.get(one)?.cohorts ?? []) if (fromLot !== undefined) kin.add(fromLot);
    for (const {mergedInto, code: other} of lots.values()) if (mergedInto === one) kin.add(other);
  }
  return kin;
}
