// A sample's rows that hold readings: by what stands in them, or in the columns that a person chose.
import type {ColumnRole, ColumnsGiven} from './columns-option.ts';
import {columnNamed, headingWith} from './heading.ts';
import {columnsOfTime, columnsOfValues, type TimeColumns, type ValueColumns} from './layout.ts';
import type {Sample, SampleRow} from './sample.ts';
import {timeColumnsOf, timeIn} from './time-columns.ts';
import {readNumber} from './written-number.ts';
import type {DateForm} from './written-time.ts';

export interface Table {
  readonly sample: Sample;
  readonly time: TimeColumns;
  /** Rows that have a time there and, unless the sample holds only faults, a number elsewhere; at least one. */
  readonly readings: readonly SampleRow[];
  /** Where a person said so. */
  readonly values?: ValueColumns;
  /** The row that holds the names a person gave. */
  readonly headingRow?: number | undefined;
}

/** The table by the time columns that most rows agree on. @param faults also rows without any number count */
export function tableFound(sample: Sample, forms: readonly DateForm[], faults: boolean): Table | undefined {
  const byTime = new Map<string, {readonly time: TimeColumns; readonly readings: SampleRow[]}>();
  for (const row of sample.rows) {
    const time = timeColumnsOf(row.cells, forms);
    if (time === undefined || !(faults || hasNumberBeside(row.cells, columnsOfTime(time)))) continue;
    const key = JSON.stringify(time);
    const known = byTime.get(key) ?? {time, readings: []};
    known.readings.push(row);
    byTime.set(key, known);
  }
  const best = mostReadings([...byTime.values()]);
  return best === undefined ? undefined : {sample, ...best};
}

/** The table by columns that a person chose; undefined where they hold no readings. */
export function tableChosen(
  sample: Sample,
  forms: readonly DateForm[],
  given: ColumnsGiven,
  faults: boolean,
): Table | undefined {
  const names = [...given.values()].filter(column => !isNumber(column));
  const headingRow = names.length === 0 ? undefined : headingWith(sample.rows, names);
  if (headingRow === -1) return undefined;
  const heading = headingRow === undefined ? [] : sample.rows[headingRow]!.cells;
  const columnOf = (role: ColumnRole) => {
    const column = given.get(role);
    if (column === undefined) return undefined;
    return isNumber(column) ? Number(column) - 1 : columnNamed(heading, column);
  };
  const [minimum, maximum, temperature] = [columnOf('minimum'), columnOf('maximum'), columnOf('temperature')];
  const values: ValueColumns | undefined =
    temperature !== undefined
      ? {kind: 'readings', temperature, humidity: columnOf('humidity')}
      : minimum !== undefined && maximum !== undefined
        ? {kind: 'extremes', minimum, maximum}
        : undefined;
  if (values === undefined) return undefined;
  const tables = timesOf(columnOf('date'), columnOf('time')).map(time => ({
    time,
    readings: sample.rows.filter(({cells}) => hasReading(cells, time, values, forms, faults)),
  }));
  const best = mostReadings(tables);
  return best === undefined ? undefined : {sample, ...best, values, headingRow};
}

/** The one with most readings, the first of equals; undefined where none has any. */
export function mostReadings<T extends {readonly readings: readonly unknown[]}>(
  tables: readonly T[],
): T | undefined {
  const best = tables.reduce<T | undefined>(
    (a, b) => (a === undefined || b.readings.length > a.readings.length ? b : a),
    undefined,
  );
  return best?.readings.length === 0 ? undefined : best;
}

function timesOf(date: number | undefined, time: number | undefined): TimeColumns[] {
  if (date !== undefined && time !== undefined) return [{kind: 'date-and-clock', date, clock: time}];
  const column = time ?? date ?? 0;
  return [
    {kind: 'instant', column},
    {kind: 'epoch', column, unitMs: 1000},
    {kind: 'epoch', column, unitMs: 1},
  ];
}

function hasReading(
  cells: readonly string[],
  time: TimeColumns,
  values: ValueColumns,
  forms: readonly DateForm[],
  faults: boolean,
): boolean {
  return (
    forms.some(form => timeIn(cells, time, form) !== undefined) &&
    columnsOfValues(values).some(column => {
      const cell = cells[column];
      return cell !== undefined && (faults || readNumber(cell) !== undefined);
    })
  );
}

function hasNumberBeside(cells: readonly string[], timeColumns: readonly number[]): boolean {
  return cells.some((cell, column) => !timeColumns.includes(column) && readNumber(cell) !== undefined);
}

function isNumber(column: string): boolean {
  return /^[1-9]\d*$/.test(column);
}
