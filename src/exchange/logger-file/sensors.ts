// Several sensors in one file: rows one below the other, told apart by a column, or columns side by side.
import {plainName} from './column-names.ts';
import {
  columnsOfTime,
  columnsOfValues,
  type SensorColumn,
  type TimeColumns,
  type ValueColumns,
} from './layout.ts';
import {noSuchSensor, severalSensors} from './refusals.ts';
import type {SampleRow} from './sample.ts';
import {readNumber} from './written-number.ts';

const NAMES_SENSOR =
  /sensor|channel|probe|kanal|fuhler|sonde|capteur|canal|logger|serial|device|node|station|gerat/;
/** More names than that are no sensors of one file but a counter or a remark. */
const MOST_SENSORS = 64;

/** What is looked at to find the sensors of a file. */
export interface Columns {
  readonly names: readonly string[] | undefined;
  readonly readings: readonly SampleRow[];
  readonly time: TimeColumns;
}

/**
 * The column that tells the sensors of rows apart, and which one is meant.
 * @param wanted the name that a person gave
 * @returns undefined where rows name no sensor
 * @throws Refusal where rows of several are mixed and nobody said which is meant, or none has the name
 */
export function sensorColumnOf(
  columns: Columns,
  values: ValueColumns,
  wanted: string | undefined,
  file: string,
): SensorColumn | undefined {
  const column = namingColumn(columns, values);
  if (column === undefined) return undefined;
  const named = namesIn(columns.readings, column);
  if (wanted === undefined) {
    if (named.length > 1) throw severalSensors(file, named);
    return named[0] === undefined ? undefined : {column, name: named[0], only: true};
  }
  const name = named.find(each => isNamed(each, wanted));
  if (name !== undefined) return {column, name, only: false};
  // The name may stand in the headings, or further down than the first rows.
  if (columns.names?.some(heading => mentions(heading, wanted)) === true) return undefined;
  if (named.length > 1) throw noSuchSensor(file, wanted, named);
  return {column, name: wanted, only: false};
}

/** Whether a heading is that of a sensor's column: "Shelf 2 Temp (°C)" mentions shelf 2, and not shelf 22. */
export function mentions(heading: string, sensor: string): boolean {
  const [text, name] = [plainName(heading), plainName(sensor)];
  const at = text.indexOf(name);
  const isWord = (character: string | undefined) =>
    character !== undefined && /[\p{L}\p{N}]/u.test(character);
  return at >= 0 && !isWord(text[at - 1]) && !isWord(text[at + name.length]);
}

export function isNamed(cell: string, sensor: string): boolean {
  return plainName(cell) === plainName(sensor);
}

function namingColumn({names, readings, time}: Columns, values: ValueColumns): number | undefined {
  const taken = new Set([...columnsOfTime(time), ...columnsOfValues(values)]);
  const width = Math.max(0, ...readings.map(({cells}) => cells.length));
  const free = Array.from({length: width}, (_, column) => column).filter(column => !taken.has(column));
  const isFew = (column: number) => {
    const named = namesIn(readings, column);
    return named.length <= MOST_SENSORS && (named.length === 1 || named.length < readings.length);
  };
  return (
    free.find(column => NAMES_SENSOR.test(plainName(names?.[column] ?? '')) && isFew(column)) ??
    free.find(column => isFew(column) && tellsTwinsApart(readings, column, time))
  );
}

/** Text that differs wherever the same time stands twice. */
function tellsTwinsApart(readings: readonly SampleRow[], column: number, time: TimeColumns): boolean {
  const seen = new Map<string, Set<string>>();
  let twins = 0;
  for (const {cells} of readings) {
    const name = cells[column] ?? '';
    if (name === '' || readNumber(name) !== undefined) return false;
    const key = columnsOfTime(time)
      .map(each => cells[each])
      .join(' ');
    const names = seen.get(key);
    if (names === undefined) seen.set(key, new Set([name]));
    else if (names.has(name)) return false;
    else {
      names.add(name);
      twins++;
    }
  }
  return twins > 0;
}

/** A logger may write its name on its first row only. */
function namesIn(readings: readonly SampleRow[], column: number): string[] {
  return [...new Set(readings.map(({cells}) => cells[column] ?? ''))].filter(name => name !== '');
}
