// Reads a plain logger file: readings, or daily extremes, whatever its delimiter, heading and form of dates.
import type {Series} from '../../climate/series.ts';
import {MS_PER_DAY} from '../../records/entry.ts';
import {convertAll, type TemperatureUnit} from '../temperature-unit.ts';
import {zoneNamed} from '../zone.ts';
import {headOf, wholeLines} from './blocks.ts';
import {readColumnsOption} from './columns-option.ts';
import {dateFormOf} from './date-order.ts';
import type {Source} from './each-row.ts';
import {decoderOf, type Encoding, encodingOf, plainChunks} from './encoding.ts';
import {type Extremes, readExtremes} from './extremes.ts';
import type {Layout} from './layout.ts';
import {type Readings, readReadings} from './readings.ts';
import {emptyFile, noRowRead} from './refusals.ts';
import {dateOrders} from './time-columns.ts';
import {understand} from './understand.ts';
import type {DateForm, DateOrder} from './written-time.ts';

/** How the person wants the file read; what is not said is found out. */
export interface LoggerFileWishes {
  /** `time=1,temperature=2,humidity=3`: columns by number, from 1, or by heading. */
  readonly columns?: string | undefined;
  /** `dmy`, `mdy`, `ymd`, or a format of luxon's tokens. */
  readonly format?: string | undefined;
  /** The zone of instants that do not carry their offset: an IANA name, or an offset such as +01:00. */
  readonly zone: string;
  /** Which of several sensors is meant, by its name in the rows or the headings. */
  readonly sensor?: string | undefined;
  /** The unit of the temperatures, whatever the file says. */
  readonly unit?: TemperatureUnit | undefined;
  /** How the logger's files are usually written: decides what this one leaves open. */
  readonly usual?:
    | {readonly order?: DateOrder | undefined; readonly unit?: TemperatureUnit | undefined}
    | undefined;
  /** How far the logger's clock is ahead of the true time; its readings happened that much earlier. */
  readonly clockMs?: number | undefined;
}

interface Understood {
  /** How the file is named to a person. */
  readonly file: string;
  readonly encoding: Encoding;
  readonly layout: Layout;
}

/** Temperatures are in `layout.unit`. */
export type ReadingsFile = Readings &
  Understood & {
    /** The file gives humidity as a fraction of one; `rhPercent` is in per cent all the same. */
    readonly humidityAsFraction: boolean;
  };
export type ExtremesFile = Extremes & Understood;
export type LoggerFile = ReadingsFile | ExtremesFile;

/**
 * Read a logger file.
 * @param chunks its bytes; gone through more than once
 * @param file how to name it to a person
 * @throws Refusal where it cannot be understood, or not one of its rows can be read
 */
export function readLoggerFile(
  chunks: Iterable<Uint8Array>,
  file: string,
  wishes: LoggerFileWishes,
): LoggerFile {
  const {encoding, ...source} = open(chunks, file, wishes);
  const {layout} = source;
  const {values} = layout;
  const {clockMs = 0} = wishes;
  const read =
    values.kind === 'readings' ? inUse(readReadings(source, values), clockMs) : readExtremes(source, values);
  const [first] = read.rejected;
  if (first !== undefined && read.rows === read.rejected.length) throw noRowRead(file, first);
  return {...read, file, encoding, layout};
}

/** The readings as a series, in °C. */
export function seriesOf({at, temperature, rhPercent, layout}: ReadingsFile): Series {
  return {
    atDays: at.map(ms => ms / MS_PER_DAY),
    temperatureC: convertAll(temperature, layout.unit, 'C'),
    rhPercent,
  };
}

/** At the true time, and with humidity in per cent. */
function inUse(read: Readings, clockMs: number): Readings & {readonly humidityAsFraction: boolean} {
  const humidityAsFraction = isFraction(read.rhPercent);
  if (clockMs !== 0) for (let i = 0; i < read.at.length; i++) read.at[i]! -= clockMs;
  if (humidityAsFraction) for (let i = 0; i < read.rhPercent.length; i++) read.rhPercent[i]! *= 100;
  return {...read, humidityAsFraction};
}

/** No room is as dry as 1 per cent throughout: where no humidity is above 1, they are fractions of one. */
function isFraction(humidity: Float64Array): boolean {
  let highest = Number.NaN;
  for (const value of humidity) if (!(value <= highest) && !Number.isNaN(value)) highest = value;
  return highest > 0 && highest <= 1;
}

function open(
  chunks: Iterable<Uint8Array>,
  file: string,
  wishes: LoggerFileWishes,
): Source & {readonly encoding: Encoding} {
  const zone = zoneNamed(wishes.zone, '--zone');
  const columns = wishes.columns === undefined ? undefined : readColumnsOption(wishes.columns);
  const dates = wishes.format === undefined ? undefined : dateFormNamed(wishes.format);
  const {bytes: head} = headOf(chunks);
  if (head.length === 0) throw emptyFile(file);
  const encoding = encodingOf(head, file);
  const decode = decoderOf(encoding);
  const plain = {[Symbol.iterator]: () => plainChunks(chunks, encoding, head)};
  const {sensor, unit, usual} = wishes;
  const draft = understand(wholeLines(headOf(plain)), decode, {
    ...{file, columns, dates, zone, sensor, unit},
    usualUnit: usual?.unit,
  });
  const layout = {...draft, dates: dates ?? dateFormOf(draft, plain, file, decode, usual?.order)};
  return {file, chunks: plain, decode, layout, encoding};
}

function dateFormNamed(format: string): DateForm {
  const order = dateOrders.find(known => known === format.toLowerCase());
  return order === undefined ? {kind: 'format', format} : {kind: 'numeric', order};
}
