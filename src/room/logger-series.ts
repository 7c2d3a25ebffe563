// One logger's readings between two days: only the months that hold them are read.
import {rowsOf, type Series} from '../climate/series.ts';
import {instantOf} from '../records/entry.ts';
import {monthOf, readingsOf} from './document-path.ts';
import {readDocument} from './documents.ts';
import {monthAt, msOf} from './months.ts';
import {between, concatenate, type ReadingsDocument, readMonth, seriesIn} from './readings.ts';
import type {DocumentRow, RoomDocument} from './room-document.ts';

/**
 * The readings of a logger from one day to another, inclusive; days since 1970 UTC, infinite ones allowed.
 * @param importedBy only what had been imported by this instant (ms since 1970)
 */
export async function loggerSeries(
  dir: string,
  {documents, imports}: RoomDocument,
  logger: string,
  fromDays: number,
  toDays: number,
  importedBy?: number,
): Promise<Series> {
  const [from, to] = [monthOr(fromDays, '0000-00'), monthOr(toDays, '9999-99')];
  const rows = documents
    .filter(({path}) => path.startsWith(readingsOf(logger)) && monthOf(path) >= from && monthOf(path) <= to)
    .sort(byMonth);
  const months = await Promise.all(rows.map(row => readDocument<ReadingsDocument>(dir, row)));
  if (importedBy === undefined) return between(concatenate(months.map(seriesIn)), fromDays, toDays);
  const known = new Set(
    imports.filter(({recordedAt}) => instantOf(recordedAt) <= importedBy).map(({id}) => id),
  );
  return between(concatenate(months.map(month => importedIn(month, known))), fromDays, toDays);
}

/** The readings of a month that came with these imports. */
function importedIn(document: ReadingsDocument, imports: ReadonlySet<string>): Series {
  const {series, batchOf} = readMonth(document);
  const rows = [...batchOf.keys()].filter(row => imports.has(batchOf[row]!));
  return rows.length === batchOf.length ? series : rowsOf(series, rows);
}

function monthOr(days: number, otherwise: string): string {
  const ms = msOf(days);
  return ms >= FIRST_MS && ms <= LAST_MS ? monthAt(ms) : otherwise;
}

/** Years of four digits. */
const FIRST_MS = Date.parse('0000-01-01T00:00:00Z');
const LAST_MS = Date.parse('9999-12-31T23:59:59Z');

function byMonth(a: DocumentRow, b: DocumentRow): number {
  return monthOf(a.path) < monthOf(b.path) ? -1 : 1;
}
