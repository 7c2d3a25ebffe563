// From newly imported readings to the documents of the months they fall in.
import {readingsOf, stemOf} from './document-path.ts';
import {type NewDocument, readDocument} from './documents.ts';
import {msOf} from './months.ts';
import {
  byMonth,
  type MonthOfReadings,
  merge,
  type ReadingsDocument,
  readMonth,
  writeMonth,
} from './readings.ts';
import type {ImportBatch, NewReadings} from './room.ts';
import type {DocumentRow, RoomDocument} from './room-document.ts';

/** The documents that a change adds, and the paths of those whose place they take. */
export interface Replacement {
  readonly documents: readonly NewDocument[];
  readonly replaced: ReadonlySet<string>;
}

/** An import batch for each new series. */
export function batchesOf(
  readings: readonly NewReadings[],
  {next}: RoomDocument,
  {by, recordedAt}: {readonly by: string; readonly recordedAt: string},
): ImportBatch[] {
  return readings.map(({logger, file, hash, recordedAt: earlier}, i) => ({
    id: `i${next.batch + i}`,
    logger,
    recordedAt: earlier ?? recordedAt,
    by,
    file,
    hash,
  }));
}

/**
 * Every month that new readings fall in, as a document of all its readings, old and new.
 * @throws RangeError for a series out of order, or an instant that the room holds already
 */
export async function monthsWith(
  dir: string,
  room: RoomDocument,
  readings: readonly NewReadings[],
  batches: readonly ImportBatch[],
): Promise<Replacement> {
  const months = new Map<string, {logger: string; month: MonthOfReadings}>();
  readings.forEach(({logger, series}, i) => {
    for (const month of byMonth(series, batches[i]!.id)) {
      const stem = `${readingsOf(logger)}${month.month}`;
      const earlier = months.get(stem)?.month;
      months.set(stem, {logger, month: earlier === undefined ? month : merge(earlier, month)});
    }
  });
  const held = new Map(room.documents.map(row => [stemOf(row.path), row]));
  const replaced = new Set<string>();
  const documents: NewDocument[] = [];
  for (const [stem, {logger, month}] of months) {
    const row = held.get(stem);
    if (row !== undefined) replaced.add(row.path);
    const whole =
      row === undefined ? month : merge(readMonth(await readDocument<ReadingsDocument>(dir, row)), month);
    documents.push(monthDocument(stem, logger, whole));
  }
  return {documents, replaced};
}

function monthDocument(stem: string, logger: string, month: MonthOfReadings): NewDocument {
  return {stem, bytes: writeMonth(logger, month), ...monthRow(month)};
}

/** What the table says of a document of readings. */
export function monthRow({series: {atDays}}: MonthOfReadings): Pick<DocumentRow, 'rows' | 'from' | 'to'> {
  const utc = (days: number | undefined) => (days === undefined ? days : new Date(msOf(days)).toISOString());
  return {rows: atDays.length, from: utc(atDays[0]), to: utc(atDays.at(-1))};
}
