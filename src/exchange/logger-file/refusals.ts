// What a person is told of a file that cannot be understood.
import {Refusal} from '../../records/refusal.ts';
import type {SampleRow} from './sample.ts';

const EXAMPLE = 'A logger file has a row a reading, such as 2026-05-30 09:00,21.4,62.';
const COLUMNS = 'Name the columns with --columns time=1,temperature=2';
const FORMAT = 'and the way dates are written with --format, such as --format "dd LLL yyyy HH:mm"';

export function emptyFile(file: string): Refusal {
  return new Refusal('the file is empty', file, 'Export the readings from the logger again.');
}

export function noReadings(file: string, names: readonly string[]): Refusal {
  return new Refusal(
    `the file has a heading (${shown(names)}) but no row with a time and a temperature below it`,
    file,
    `${EXAMPLE} ${COLUMNS}, ${FORMAT}.`,
  );
}

export function noTime(file: string, rows: readonly SampleRow[]): Refusal {
  const found =
    rows.length === 0 ? 'blank lines' : `"${shown(rows.slice(0, 2).map(({cells}) => shown(cells)))}"`;
  return new Refusal(
    `no column holds dates and times; found ${found}`,
    file,
    `${EXAMPLE} ${COLUMNS}, ${FORMAT}.`,
  );
}

export function noTemperature(file: string, names: readonly string[] | undefined, row: SampleRow): Refusal {
  const found =
    names === undefined ? `no heading, and rows like "${shown(row.cells)}"` : `the columns ${shown(names)}`;
  return new Refusal(
    `no column is surely the temperature; found ${found}`,
    file,
    `${COLUMNS} or, for daily extremes, --columns date=1,minimum=2,maximum=3; or the sensor by what its headings share, --sensor "shelf 2".`,
  );
}

export function noSuchColumn(file: string, column: string, names: readonly string[] | undefined): Refusal {
  const found = names === undefined ? 'the file has no heading' : `the columns are ${shown(names)}`;
  return new Refusal(
    `--columns names "${column}", but ${found}`,
    file,
    'Give the number of the column, from 1, or its heading as the file has it.',
  );
}

export function commasTwice(file: string, names: readonly string[], row: SampleRow): Refusal {
  return new Refusal(
    `rows have more cells than the heading (${shown(names)}): "${shown(row.cells)}"; commas seem to separate cells and to mark decimals`,
    file,
    'Export it with semicolons or with decimal points, or name the columns with --columns.',
  );
}

export function noneInColumns(file: string, rows: readonly SampleRow[]): Refusal {
  return new Refusal(
    `no row has a time and a temperature in the columns that --columns names; found "${shown(rows[0]?.cells ?? [])}"`,
    file,
    'Check the numbers of the columns, from 1, and give the way dates are written with --format.',
  );
}

export function severalSensors(file: string, names: readonly string[]): Refusal {
  return new Refusal(
    `the file holds readings of several sensors: ${shown(names)}`,
    file,
    `Say which one this logger is with --sensor "${names[0]}".`,
  );
}

export function noSuchSensor(file: string, wanted: string, names: readonly string[]): Refusal {
  return new Refusal(
    `no sensor of the file is called "${shown([wanted])}"${names.length === 0 ? '' : `; there are ${shown(names)}`}`,
    file,
    'Give a name as the file has it, in its rows or its headings.',
  );
}

export function mixedReadings(file: string, conflicts: number, rows: number): Refusal {
  return new Refusal(
    `${conflicts} of ${rows} rows give an instant another temperature than an earlier row: readings of several sensors seem to be mixed`,
    file,
    'Name the column of the temperature with --columns, or export each sensor to a file of its own.',
  );
}

export function unclearUnit(file: string, typical: number): Refusal {
  return new Refusal(
    `the file names no unit, and temperatures around ${typical} are hardly °C`,
    file,
    'Say which it is with --unit F, --unit C or --unit K.',
  );
}

export function unclearDates(file: string, cell: string): Refusal {
  return new Refusal(
    `day and month cannot be told apart: dates look like "${shown([cell])}" and no number in them decides it`,
    file,
    'Say which comes first with --format dmy, --format mdy or --format ymd.',
  );
}

export function noRowRead(file: string, {row, what}: {readonly row: number; readonly what: string}): Refusal {
  return new Refusal(
    `no row can be read; in row ${row}, ${what}`,
    file,
    `${COLUMNS}, ${FORMAT}. A heading such as "Temp (°F)" tells the unit.`,
  );
}

const LONGEST = 70;

/** What was found, cut short and without anything a terminal would act on. */
export function shown(cells: readonly string[]): string {
  const text = cells
    .join(' | ')
    .replace(/[\p{C}\s]+/gu, ' ')
    .trim();
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text;
}
