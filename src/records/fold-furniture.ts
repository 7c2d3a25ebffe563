// What stands and holds in a room: loggers, units, samples, rules, profiles, calendar, people.
import type {Dated} from './counting.ts';
import type {RoomDraft} from './draft.ts';
import {atOf, type Instant} from './entry.ts';
import type {History} from './state.ts';

/** A longer pause between readings is a gap; a person reads once a day. */
const GAP_HOURS = {automatic: 3, extremes: 3, hand: 26} as const;

/** Take in an entry about the room's furniture; any other is left alone. A later record changes the fields it gives. */
export function furnish(room: RoomDraft, {at, entry}: Dated): void {
  const {record} = entry;
  switch (record.record) {
    case 'logger': {
      const facts = factsOf(record);
      const history = room.loggers.get(record.code);
      const last = history?.at(-1)?.value;
      const kind = facts.kind ?? last?.kind;
      if (kind === undefined) break;
      const usual = last?.kind === kind ? last.maxGapHours : GAP_HOURS[kind];
      const logger = {...last, ...facts, kind, maxGapHours: facts.maxGapHours ?? usual};
      room.loggers.set(record.code, changed(history, logger, at));
      break;
    }
    case 'unit': {
      const facts = factsOf(record);
      const history = room.units.get(record.code);
      const last = history?.at(-1)?.value;
      const type = facts.type ?? last?.type;
      const place = facts.place ?? last?.place;
      if (type === undefined || place === undefined) break;
      room.units.set(record.code, changed(history, {...last, ...facts, type, place}, at));
      break;
    }
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

/** The first value holds from the beginning. */
function changed<Value>(history: History<Value> | undefined, value: Value, from: Instant): History<Value> {
  return history === undefined ? [{from: Number.NEGATIVE_INFINITY, value}] : [...history, {from, value}];
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
