// From a file's first rows to its layout: delimiter, heading, columns, unit, zone.
import type {Refusal} from '../../records/refusal.ts';
import type {TemperatureUnit} from '../temperature-unit.ts';
import {fixedZone, type Zone} from '../zone.ts';
import {offsetNamed, unitNamed} from './column-names.ts';
import type {ColumnsGiven} from './columns-option.ts';
import {columnNamed, type Heading, headingAbove, headingAt} from './heading.ts';
import {columnsOfTime, columnsOfValues, type Layout, type ValueColumns} from './layout.ts';
import {
  commasTwice,
  emptyFile,
  noneInColumns,
  noReadings,
  noSuchColumn,
  noSuchSensor,
  noTemperature,
  noTime,
  unclearUnit,
} from './refusals.ts';
import {delimiters, type Sample, type SampleRow, sampleOf} from './sample.ts';
import {mentions, sensorColumnOf} from './sensors.ts';
import {mostReadings, type Table, tableChosen, tableFound} from './table.ts';
import {formsToTry} from './time-columns.ts';
import {valueColumnsOf} from './value-columns.ts';
import {readNumber} from './written-number.ts';
import type {DateForm} from './written-time.ts';

export interface Wishes {
  /** How to name the file to a person. */
  readonly file: string;
  readonly columns?: ColumnsGiven | undefined;
  readonly dates?: DateForm | undefined;
  /** Of instants that do not carry their offset. */
  readonly zone: Zone;
  /** Which of several sensors is meant. */
  readonly sensor?: string | undefined;
  /** Whatever the file says. */
  readonly unit?: TemperatureUnit | undefined;
  /** Where the file does not say it. */
  readonly usualUnit?: TemperatureUnit | undefined;
}

/** A layout but for the dates, which may be written in more than one order, with rows that show how. */
export type Draft = Omit<Layout, 'dates'> & {readonly readings: readonly SampleRow[]};

/** @throws Refusal where the file is empty or its columns cannot be told */
export function understand(lines: Uint8Array, decode: (bytes: Uint8Array) => string, wishes: Wishes): Draft {
  const samples = delimiters.map(delimiter => sampleOf(lines, delimiter, decode));
  if (samples.every(({rows}) => rows.length === 0)) throw emptyFile(wishes.file);
  const forms = formsToTry(wishes.dates);
  const {file, columns} = wishes;
  const tableWith = (faults: boolean) =>
    mostReadings(
      samples.flatMap(
        sample =>
          (columns === undefined
            ? tableFound(sample, forms, faults)
            : tableChosen(sample, forms, columns, faults)) ?? [],
      ),
    );
  const table = tableWith(false) ?? tableWith(true);
  if (table === undefined) throw notUnderstood(samples, forms, wishes);

  const {time, readings} = table;
  const {delimiter, rows} = table.sample;
  const heading = headingOf(table);
  if (
    columns === undefined &&
    delimiter === ',' &&
    heading !== undefined &&
    readings.every(row => width(row) > width(heading))
  )
    throw commasTwice(file, heading.names, readings[0]!);
  const {sensor} = wishes;
  const values =
    table.values ??
    (sensor === undefined
      ? undefined
      : valueColumnsOf(namesOf(sensor, heading?.names), readings, time, hasClock(table, forms))) ??
    valueColumnsOf(heading?.names, readings, time, hasClock(table, forms));
  if (values === undefined) {
    const names = heading?.names ?? [];
    if (sensor !== undefined && !names.some(name => mentions(name, sensor)))
      throw noSuchSensor(file, sensor, names);
    throw noTemperature(file, heading?.names, readings[0]!);
  }
  const sensorColumn = sensorColumnOf({names: heading?.names, readings, time}, values, sensor, file);
  if (sensor !== undefined && sensorColumn === undefined && !isSensors(values, sensor, heading?.names))
    throw noSuchSensor(file, sensor, heading?.names ?? []);
  const said = (column: number) => `${heading?.names[column] ?? ''} ${heading?.units[column] ?? ''}`.trim();
  const offset = offsetNamed(said(columnsOfTime(time)[0]!));
  const measured = columnsOfValues(values)[0]!;
  return {
    delimiter,
    heading: heading === undefined ? undefined : {names: heading.names, line: heading.line},
    firstLine: heading === undefined ? readings[0]!.line : (rows[heading.rowsAbove]?.line ?? 1),
    time,
    values,
    unit: unitOf(said(measured), readings, measured, wishes),
    sensor: sensorColumn,
    zone: offset === undefined ? wishes.zone : fixedZone(offset),
    readings,
  };
}

