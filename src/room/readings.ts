// Readings of one logger in one UTC month, as columns: what a readings document holds.
import type {Series} from '../climate/series.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {columnText} from './column-text.ts';
import {endOf, type Month, monthAt, msOf, startOf} from './months.ts';
import {FORMAT} from './sealed.ts';

const MS_PER_SECOND = 1000;

/** The document as it is written. A column without a single value is null. */
export interface ReadingsDocument {
  readonly format: typeof FORMAT;
  readonly logger: string;
  readonly month: Month;
  /** The import each row came from, as runs: [batch, how many rows]. */
  readonly batches: readonly (readonly [batch: string, rows: number])[];
  /** Seconds since the month began, rising. */
  readonly seconds: readonly number[];
  readonly temperatureC: readonly (number | null)[] | null;
  readonly rhPercent: readonly (number | null)[] | null;
}

/** Readings of one month and the import that each came from. */
export interface MonthOfReadings {
  readonly month: Month;
  readonly series: Series;
  readonly batchOf: readonly string[];
}

/** The bytes of a month's document, as JSON.stringify would make them of a ReadingsDocument. */
export function writeMonth(logger: string, {month, series, batchOf}: MonthOfReadings): Buffer {
  const start = startOf(month);
  const head = JSON.stringify({format: FORMAT, logger, month, batches: runs(batchOf)});
  const seconds = series.atDays.map(days => (msOf(days) - start) / MS_PER_SECOND);
  return Buffer.concat([
    Buffer.from(`${head.slice(0, -1)},"seconds":`),
    columnText(seconds),
    Buffer.from(',"temperatureC":'),
    column(series.temperatureC),
    Buffer.from(',"rhPercent":'),
    column(series.rhPercent),
    Buffer.from('}\n'),
  ]);
}

/** The readings of a document. */
export function seriesIn({month, seconds, temperatureC, rhPercent}: ReadingsDocument): Series {
  const start = startOf(month);
  const atDays = new Float64Array(seconds.length);
  for (let i = 0; i < atDays.length; i++)
    atDays[i] = Math.round(start + seconds[i]! * MS_PER_SECOND) / MS_PER_DAY;
  return {
    atDays,
    temperatureC: values(temperatureC, seconds.length),
    rhPercent: values(rhPercent, seconds.length),
  };
}

/** The readings of a document, each with its import. */
export function readMonth(document: ReadingsDocument): MonthOfReadings {
  const batchOf: string[] = [];
  for (const [batch, rows] of document.batches) for (let i = 0; i < rows; i++) batchOf.push(batch);
  return {month: document.month, series: seriesIn(document), batchOf};
}

/**
 * A series cut at the beginnings of UTC months, its instants rounded to the millisecond as they are stored.
 * @throws RangeError where they do not rise
 */
export function byMonth(given: Series, batch: string): MonthOfReadings[] {
  const months: MonthOfReadings[] = [];
  const series = {...given, atDays: given.atDays.map(days => msOf(days) / MS_PER_DAY)};
  assertRising(series.atDays);
  for (let from = 0, to = 0; from < series.atDays.length; from = to) {
    const month = monthAt(msOf(series.atDays[from]!));
    const end = endOf(month);
    to = firstNotBefore(series.atDays, end / MS_PER_DAY, from);
    months.push({month, series: rows(series, from, to), batchOf: new Array<string>(to - from).fill(batch)});
  }
  return months;
}

/**
 * Two lots of readings of one month as one, in order of time.
 * @throws RangeError where both hold the same instant
 */
export function merge(a: MonthOfReadings, b: MonthOfReadings): MonthOfReadings {
  const size = a.batchOf.length + b.batchOf.length;
  const atDays = new Float64Array(size);
  const temperatureC = new Float64Array(size);
  const rhPercent = new Float64Array(size);
  const batchOf = new Array<string>(size);
  for (let i = 0, inA = 0, inB = 0; i < size; i++) {
    const nextA = a.series.atDays[inA] ?? Number.POSITIVE_INFINITY;
    const nextB = b.series.atDays[inB] ?? Number.POSITIVE_INFINITY;
    if (nextA === nextB) throw new RangeError(`the room already holds a reading at day ${nextA}`);
    const source = nextA < nextB ? a : b;
    const at = nextA < nextB ? inA++ : inB++;
    atDays[i] = source.series.atDays[at]!;
    temperatureC[i] = source.series.temperatureC[at]!;
    rhPercent[i] = source.series.rhPercent[at]!;
    batchOf[i] = source.batchOf[at]!;
  }
  return {month: a.month, series: {atDays, temperatureC, rhPercent}, batchOf};
}

/** The readings from one day to another, inclusive. Shares memory with the series it is cut from. */
export function between(series: Series, fromDays: number, toDays: number): Series {
  const from = firstNotBefore(series.atDays, fromDays, 0);
  let to = firstNotBefore(series.atDays, toDays, from);
  if (series.atDays[to] === toDays) to++;
  return from === 0 && to === series.atDays.length ? series : rows(series, from, to);
}

/** Series one after the other. */
export function concatenate(pieces: readonly Series[]): Series {
  if (pieces.length === 1) return pieces[0]!;
  const size = pieces.reduce((sum, {atDays}) => sum + atDays.length, 0);
  const whole = {
    atDays: new Float64Array(size),
    temperatureC: new Float64Array(size),
    rhPercent: new Float64Array(size),
  };
  let at = 0;
  for (const piece of pieces) {
    whole.atDays.set(piece.atDays, at);
    whole.temperatureC.set(piece.temperatureC, at);
    whole.rhPercent.set(piece.rhPercent, at);
    at += piece.atDays.length;
  }
  return whole;
}

function assertRising(atDays: Float64Array): void {
  for (let i = 0, before = Number.NEGATIVE_INFINITY; i < atDays.length; i++) {
    const at = atDays[i]!;
    if (!(at > before && at < Number.POSITIVE_INFINITY))
      throw new RangeError(`reading ${i} at day ${at} does not follow day ${before}`);
    before = at;
  }
}

function rows({atDays, temperatureC, rhPercent}: Series, from: number, to: number): Series {
  return {
    atDays: atDays.subarray(from, to),
    temperatureC: temperatureC.subarray(from, to),
    rhPercent: rhPercent.subarray(from, to),
  };
}

/** Index of the first instant that is not before the given one, by halving. */
function firstNotBefore(atDays: Float64Array, days: number, from: number): number {
  let low = from;
  let high = atDays.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (atDays[middle]! < days) low = middle + 1;
    else high = middle;
  }
  return low;
}

function column(values: Float64Array): Buffer {
  return values.every(Number.isNaN) ? Buffer.from('null') : columnText(values);
}

function values(column: readonly (number | null)[] | null, rows: number): Float64Array {
  const found = new Float64Array(rows).fill(Number.NaN);
  for (let i = 0; i < (column?.length ?? 0); i++) found[i] = column?.[i] ?? Number.NaN;
  return found;
}

function runs(batchOf: readonly string[]): [string, number][] {
  const found: [string, number][] = [];
  for (const batch of batchOf) {
    const last = found.at(-1);
    if (last?.[0] === batch) last[1]++;
    else found.push([batch, 1]);
  }
  return found;
}
