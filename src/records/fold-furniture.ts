// What stands and holds in a room: loggers, units, samples, rules, profiles, calendar, people, settings.
import type {Dated} from './counting.ts';
import type {RoomDraft} from './draft.ts';
import {atOf, type Instant} from './entry.ts';
import type {Header, History} from './state.ts';

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
      const rules = last?.rules === undefined ? facts.rules : {...last.rules, ...facts.rules};
      const logger = {...last, ...facts, kind, maxGapHours: facts.maxGapHours ?? usual};
      const whole = rules === undefined ? logger : {...logger, rules};
      room.loggers.set(record.code, changed(history, whole, at));
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
        room.samples.set(record.code, {...factsOf(record), at: atOf(entry), bycatch: [], specimens: []});
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
    case 'setting':
      room.settings = {...room.settings, ...factsOf(record)};
      break;
  }
}

/** The parts of field samples, each with the facts of its whole; a part may have parts of its own. */
export function divideSamples({samples}: RoomDraft, dated: readonly Dated[]): void {
  const parts = dated.flatMap(({entry}) => (entry.record.record === 'subsample' ? [entry] : []));
  for (let left = parts; left.length > 0; ) {
    const ready = left.filter(({record}) => record.record === 'subsample' && samples.has(record.of));
    if (ready.length === 0) return;
    for (const entry of ready) {
      if (entry.record.record !== 'subsample' || samples.has(entry.record.code)) continue;
      const {of, ...own} = factsOf(entry.record);
      const {part, share, sorting, ...whole} = samples.get(of)!;
      const said = Object.fromEntries(Object.entries(own).filter(([, value]) => value !== undefined));
      samples.set(own.code, {
        ...whole,
        ...said,
        code: own.code,
        of,
        at: atOf(entry),
        bycatch: [],
        specimens: [],
      });
    }
    left = left.filter(entry => !ready.includes(entry));
  }
}

/** The first value holds from the beginning. */
function changed<Value>(history: History<Value> | undefined, value: Value, from: Instant): History<Value> {
  return history === undefined ? [{from: Number.NEGATIVE_INFINITY, value}] : [...history, {from, value}];
}

type Written = {readonly record: string} & {readonly [Field in Exclude<Header, 'record'>]?: unknown};

/** The record without what says that it is one. */
export function factsOf<Kind extends Written>(written: Kind): Omit<Kind, Header> {
  const {record, key, recordedAt, sure, replaces, at, ...facts} = written;
  return facts;
}