function headingOf({sample: {rows}, readings, headingRow}: Table): Heading | undefined {
  const first = rows.indexOf(readings[0]!);
  return headingRow === undefined ? headingAbove(rows, first) : headingAt(rows, headingRow, first);
}

/** The time of day stands in a column of its own, or somewhere is another than midnight. */
function hasClock({time, readings}: Table, forms: readonly DateForm[]): boolean {
  if (time.kind !== 'instant') return true;
  return readings.some(({cells}) => /:/.test(cells[time.column] ?? '') || forms[0]?.kind === 'format');
}

/** The headings, those that do not mention the sensor left blank: their columns are another's. */
function namesOf(sensor: string, names: readonly string[] | undefined): readonly string[] | undefined {
  return names?.map(name => (mentions(name, sensor) ? name : ''));
}

function isSensors(values: ValueColumns, sensor: string, names: readonly string[] | undefined): boolean {
  return columnsOfValues(values).every(column => mentions(names?.[column] ?? '', sensor));
}

/** No animal is reared at so many °C, nor at so few K. */
const HARDLY_C = 45;
const SURELY_K = 200;

/** As a person said, as heading or cell name it, as usual for the logger, else as the size of the numbers tells. */
function unitOf(
  heading: string,
  readings: readonly SampleRow[],
  column: number,
  {file, unit, usualUnit}: Wishes,
): TemperatureUnit {
  const cells = readings.map(({cells}) => cells[column] ?? '');
  const said = unit ?? unitNamed(heading) ?? unitNamed(cells[0] ?? '') ?? usualUnit;
  if (said !== undefined) return said;
  const sorted = cells.flatMap(cell => readNumber(cell) ?? []).sort((a, b) => a - b);
  const typical = sorted[Math.floor(sorted.length / 2)] ?? 0;
  if (typical > SURELY_K) return 'K';
  if (typical > HARDLY_C) throw unclearUnit(file, typical);
  return 'C';
}

/** What to say of a file without readings, or without any in the columns that a person chose. */
function notUnderstood(
  samples: readonly Sample[],
  forms: readonly DateForm[],
  {file, columns}: Wishes,
): Refusal {
  const found = mostReadings(samples.flatMap(sample => tableFound(sample, forms, true) ?? []));
  const {rows} = found?.sample ?? samples.reduce((a, b) => (columnsIn(b) > columnsIn(a) ? b : a));
  const heading = found === undefined ? headingAbove(rows, rows.length) : headingOf(found);
  if (columns !== undefined) {
    const names = heading?.names ?? [];
    const width = columnsIn({rows});
    const missing = [...columns.values()].find(
      column => !(Number(column) <= width) && columnNamed(names, column) < 0,
    );
    return missing === undefined
      ? noneInColumns(file, found?.readings ?? rows)
      : noSuchColumn(file, missing, heading?.names);
  }
  return heading === undefined ? noTime(file, rows) : noReadings(file, heading.names);
}

/** Cells up to the last that is not empty. */
function width(row: {readonly cells: readonly string[]} | {readonly names: readonly string[]}): number {
  return ('cells' in row ? row.cells : row.names).findLastIndex(cell => cell !== '') + 1;
}

function columnsIn({rows}: Pick<Sample, 'rows'>): number {
  return Math.max(0, ...rows.map(({cells}) => cells.length));
}
