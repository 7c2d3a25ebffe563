// What was understood of a logger file: everything that reading a row needs.
import type {TemperatureUnit} from '../temperature-unit.ts';
import type {Zone} from '../zone.ts';
import type {Delimiter} from './written-row.ts';
import type {DateForm} from './written-time.ts';

/** Where the time stands. Columns count from 0. */
export type TimeColumns =
  | {readonly kind: 'instant'; readonly column: number}
  | {readonly kind: 'date-and-clock'; readonly date: number; readonly clock: number}
  /** Seconds or milliseconds since 1970-01-01T00:00Z. */
  | {readonly kind: 'epoch'; readonly column: number; readonly unitMs: 1 | 1000};

export type ValueColumns =
  | {readonly kind: 'readings'; readonly temperature: number; readonly humidity?: number | undefined}
  | {readonly kind: 'extremes'; readonly minimum: number; readonly maximum: number};

/** The column that names each row's sensor, and the one that is meant. */
export interface SensorColumn {
  readonly column: number;
  readonly name: string;
  /** Nobody chose it: the first rows name no other. Another one further on makes the file unclear. */
  readonly only: boolean;
}

export interface Layout {
  readonly delimiter: Delimiter;
  /** The names of the columns, where the file has them, and the line they stand on, from 1. */
  readonly heading?: {readonly names: readonly string[]; readonly line: number} | undefined;
  /** The line on which the data begin, from 1. */
  readonly firstLine: number;
  readonly time: TimeColumns;
  readonly values: ValueColumns;
  readonly dates: DateForm;
  readonly unit: TemperatureUnit;
  /** Where rows of several sensors stand one below the other: whose rows are read. */
  readonly sensor?: SensorColumn | undefined;
  /** Of instants that do not carry their offset. */
  readonly zone: Zone;
}

/** Columns that hold time. */
export function columnsOfTime(time: TimeColumns): readonly number[] {
  return time.kind === 'date-and-clock' ? [time.date, time.clock] : [time.column];
}

/** Columns that hold what was measured. */
export function columnsOfValues(values: ValueColumns): readonly number[] {
  if (values.kind === 'extremes') return [values.minimum, values.maximum];
  return values.humidity === undefined ? [values.temperature] : [values.temperature, values.humidity];
}
