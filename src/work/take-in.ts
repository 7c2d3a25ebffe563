// Samples, lots or specimens from a spreadsheet into the room: all of it or nothing.
import type {Assignment, MappingLine} from '../exchange/tables/mapping.ts';
import {type ReadTable, readTable, type TableRow} from '../exchange/tables/read-table.ts';
import {
  cellPlace,
  placeOf,
  type RowKind,
  type TableDrafts,
  tableDrafts,
} from '../exchange/tables/table-records.ts';
import {Refusal} from '../records/refusal.ts';
import {warnOfPlaces} from './hints.ts';
import {type Applied, record, rehearse} from './record.ts';
import type {Session} from './session.ts';

export interface TakeInWishes {
  readonly as: RowKind;
  readonly mapping: readonly MappingLine[];
  /** Check everything, and write nothing. */
  readonly dryRun?: boolean;
  /** Also what is unusual. */
  readonly sure?: boolean;
}

/** As `teneral apply FILE.csv` answers. */
export interface TakenIn extends Applied {
  readonly file: string;
  readonly rows: number;
  readonly dryRun: boolean;
  /** Which column gives which field; a field without a column is the same for all rows. */
  readonly columns: readonly {readonly field: string; readonly column: string | null}[];
  /** Columns that give nothing. */
  readonly unused: readonly string[];
}

/** @throws Refusal for the first row that cannot be accepted, with its row and column; nothing is written then */
export async function takeIn(
  session: Session,
  file: string,
  {as, mapping, dryRun = false, sure = false}: TakeInWishes,
): Promise<TakenIn> {
  const table = readTable(file);
  const read = tableDrafts(table, as, mapping);
  const drafts = read.drafts.map(({draft}) => (sure ? {...draft, sure} : draft));
  const where = (index: number) => placeOf(table, read.drafts[index]!.row);
  const applied = await inColumns(table, read, () =>
    dryRun
      ? rehearse(session, drafts, where)
      : record(session, drafts, where).then(done => warnOfPlaces(session, done)),
  );
  return {
    file,
    rows: table.rows.length,
    dryRun,
    columns: read.assigned.map(({column, from}) => ({
      field: column.name,
      column: 'index' in from ? table.heading[from.index]! : null,
    })),
    unused: read.unused,
    ...applied,
  };
}

/** A refusal of a row also names the column: that of the field it names, else of the cell that it quotes. */
async function inColumns<Value>(
  table: ReadTable,
  {assigned, drafts}: TableDrafts,
  work: () => Promise<Value>,
): Promise<Value> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const {what, where, mend} = error;
    const row = drafts
      .map(one => one.row)
      .find(row => where.match(/^.*, row \d+/)?.[0] === placeOf(table, row));
    const culprit = row === undefined ? undefined : culpritOf(row, assigned, error);
    if (row === undefined || culprit === undefined) throw error;
    throw new Refusal(what, cellPlace(table, row, culprit), mend);
  }
}

function culpritOf(
  {cells}: TableRow,
  assigned: readonly Assignment[],
  {what, where}: Refusal,
): Assignment | undefined {
  const field = /field ([\w.]+)$/.exec(where)?.[1] ?? '';
  const leaf = field.split('.').at(-1);
  const named = assigned.find(({column}) => column.field === field || column.name === leaf);
  if (named !== undefined) return named;
  const words = new Set(what.split(/[\s",:;()]+/));
  const quoted = assigned.filter(({from}) => 'index' in from && words.has(cells[from.index]?.trim() ?? ''));
  return quoted.sort((a, b) => lengthOf(b, cells) - lengthOf(a, cells))[0];
}

function lengthOf({from}: Assignment, cells: readonly string[]): number {
  return 'index' in from ? (cells[from.index]?.length ?? 0) : 0;
}
