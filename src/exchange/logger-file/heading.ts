// Where a table's heading stands among its first rows, and what it says.
import {isUnitCell, namesTime, plainName, roleNamed, unitNamed} from './column-names.ts';
import type {SampleRow} from './sample.ts';
import {readNumber} from './written-number.ts';
import {datePartsOf} from './written-time.ts';

export interface Heading {
  readonly names: readonly string[];
  readonly line: number;
  /** The units below the names, where they have a row of their own. */
  readonly units: readonly string[];
  /** Rows of the sample that stand above the data. */
  readonly rowsAbove: number;
}

/**
 * The heading above the first row that holds a reading: the lowest row that names a time and something measured, else
 * the row just above the data. Rows between heading and data are data that cannot be read.
 */
export function headingAbove(rows: readonly SampleRow[], firstReading: number): Heading | undefined {
  const above = rows.slice(0, firstReading);
  const named = above.findLastIndex(
    ({cells}) => isOfWords(cells) && cells.some(namesTime) && cells.some(namesValue),
  );
  if (named >= 0) return headingAt(rows, named, firstReading);
  const last = isUnitRow(above.at(-1)) ? firstReading - 2 : firstReading - 1;
  const row = above[last];
  const columns = rows[firstReading]?.cells.length ?? 0;
  return row !== undefined && isOfWords(row.cells) && row.cells.length >= columns
    ? headingAt(rows, last, firstReading)
    : undefined;
}

/** The heading whose names a person gave. */
export function headingWith(rows: readonly SampleRow[], names: readonly string[]): number {
  return rows.findIndex(({cells}) => names.every(name => columnNamed(cells, name) >= 0));
}

export function headingAt(rows: readonly SampleRow[], index: number, firstReading: number): Heading {
  const next = rows[index + 1];
  const hasUnits = index + 1 < firstReading && isUnitRow(next);
  return {
    names: rows[index]!.cells,
    line: rows[index]!.line,
    units: hasUnits ? next!.cells : [],
    rowsAbove: index + (hasUnits ? 2 : 1),
  };
}

/** The column of a name, however it is written; -1 where no column has it. */
export function columnNamed(names: readonly string[], name: string): number {
  return names.findIndex(cell => plainName(cell) === plainName(name));
}

function namesValue(cell: string): boolean {
  const role = roleNamed(cell);
  return role !== undefined && role !== 'other';
}

function isOfWords(cells: readonly string[]): boolean {
  return (
    cells.length > 1 &&
    cells.every(cell => datePartsOf(cell) === undefined && (cell === '' || readNumber(cell) === undefined))
  );
}

/** Units alone, one of them a temperature's; what stands above the time may be a form such as "yyyy-mm-dd". */
function isUnitRow(row: SampleRow | undefined): boolean {
  if (row === undefined || !isOfWords(row.cells)) return false;
  const units = row.cells.filter(cell => cell !== '' && isUnitCell(cell));
  const words = row.cells.filter(cell => cell !== '' && !isUnitCell(cell) && !/[ymdhs]{2}/i.test(cell));
  return words.length === 0 && units.some(unit => unitNamed(` ${unit}`) !== undefined);
}
