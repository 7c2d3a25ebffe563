// Dates and times as cells hold them, before anything is known of their zone.
import {DateTime} from 'luxon';
import {MS_PER_DAY, MS_PER_HOUR} from '../../records/entry.ts';
import type {WallMs} from '../zone.ts';

/** In which order a numeric date names its parts. A year of four digits that stands first always makes it `ymd`. */
export type DateOrder = 'ymd' | 'dmy' | 'mdy';

/** How dates are written: in numbers of a known order, or by a format of luxon's tokens. */
export type DateForm =
  | {readonly kind: 'numeric'; readonly order: DateOrder}
  | {readonly kind: 'format'; readonly format: string};

export interface WrittenTime {
  /** What the clock on the wall showed. */
  readonly wall: WallMs;
  /** How far it was ahead of UTC, where the cell says so. */
  readonly offsetMs?: number | undefined;
}

/** The three numbers of a date in the order they stand, with the widths they are written in. */
export interface DateParts {
  readonly numbers: readonly [number, number, number];
  readonly widths: readonly [number, number, number];
  readonly separator: string;
}

const DATE = /^(\d{1,4})([-./])(\d{1,2})\2(\d{1,4})(?![\d./])/;
const CLOCK =
  /^(?<hours>\d{1,2}):(?<minutes>\d{2})(?::(?<seconds>\d{2})(?:[.,](?<fraction>\d{1,9}))?)?(?:\s*(?<half>[ap])\.?\s?m\.?)?\s*(?<offset>Z|[+-]\d{2}:?\d{2})?$/i;
const BETWEEN = /^(?:T|,?\s+)/i;

const FIRST_YEAR = 1900;
const LAST_YEAR = 2199;

/** The date that a cell is or begins with. */
export function datePartsOf(cell: string): (DateParts & {readonly rest: string}) | undefined {
  const [all, a, separator, b, c] = DATE.exec(cell) ?? [];
  if (all === undefined || a === undefined || b === undefined || c === undefined) return undefined;
  return {
    numbers: [Number(a), Number(b), Number(c)],
    widths: [a.length, b.length, c.length],
    separator: separator ?? '',
    rest: cell.slice(all.length),
  };
}

/** An instant in one cell: a date, and mostly a time of day. */
export function readDateTime(cell: string, form: DateForm): WrittenTime | undefined {
  if (form.kind === 'format') return readFormatted(cell, form.format);
  const parts = datePartsOf(cell);
  const day = parts === undefined ? undefined : dayOf(parts, form.order);
  if (parts === undefined || day === undefined) return undefined;
  if (parts.rest === '') return {wall: day * MS_PER_DAY};
  const between = BETWEEN.exec(parts.rest)?.[0];
  const clock = between === undefined ? undefined : readClock(parts.rest.slice(between.length));
  return clock === undefined ? undefined : {...clock, wall: day * MS_PER_DAY + clock.wall};
}

/** An instant in two cells, one for the date and one for the time of day. */
export function readDateAndClock(date: string, clock: string, form: DateForm): WrittenTime | undefined {
  return readDateTime(`${date} ${clock}`, form);
}

/** A time of day, 24-hour or with AM and PM, as milliseconds since midnight. */
export function readClock(cell: string): WrittenTime | undefined {
  const parts = CLOCK.exec(cell)?.groups;
  if (parts === undefined) return undefined;
  const {hours, minutes, seconds = '0', fraction = '', half, offset} = parts;
  const minute = Number(minutes);
  const hour = half === undefined ? Number(hours) : hourOfHalf(Number(hours), half);
  const ms = Number(seconds) * 1000 + Math.round(Number(`0.${fraction || 0}`) * 1000);
  const wall = hour * MS_PER_HOUR + minute * 60_000 + ms;
  if (!(minute < 60 && Number(seconds) < 60 && wall <= MS_PER_DAY)) return undefined;
  const offsetMs = offset === undefined ? undefined : readOffset(offset);
  return Number.isNaN(offsetMs) ? undefined : {wall, offsetMs};
}

/** Milliseconds ahead of UTC; NaN for what no clock is set to. */
function readOffset(text: string): number {
  if (text.toUpperCase() === 'Z') return 0;
  const minutes = Number(text.slice(1, 3)) * 60 + Number(text.slice(-2));
  if (Number(text.slice(-2)) > 59 || minutes > 18 * 60) return Number.NaN;
  return minutes * 60_000 * (text.startsWith('-') ? -1 : 1);
}

/** 12 AM is midnight, 12 PM noon. */
function hourOfHalf(hour: number, half: string): number {
  if (hour < 1 || hour > 12) return Number.NaN;
  return (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
}

/** Days since 1970, undefined where the calendar has no such day. */
export function dayOf({numbers: [a, b, c], widths}: DateParts, order: DateOrder): number | undefined {
  if (widths[0] > 2) return widths[2] > 2 ? undefined : dayNumber(a, b, c);
  if (order === 'ymd') return widths[2] > 2 ? undefined : dayNumber(fullYear(a, widths[0]), b, c);
  const year = fullYear(c, widths[2]);
  return order === 'dmy' ? dayNumber(year, b, a) : dayNumber(year, a, b);
}

/** Two digits are a year from 1970 to 2069. */
function fullYear(year: number, width: number): number {
  if (width !== 2) return year;
  return year < 70 ? 2000 + year : 1900 + year;
}

/** Days since 1970, undefined where the calendar has no such day or no logger was built then. */
function dayNumber(year: number, month: number, day: number): number | undefined {
  if (year < FIRST_YEAR || year > LAST_YEAR || month < 1 || month > 12 || day < 1) return undefined;
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCDate() === day ? date.getTime() / MS_PER_DAY : undefined;
}

/** Tokens of luxon that stand for an offset or a zone, outside quoted text. */
const ZONE_TOKEN = /z/i;
const QUOTED = /'[^']*'/g;

function readFormatted(cell: string, format: string): WrittenTime | undefined {
  const at = DateTime.fromFormat(cell, format, {zone: 'utc', setZone: true, locale: 'en'});
  if (!at.isValid) return undefined;
  const offsetMs = at.offset * 60_000;
  return {
    wall: at.toMillis() + offsetMs,
    offsetMs: ZONE_TOKEN.test(format.replace(QUOTED, '')) ? offsetMs : undefined,
  };
}
