// What stands and holds in a room: loggers, units, samples, rules, profiles, calendar, people.
import type {Dated} from './counting.ts';
import type {RoomDraft} from './draft.ts';
import {atOf, type Instant} from './entry.ts';
import type {History} from './state.ts';

/** A longer pause between readings is a gap; a person reads once a day. */
const GAP_HOURS = {automatic: 3, extremes: 3, hand: 26} as const;

/** Take in an entry about the room's furniture; any other is left alone. */
export function furnish(room: RoomDraft, {at, entry}: Dated): void {
  const {record} = entry;
  switch (record.record) {
    case 'logger': {
      const facts = factsOf(record);
      const history = room.loggers.get(record.code);
      const last = history?.at(-1)?.value;
      const usual = last?.kind === facts.kind ? last.maxGapHours : GAP_HOURS[facts.kind];
      const logger = {...facts, maxGapHours: facts.maxGapHours ?? usual};
      room.loggers.set(record.code, changed(history, logger, at));
      break;
    }
    case 'unit':
      room.units.set(record.code, changed(room.units.get(record.code), factsOf(record), at));
      break;
    case 'sample':
      if (!room.samples.has(record.code))
        room.samples.set(record.code, {...factsOf(record), at: atOf(entry)});
      break;
    case 'rule':
      room.rules.set(record.code, factsOf(record));
      break;
    case 'profile':
      room.profiles.set(record.profile, record);
      break;
    case 'calendar':
      room.calendar = factsOf(record);
      break;
    case 'person':
      room.people.set(record.name, factsOf(record));
      break;
  }
}

/** The first value holds from the beginning; a later one changes the fields it gives. */
function changed<Value extends object>(
  history: History<Value> | undefined,
  given: Value,
  from: Instant,
): History<Value> {
  const last = history?.at(-1);
  if (history === undefined || last === undefined) return [{from: Number.NEGATIVE_INFINITY, value: given}];
  return [...history, {from, value: {...last.value, ...given}}];
}

interface Written {
  readonly record: string;
  readonly key?: string | undefined;
  readonly recordedAt?: string | undefined;
  readonly at?: string | undefined;
}

/** The record without what says that it is one. */
function factsOf<Kind extends Written>(written: Kind): Omit<Kind, keyof Written> {
  const {record, key, recordedAt, at, ...facts} = written;
  return facts;
}
