// Instants as records and people write them.
import type {Civil, Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {RoomRecord} from '../records/schema/index.ts';

const WRITTEN =
  /^(?<day>\d{4}-\d{2}-\d{2})(?:[T ](?<time>\d{2}:\d{2})(?::(?<seconds>\d{2}(?:\.\d+)?))?(?<offset>Z|[+-]\d{2}:?\d{2})?)?$/;
const SPOKEN = /^(?:(?<word>now|today|yesterday)|(?:(?<day>today|yesterday) )?(?<time>\d{1,2}:\d{2}))$/;
const BARE_DAY = /^\d{4}-\d{2}-\d{2}$/;

/**
 * The instant of ISO 8601 text with T or a space, to the minute or finer. Without an offset it is read in the zone;
 * a bare day is its beginning. A time of day that the clocks show twice is its first, one that they skip the instant
 * they go forward. Where `now` is given also "now", "today", "yesterday", "08:40", "yesterday 17:00".
 * @returns undefined where it is none, such as the 30th of February
 */
export function readInstant(text: string, civil: Civil, now?: Instant): Instant | undefined {
  const written = WRITTEN.exec(text.trim())?.groups;
  if (written !== undefined) return writtenInstant(written, civil);
  const spoken = SPOKEN.exec(text.trim().toLowerCase())?.groups;
  return spoken === undefined || now === undefined ? undefined : spokenInstant(spoken, civil, now);
}

/** @returns undefined where the text is no day of the calendar, written yyyy-mm-dd */
export function readDay(text: string): Day | undefined {
  return BARE_DAY.test(text) && isOnCalendar(text) ? text : undefined;
}

/**
 * The record with every instant as ISO 8601 with the zone's offset. Days stay days.
 * @param where how to name the record to a person
 * @throws Refusal where what looks like an instant is none
 */
export function inZone(record: RoomRecord, civil: Civil, where = ''): RoomRecord {
  const fields: Record<string, unknown> = {...record};
  for (const name of fieldsWithInstants(record)) {
    const text = fields[name];
    if (typeof text === 'string') fields[name] = isoOf(text, civil, placed(where, name));
  }
  if (record.record === 'sample') {
    fields.collected = spansInZone(record.collected, civil, where, 'collected');
    const {lastEmptied, ...trap} = record.trap ?? {};
    if (lastEmptied !== undefined)
      fields.trap = {...trap, ...spansInZone({lastEmptied}, civil, where, 'trap')};
  }
  // Only texts were replaced by texts.
  return fields as RoomRecord;
}

type Groups = Readonly<Record<string, string | undefined>>;

function writtenInstant({day = '', time = '00:00', seconds = '0', offset}: Groups, civil: Civil) {
  if (!isOnCalendar(day) || !isOnClock(time) || Number(seconds) >= 60) return undefined;
  const ms = Math.round(Number(seconds) * 1000);
  if (offset === undefined) return civil.at(day, time) + ms;
  const ahead = offsetMinutes(offset);
  return ahead === undefined ? undefined : Date.parse(`${day}T${time}Z`) + ms - ahead * 60_000;
}

function spokenInstant({word, day = 'today', time = '00:00'}: Groups, civil: Civil, now: Instant) {
  if (word === 'now') return now;
  const clock = time.padStart(5, '0');
  const today = civil.dayOf(now);
  return isOnClock(clock)
    ? civil.at((word ?? day) === 'yesterday' ? civil.addDays(today, -1) : today, clock)
    : undefined;
}

function isOnCalendar(day: Day): boolean {
  const ms = Date.parse(`${day}T00:00Z`);
  return !Number.isNaN(ms) && new Date(ms).toISOString().startsWith(day);
}

function isOnClock(time: string): boolean {
  const [hours, minutes] = time.split(':').map(Number);
  return hours! < 24 && minutes! < 60;
}

function offsetMinutes(offset: string): number | undefined {
  if (offset === 'Z') return 0;
  const hours = Number(offset.slice(1, 3));
  const minutes = Number(offset.slice(-2));
  if (hours > 23 || minutes > 59) return undefined;
  return (hours * 60 + minutes) * (offset.startsWith('-') ? -1 : 1);
}

function fieldsWithInstants(record: RoomRecord): readonly string[] {
  const spans = record.record === 'extremes' || record.record === 'mask' ? ['from', 'to'] : [];
  return ['at', 'since', 'killedAt', 'recordedAt', ...spans];
}

/** Traps are emptied on a day; only a time of day makes it an instant. */
function spansInZone(
  span: Readonly<Record<string, string | undefined>>,
  civil: Civil,
  where: string,
  of: string,
) {
  const ends = Object.entries(span).filter((end): end is [string, string] => end[1] !== undefined);
  return Object.fromEntries(
    ends.map(([name, text]) => {
      const field = placed(where, `${of}.${name}`);
      return [name, readDay(text) ?? isoOf(text, civil, field)];
    }),
  );
}

function isoOf(text: string, civil: Civil, where: string): string {
  const at = readInstant(text, civil);
  if (at === undefined)
    throw new Refusal(
      `"${text}" is no instant`,
      where,
      'Write it like 2026-05-30T09:00 or 2026-05-30T09:00:00+02:00.',
    );
  return civil.iso(at);
}

function placed(where: string, field: string): string {
  return [where, field].filter(part => part !== '').join(', ');
}
