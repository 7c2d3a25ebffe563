// Reading any row, however odd: its time and values, or what is wrong with it.
import {convert, type TemperatureUnit, unitSign} from '../temperature-unit.ts';
import type {Layout} from './layout.ts';
import {shown} from './refusals.ts';
import {timeIn} from './time-columns.ts';
import {type Meaning, meaningOf} from './wall-clock.ts';
import {readNumber} from './written-number.ts';
import type {WrittenTime} from './written-time.ts';

/** A row that is no reading. */
export interface Rejected {
  /** The line it stands on in the file, from 1. */
  readonly row: number;
  readonly what: string;
}

/** Air and water where anything is reared; beyond it an instrument shows a fault. °C. */
const LOWEST_C = -60;
const HIGHEST_C = 80;
/** A wet sensor reads somewhat above 100 per cent. */
const HIGHEST_RH = 110;

export interface Limits {
  readonly lowest: number;
  readonly highest: number;
}

/** Believable temperatures in a unit. */
export function limitsIn(unit: TemperatureUnit): Limits {
  return {lowest: convert(LOWEST_C, 'C', unit), highest: convert(HIGHEST_C, 'C', unit)};
}

export function isBelievableRh(rhPercent: number): boolean {
  return rhPercent >= 0 && rhPercent <= HIGHEST_RH;
}

export type TimeOfRow = WrittenTime & {readonly meaning: Exclude<Meaning, {kind: 'none'}>};

/** The row's time, else what is wrong with it. */
export function timeOfRow(cells: readonly string[], {time, dates, zone}: Layout): TimeOfRow | string {
  const written = timeIn(cells, time, dates);
  if (written === undefined) {
    const cell = (time.kind === 'date-and-clock' ? [time.date, time.clock] : [time.column])
      .map(column => cells[column] ?? '')
      .join(' ')
      .trim();
    return cell === '' ? 'the time is missing' : `"${shown([cell])}" is no time`;
  }
  const meaning = meaningOf(written, zone);
  if (meaning.kind !== 'none') return {...written, meaning};
  return `the clocks of ${zone.name} skip ${new Date(written.wall).toISOString().slice(0, 16).replace('T', ' ')}`;
}

/** A temperature, else what is wrong with it. */
export function temperatureOf(
  cells: readonly string[],
  column: number,
  unit: TemperatureUnit,
  name = 'temperature',
): number | string {
  const cell = cells[column] ?? '';
  const value = readNumber(cell);
  if (value === undefined)
    return isMissing(cell) ? `the ${name} is missing` : `the ${name} "${shown([cell])}" is no number`;
  const {lowest, highest} = limitsIn(unit);
  return value >= lowest && value <= highest
    ? value
    : `the ${name} ${shown([cell])} ${unitSign[unit]} cannot be; it is taken for a fault`;
}

/** Empty, or a word for it. */
function isMissing(cell: string): boolean {
  return /^(|-+|nan|null|none|n\/?a)$/i.test(cell);
}

/** A humidity, NaN where it is missing, else what is wrong with it. */
export function humidityOf(cells: readonly string[], column: number | undefined): number | string {
  const cell = column === undefined ? '' : (cells[column] ?? '');
  if (isMissing(cell)) return Number.NaN;
  const value = readNumber(cell);
  if (value === undefined) return `the humidity "${shown([cell])}" is no number`;
  return isBelievableRh(value) ? value : `the humidity ${shown([cell])} % cannot be; it is taken for a fault`;
}
