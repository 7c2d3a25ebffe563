// The room as tables of comma-separated values, one file each.
import {join} from 'node:path';
import {csvText} from '../exchange/csv.ts';
import {writeOutput} from '../exchange/output-file.ts';
import {type Column, cellOf} from '../exchange/tables/column.ts';
import {lotColumns} from '../exchange/tables/lot-columns.ts';
import {sampleColumns} from '../exchange/tables/sample-columns.ts';
import {specimenColumns} from '../exchange/tables/specimen-columns.ts';
import {balanceOf} from '../records/balance.ts';
import type {Instant} from '../records/entry.ts';
import {total} from '../records/stage.ts';
import type {Lot, Specimen} from '../records/state.ts';
import {daybook} from './daybook.ts';
import {type Desk, openDesk} from './desk.ts';
import * as lists from './list.ts';
import type {Session} from './session.ts';

/** As `teneral export csv` answers. */
export interface TablesAnswer {
  readonly folder: string;
  /** Rows of every table, by its file. */
  readonly rows: Readonly<Record<string, number>>;
}

interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** @throws Refusal where the folder cannot be written to; no table is put in place then */
export async function exportTables(session: Session, folder: string): Promise<TablesAnswer> {
  const tables = tablesOf(await openDesk(session, 'all'));
  const files = Object.entries(tables).map(([name, {columns, rows}]) => ({
    path: join(folder, name),
    content: csvText(columns, rows),
  }));
  await writeOutput(files, async () => {});
  return {
    folder,
    rows: Object.fromEntries(Object.entries(tables).map(([name, {rows}]) => [name, rows.length])),
  };
}

function tablesOf(desk: Desk): Readonly<Record<string, Table>> {
  const {state, civil} = desk;
  const iso = (at: Instant | undefined) => (at === undefined ? '' : civil.iso(at));
  return {
    'samples.csv': table([...state.samples.values()], sampleColumns, {
      of: ({of = ''}) => of,
      part: ({part = ''}) => part,
      sorting: ({sorting}) => sorting?.state ?? '',
    }),
    'lots.csv': table(
      [...state.lots.values()].map(lot => ({...lot, ...asBegun(lot, iso)})),
      lotColumns,
      {
        ...balanceColumns(),
        exact: ({exact}) => (exact ? 'yes' : 'no'),
        closed: ({closed}) => iso(closed?.at),
        reason: ({closed}) => closed?.reason ?? '',
      },
    ),
    'specimens.csv': table(
      [...state.specimens.values()].map(specimen => asFound(specimen, iso)),
      specimenColumns,
      {name: ({name = ''}) => name},
    ),
    'identifications.csv': identifications(desk),
    'units.csv': rowTable(lists.units(desk)),
    'loggers.csv': rowTable(lists.loggers(desk)),
    'daybook.csv': rowTable(
      daybook(desk, {}).map(({id, at, recordedAt, by, about, what, voided}) => ({
        entry: id,
        at,
        recordedAt,
        by,
        about,
        what,
        void: voided,
      })),
    ),
  };
}

/** The columns of a record, then what else is told of it. */
function table<Row extends object>(
  rows: readonly Row[],
  columns: readonly Column[],
  more: Readonly<Record<string, (row: Row) => string>> = {},
): Table {
  return {
    columns: [...columns.map(({name}) => name), ...Object.keys(more)],
    rows: rows.map(row => [
      ...columns.map(column => cellOf(column, row)),
      ...Object.values(more).map(tell => tell(row)),
    ]),
  };
}

/** Rows as they are listed, a column for every field. */
function rowTable(rows: readonly object[]): Table {
  const fields = Object.keys(rows[0] ?? {});
  const columns = fields.map(name => ({name, field: name, kind: 'text'}) as const);
  return {columns: fields, rows: rows.map(row => columns.map(column => cellOf(column, row)))};
}

function asBegun({origin, cohorts, startedAt, stays}: Lot, iso: (at: Instant) => string) {
  const from =
    origin.kind === 'sample' || (origin.kind === 'lot' && origin.how === 'split')
      ? undefined
      : {[origin.kind]: origin.code};
  return {from, at: iso(startedAt), unit: stays[0]?.unit, stages: cohorts[0]?.stages};
}

function balanceColumns(): Record<string, (lot: Lot) => string> {
  const accounts = [
    'started',
    'hatched',
    'mergedIn',
    'found',
    'emerged',
    'parasitised',
    'lost',
    'preserved',
    'splitOff',
    'mergedOut',
  ] as const;
  return {
    ...Object.fromEntries(accounts.map(account => [account, (lot: Lot) => String(balanceOf(lot)[account])])),
    alive: ({alive}) => String(total(alive)),
  };
}

function asFound(specimen: Specimen, iso: (at: Instant | undefined) => string) {
  const name = specimen.identifications.at(-1);
  const named = name?.record.record === 'identification' ? name.record : undefined;
  const kept = specimen.preparations.at(-1)?.record;
  const preparation = kept?.record === 'preparation' ? kept : undefined;
  return {
    ...specimen,
    at: iso(specimen.at),
    since: iso(specimen.since),
    rank: named?.rank,
    taxon: named?.taxon,
    name: specimen.taxon,
    qualifier: named?.qualifier,
    identifiedBy: named === undefined ? undefined : (named.by ?? name?.by),
    identifiedOn: named?.on,
    preparation: preparation?.method,
    medium: preparation?.medium,
    store: preparation?.store,
    agent: preparation?.agent,
    killedAt: preparation?.killedAt,
    subimago: specimen.subimagoAt === undefined ? undefined : true,
  };
}

/** Every name that a specimen ever had. */
function identifications({state, civil}: Desk): Table {
  const rows = [...state.specimens.values()].flatMap(({code, identifications}) =>
    identifications.flatMap(({record, by, recordedAt}) =>
      record.record === 'identification'
        ? [
            {
              ...record,
              specimen: code,
              by: record.by ?? by,
              on: record.on ?? civil.dayOf(Date.parse(recordedAt)),
            },
          ]
        : [],
    ),
  );
  const fields = ['specimen', 'taxon', 'qualifier', 'rank', 'by', 'on', 'note'];
  const columns = fields.map(name => ({name, field: name, kind: 'text'}) as const);
  return {columns: fields, rows: rows.map(row => columns.map(column => cellOf(column, row)))};
}
