// A spreadsheet's table from a file of comma-separated values: RFC 4180, and what spreadsheets write in its place
// (semicolons or tabs, a byte order mark, Windows-1252).
import {CsvError, parse} from 'csv-parse/sync';
import {Refusal} from '../../records/refusal.ts';
import {chunksOf} from '../logger-file/chunks.ts';

export interface TableRow {
  /** As a spreadsheet counts them: the heading is row 1. */
  readonly row: number;
  readonly cells: readonly string[];
}

export interface ReadTable {
  readonly file: string;
  readonly heading: readonly string[];
  /** Blank rows are left out. */
  readonly rows: readonly TableRow[];
}

/** @throws Refusal where the file cannot be read, is no text, or is no table */
export function readTable(file: string): ReadTable {
  const text = decoded(Buffer.concat([...chunksOf(file)]), file);
  const [heading, ...rows] = rowsOf(text, file);
  if (heading === undefined || heading.cells.every(isBlank))
    throw new Refusal('the table has no heading', file, 'Let its first row name the columns.');
  return {
    file,
    heading: heading.cells.map(cell => cell.trim()),
    rows: rows.filter(({cells}) => !cells.every(isBlank)),
  };
}

function rowsOf(text: string, file: string): TableRow[] {
  try {
    const rows: string[][] = parse(text, {
      delimiter: delimiterOf(text),
      relax_column_count: true,
      skip_empty_lines: false,
    });
    return rows.map((cells, i) => ({row: i + 1, cells}));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const where = `${file}, line ${error.lines}`;
    throw new Refusal(
      'the quotes of a field are not closed as they should be',
      where,
      'Save the table as CSV anew.',
    );
  }
}

/** Of comma, semicolon and tab the one that stands most often in the heading, outside quotes. */
function delimiterOf(text: string): string {
  const [heading = ''] = text.replace(/"[^"]*"/g, '').split(/\r?\n|\r/, 1);
  const counts = [',', ';', '\t'].map(mark => ({mark, count: heading.split(mark).length}));
  return counts.reduce((most, one) => (one.count > most.count ? one : most)).mark;
}

function decoded(bytes: Buffer, file: string): string {
  if (bytes.subarray(0, 2).toString('latin1') === 'PK')
    throw new Refusal(
      'this is a workbook, not a table of text',
      file,
      'Save its sheet as CSV and give that file.',
    );
  if (bytes.includes(0) && !/^(\xff\xfe|\xfe\xff)/.test(bytes.subarray(0, 2).toString('latin1')))
    throw new Refusal('the file is no text', file, 'Save the table as CSV and give that file.');
  const encodings =
    bytes[0] === 0xff ? ['utf-16le'] : bytes[0] === 0xfe ? ['utf-16be'] : ['utf-8', 'windows-1252'];
  for (const encoding of encodings)
    try {
      return new TextDecoder(encoding, {fatal: true}).decode(bytes);
    } catch {
      // The next one.
    }
  throw new Refusal('the file is no text', file, 'Save the table as CSV in UTF-8 and give that file.');
}

function isBlank(cell: string): boolean {
  return cell.trim() === '';
}
