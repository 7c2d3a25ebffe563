// A file of daily extremes, row by row.
import type {Day} from '../../records/civil.ts';
import {MS_PER_DAY} from '../../records/entry.ts';
import {dayNumbered} from '../civil.ts';
import type {Zone} from '../zone.ts';
import {eachRow, type OddRow, type Source} from './each-row.ts';
import type {ValueColumns} from './layout.ts';
import {type Rejected, temperatureOf, timeOfRow} from './rows.ts';

/** A day's extremes in the unit of the file. */
export interface DayOfExtremes {
  readonly day: Day;
  /** The line it stands on in the file, from 1. */
  readonly row: number;
  readonly minimum: number;
  readonly maximum: number;
}

export interface Extremes {
  readonly kind: 'extremes';
  /** In order of time, each day once. */
  readonly days: readonly DayOfExtremes[];
  /** Rows below the heading that are not blank: days + duplicates + rejected. */
  readonly rows: number;
  /** Rows of a day that an earlier row has. */
  readonly duplicates: number;
  readonly rejected: readonly Rejected[];
  readonly zone: Zone;
}

export function readExtremes(source: Source, values: ValueColumns & {kind: 'extremes'}): Extremes {
  const {layout} = source;
  const days = new Map<Day, DayOfExtremes>();
  const rejected: Rejected[] = [];
  let duplicates = 0;
  eachRow(source, undefined, row => {
    const read = dayIn(row);
    if (typeof read === 'string') rejected.push({row: row.line, what: read});
    else if (days.has(read.day)) duplicates++;
    else days.set(read.day, read);
  });

  /** The row's day, else what is wrong with it. */
  function dayIn({cells, unclosed, line}: OddRow): DayOfExtremes | string {
    if (unclosed) return 'a quote is not closed';
    const time = timeOfRow(cells, layout);
    if (typeof time === 'string') return time;
    const minimum = temperatureOf(cells, values.minimum, layout.unit, 'minimum');
    if (typeof minimum === 'string') return minimum;
    const maximum = temperatureOf(cells, values.maximum, layout.unit, 'maximum');
    if (typeof maximum === 'string') return maximum;
    if (minimum > maximum) return `the minimum ${minimum} is above the maximum ${maximum}`;
    return {day: dayNumbered(Math.floor(time.wall / MS_PER_DAY)), row: line, minimum, maximum};
  }

  return {
    kind: 'extremes',
    days: [...days.values()].sort((a, b) => (a.day < b.day ? -1 : 1)),
    rows: days.size + duplicates + rejected.length,
    duplicates,
    rejected,
    zone: layout.zone,
  };
}
