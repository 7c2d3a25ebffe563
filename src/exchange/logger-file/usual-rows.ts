// Rows of the usual forms, millions of them, read straight from bytes. Every other row is left to rows.ts, which must
// come to the same for these.
import {MS_PER_DAY} from '../../records/entry.ts';
import {ByteCursor} from './byte-cursor.ts';
import {columnsOfTime, type Layout} from './layout.ts';
import type {OffsetsSeen} from './offsets-seen.ts';
import type {ReadingColumns} from './reading-columns.ts';
import {isBelievableRh, limitsIn} from './rows.ts';
import {isEpochMs} from './time-columns.ts';
import {type DateOrder, dayOf} from './written-time.ts';

type Part = 'instant' | 'date' | 'clock' | 'epoch' | 'temperature' | 'humidity' | 'sensor';

export class UsualRows {
  readonly #layout: Layout;
  readonly #into: ReadingColumns;
  readonly #offsets: OffsetsSeen;
  readonly #order: DateOrder;
  /** The columns to be read, from left to right. */
  readonly #parts: readonly {readonly column: number; readonly part: Part}[];
  readonly #delimiter: number;
  readonly #sensor: Uint8Array;
  readonly #lowest: number;
  readonly #highest: number;

  // The date of the last row; the next one mostly has it too.
  #dateKey = -1;
  #midnight = Number.NaN;
  #zoneOffsetMs = Number.NaN;

  // The row that is being read.
  #timeOfDay = 0;
  #offsetMs = Number.NaN;
  #temperature = 0;
  #humidity = Number.NaN;

  /** @returns undefined where no row of the layout is usual */
  static of(layout: Layout, into: ReadingColumns, offsets: OffsetsSeen): UsualRows | undefined {
    if (layout.values.kind === 'extremes' || layout.dates.kind === 'format') return undefined;
    const columns = partsOf(layout).map(({column}) => column);
    if (new Set(columns).size < columns.length) return undefined;
    return new UsualRows(layout, layout.dates.order, into, offsets);
  }

  private constructor(layout: Layout, order: DateOrder, into: ReadingColumns, offsets: OffsetsSeen) {
    this.#layout = layout;
    this.#order = order;
    this.#into = into;
    this.#offsets = offsets;
    this.#parts = partsOf(layout);
    this.#delimiter = layout.delimiter.charCodeAt(0);
    this.#sensor = Buffer.from(layout.sensor?.name ?? '');
    const {lowest, highest} = limitsIn(layout.unit);
    this.#lowest = lowest;
    this.#highest = highest;
  }

  /**
   * Reads usual rows up to the first odd one.
   * @returns where that one begins, and how many rows were read
   */
  read(block: Uint8Array, start: number): {readonly next: number; readonly rows: number} {
    const cursor = new ByteCursor(block, this.#delimiter);
    cursor.at = start;
    for (let rows = 0; ; rows++) {
      const begin = cursor.at;
      if (begin >= block.length || !this.#row(cursor)) return {next: begin, rows};
      const at = Number.isNaN(this.#offsetMs)
        ? this.#midnight + this.#timeOfDay - this.#zoneOffsetMs
        : this.#midnight + this.#timeOfDay - this.#offsetMs;
      this.#offsets.see(at, this.#offsetMs);
      this.#into.push(at, this.#temperature, this.#humidity);
    }
  }

  #row(cursor: ByteCursor): boolean {
    this.#humidity = Number.NaN;
    this.#offsetMs = Number.NaN;
    this.#timeOfDay = 0;
    let column = 0;
    for (const {column: wanted, part} of this.#parts) {
      // Each part but the first begins behind the one before it.
      if (column > 0 && !cursor.nextCell()) return false;
      for (; column < wanted; column++) if (!cursor.skipCell()) return false;
      cursor.open();
      if (!this.#read(part, cursor) || !cursor.close()) return false;
      column++;
    }
    return (!Number.isNaN(this.#zoneOffsetMs) || !Number.isNaN(this.#offsetMs)) && cursor.skipRow();
  }

  #read(part: Part, cursor: ByteCursor): boolean {
    switch (part) {
      case 'instant':
        return this.#date(cursor) && (!cursor.betweenDateAndClock() || cursor.atEnd() || this.#clock(cursor));
      case 'date':
        return this.#date(cursor);
      case 'clock':
        return this.#clock(cursor);
      case 'epoch':
        return this.#epoch(cursor);
      case 'temperature':
        this.#temperature = cursor.decimal();
        return this.#temperature >= this.#lowest && this.#temperature <= this.#highest;
      case 'sensor':
        return cursor.textIs(this.#sensor);
      case 'humidity':
        if (cursor.atEnd()) return true;
        this.#humidity = cursor.decimal();
        return isBelievableRh(this.#humidity);
    }
  }

  #clock(cursor: ByteCursor): boolean {
    this.#timeOfDay = cursor.clock();
    this.#offsetMs = cursor.offsetMs;
    return !Number.isNaN(this.#timeOfDay);
  }

  #epoch(cursor: ByteCursor): boolean {
    const {time} = this.#layout;
    this.#midnight = cursor.whole() * (time.kind === 'epoch' ? time.unitMs : Number.NaN);
    this.#zoneOffsetMs = 0;
    return isEpochMs(this.#midnight);
  }

  #date(cursor: ByteCursor): boolean {
    const a = cursor.whole();
    const widthA = cursor.width;
    const separator = cursor.dateSeparator();
    const b = cursor.whole();
    if (a < 0 || b < 0 || widthA > 4 || cursor.width > 2 || separator === 0) return false;
    if (cursor.dateSeparator() !== separator) return false;
    const c = cursor.whole();
    const widthC = cursor.width;
    if (c < 0 || widthC > 4) return false;
    const key = ((a * 100 + b) * 10_000 + c) * 100 + widthA * 10 + widthC;
    if (key === this.#dateKey) return true;
    const parts = {numbers: [a, b, c], widths: [widthA, 0, widthC], separator: ''} as const;
    const day = dayOf(parts, this.#order);
    if (day === undefined) return false;
    this.#dateKey = key;
    this.#midnight = day * MS_PER_DAY;
    this.#zoneOffsetMs = this.#layout.zone.steadyOffsetMs(day) ?? Number.NaN;
    return true;
  }
}

function partsOf({time, values, sensor}: Layout) {
  const parts: {column: number; part: Part}[] = [];
  const [first = 0, second] = columnsOfTime(time);
  if (second === undefined) parts.push({column: first, part: time.kind === 'epoch' ? 'epoch' : 'instant'});
  else parts.push({column: first, part: 'date'}, {column: second, part: 'clock'});
  if (values.kind === 'readings') {
    parts.push({column: values.temperature, part: 'temperature'});
    if (values.humidity !== undefined) parts.push({column: values.humidity, part: 'humidity'});
  }
  if (sensor !== undefined) parts.push({column: sensor.column, part: 'sensor'});
  return parts.sort((a, b) => a.column - b.column);
}
