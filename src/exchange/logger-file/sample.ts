// A file's first rows, split by each delimiter it may have.
import {type Delimiter, rowAt} from './written-row.ts';

export interface SampleRow {
  readonly cells: readonly string[];
  /** The line it begins on, from 1. */
  readonly line: number;
}

export interface Sample {
  readonly delimiter: Delimiter;
  /** Blank rows are left out. */
  readonly rows: readonly SampleRow[];
}

export const delimiters: readonly Delimiter[] = [',', ';', '\t'];
const SAMPLE_ROWS = 400;

export function sampleOf(
  lines: Uint8Array,
  delimiter: Delimiter,
  decode: (bytes: Uint8Array) => string,
): Sample {
  const rows: SampleRow[] = [];
  for (let start = 0, line = 1; start < lines.length && rows.length < SAMPLE_ROWS; ) {
    const row = rowAt(lines, start, lines.length, true, delimiter, decode);
    if (row === undefined) break;
    if (!isBlank(row.cells)) rows.push({cells: row.cells, line});
    start = row.next;
    line += row.lines;
  }
  return {delimiter, rows};
}

/** Spreadsheets end tables with rows of empty cells, old systems end files with a control character. */
export function isBlank(cells: readonly string[]): boolean {
  return cells.every(cell => !/[^\p{C}\s]/u.test(cell));
}
