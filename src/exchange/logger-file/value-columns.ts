// Which columns hold what was measured, by their headings, else by what stands in them.
import {bareName, type NamedRole, plainName, roleNamed} from './column-names.ts';
import {columnsOfTime, type TimeColumns, type ValueColumns} from './layout.ts';
import type {SampleRow} from './sample.ts';
import {readNumber} from './written-number.ts';

/**
 * @param names the heading; none where the file has no heading
 * @param readings rows of the sample that hold data
 * @param hasClock the time columns tell the time of day
 * @returns undefined where no column is surely the temperature
 */
export function valueColumnsOf(
  names: readonly string[] | undefined,
  readings: readonly SampleRow[],
  time: TimeColumns,
  hasClock: boolean,
): ValueColumns | undefined {
  const numeric = numericColumns(readings).filter(column => !columnsOfTime(time).includes(column));
  return names === undefined
    ? unnamed(numeric, readings, time, hasClock)
    : named(names, numeric, readings, hasClock);
}

function named(
  names: readonly string[],
  numeric: readonly number[],
  readings: readonly SampleRow[],
  hasClock: boolean,
): ValueColumns | undefined {
  const roles = names.map(roleNamed);
  /** Columns of a role that hold numbers; where none does, because the file begins with faults, those that will. */
  const having = (role: NamedRole) => {
    const columns = roles.flatMap((found, column) => (found === role ? [column] : []));
    const held = columns.filter(column => numeric.includes(column));
    return held.length > 0 ? held : columns;
  };
  const first = (role: NamedRole) => having(role)[0];
  const temperatures = having('temperature');
  const temperature = theOne(temperatures, names);
  // Which of several is meant a person must say.
  if (temperature === undefined && temperatures.length > 0) return undefined;
  const [minimum, maximum] = [first('minimum'), first('maximum')];
  if (minimum !== undefined && maximum !== undefined && (temperature === undefined || !hasClock))
    return {kind: 'extremes', minimum, maximum};
  if (temperature !== undefined) return {kind: 'readings', temperature, humidity: first('humidity')};
  const nameless = numeric.filter(column => roles[column] === undefined && !isCounter(readings, column));
  return nameless.length === 1
    ? {kind: 'readings', temperature: nameless[0]!, humidity: first('humidity')}
    : undefined;
}

/** Names that mean the temperature itself, where others stand beside it. */
const PLAIN_NAMES = [
  '',
  't',
  'temp',
  'temperature',
  'temperatur',
  'temperatura',
  'temperatuur',
  'air temperature',
];

/** The temperature among columns named so: one called just that, or all the same in several units. */
function theOne(columns: readonly number[], names: readonly string[]): number | undefined {
  const bare = columns.map(column => bareName(names[column]!));
  const plain = columns.filter((_, i) => PLAIN_NAMES.includes(bare[i]!));
  const alike = plain.length > 0 ? plain : new Set(bare).size === 1 ? columns : [];
  const headings = alike.map(column => plainName(names[column]!));
  // The same heading twice is two sensors.
  return new Set(headings).size === headings.length ? alike[0] : undefined;
}

/** Without a heading the temperature follows the time, and a single further column of 0 to 100 is the humidity. */
function unnamed(
  numeric: readonly number[],
  readings: readonly SampleRow[],
  time: TimeColumns,
  hasClock: boolean,
): ValueColumns | undefined {
  const lastOfTime = Math.max(...columnsOfTime(time));
  const after = numeric.filter(column => column > lastOfTime);
  const [temperature, second, ...others] = after.length > 0 ? after : numeric;
  // A day and two numbers may as well be its minimum and maximum.
  if (temperature === undefined || (!hasClock && second !== undefined)) return undefined;
  const isHumidity =
    second !== undefined &&
    others.length === 0 &&
    valuesIn(readings, second).every(value => value >= 0 && value <= 100);
  return {kind: 'readings', temperature, humidity: isHumidity ? second : undefined};
}

/** Columns in which most rows of the sample hold a number. */
function numericColumns(readings: readonly SampleRow[]): readonly number[] {
  const columns = Math.max(0, ...readings.map(({cells}) => cells.length));
  return Array.from({length: columns}, (_, column) => column).filter(
    column => valuesIn(readings, column).length > 0,
  );
}

function valuesIn(readings: readonly SampleRow[], column: number): number[] {
  return readings.flatMap(({cells}) => {
    const value = readNumber(cells[column] ?? '');
    return value === undefined ? [] : [value];
  });
}

/** Loggers number their rows. */
function isCounter(readings: readonly SampleRow[], column: number): boolean {
  const values = valuesIn(readings, column);
  return values.length > 1 && values.every((value, i) => i === 0 || value === values[i - 1]! + 1);
}
