// The rows of a spreadsheet as records of the room.
import {createHash} from 'node:crypto';
import {Refusal} from '../../records/refusal.ts';
import {CellFault, cellValue} from './cell-value.ts';
import type {Column} from './column.ts';
import {lotColumns} from './lot-columns.ts';
import {type Assignment, assignments, type MappingLine} from './mapping.ts';
import type {ReadTable, TableRow} from './read-table.ts';
import {sampleColumns} from './sample-columns.ts';
import {specimenColumns} from './specimen-columns.ts';
import {specimenRecords} from './specimen-records.ts';

/** What a row stands for. */
export type RowKind = 'sample' | 'lot' | 'specimen';
export const rowKinds: readonly RowKind[] = ['sample', 'lot', 'specimen'];

export interface PlacedDraft {
  readonly draft: Readonly<Record<string, unknown>>;
  readonly row: TableRow;
}

export interface TableDrafts {
  readonly drafts: readonly PlacedDraft[];
  readonly assigned: readonly Assignment[];
  /** Headings that give nothing. */
  readonly unused: readonly string[];
}

type Fields = Readonly<Record<string, unknown>>;
interface Form {
  readonly columns: readonly Column[];
  /** Of each group one column at least must be given. */
  readonly needed: readonly (readonly string[])[];
  records(fields: Fields): readonly Fields[];
}

const forms: Readonly<Record<RowKind, Form>> = {
  sample: {
    columns: sampleColumns,
    needed: [['code'], ['method'], ['collectedFrom']],
    records: fields => [{record: 'sample', ...fields}],
  },
  lot: {
    columns: lotColumns,
    needed: [['code'], ['sample', 'fromLot', 'fromSpecimen'], ['unit'], ['at'], ['stages', 'material']],
    records: fields => [{record: 'lot', ...fields}],
  },
  specimen: {
    columns: specimenColumns,
    needed: [['code'], ['lot', 'sample'], ['at']],
    records: specimenRecords,
  },
};

/** @throws Refusal naming row and column where a cell cannot be read, or the field that no column gives */
export function tableDrafts(table: ReadTable, kind: RowKind, lines: readonly MappingLine[]): TableDrafts {
  const {columns, needed, records} = forms[kind];
  const assigned = assignments(lines, columns, table.heading);
  for (const names of needed)
    if (!assigned.some(({column}) => names.includes(column.name))) throw notGiven(names[0]!, table.file);
  const used = new Set(assigned.map(({from}) => ('index' in from ? from.index : -1)));
  return {
    drafts: table.rows.flatMap(row =>
      records(fieldsIn(row, assigned, table)).map(draft => ({draft: keyed(draft), row})),
    ),
    assigned,
    unused: table.heading.filter((name, index) => name !== '' && !used.has(index)),
  };
}

/** "catch.csv, row 5". */
export function placeOf({file}: ReadTable, {row}: TableRow): string {
  return `${file}, row ${row}`;
}

/** "catch.csv, row 5, column "Trap no"". */
export function cellPlace(table: ReadTable, row: TableRow, {column, from}: Assignment): string {
  const name = 'index' in from ? `column "${table.heading[from.index]}"` : `field ${column.name}`;
  return `${placeOf(table, row)}, ${name}`;
}

function fieldsIn(row: TableRow, assigned: readonly Assignment[], table: ReadTable): Fields {
  const fields: Record<string, unknown> = {};
  for (const assignment of assigned) {
    const {column, from, steps} = assignment;
    const cell = 'index' in from ? (row.cells[from.index] ?? '') : from.constant;
    try {
      setField(fields, column.field.split('.'), cellValue(cell, column.kind, steps));
    } catch (error) {
      if (!(error instanceof CellFault)) throw error;
      throw new Refusal(error.message, cellPlace(table, row, assignment), error.mend);
    }
  }
  return fields;
}

function setField(
  fields: Record<string, unknown>,
  [step = '', ...rest]: readonly string[],
  value: unknown,
): void {
  if (value === undefined) return;
  if (rest.length === 0) {
    fields[step] = value;
    return;
  }
  const inner = fields[step];
  const held = typeof inner === 'object' && inner !== null ? {...inner} : {};
  setField(held, rest, value);
  fields[step] = held;
}

/** The same row brought in again is passed over; a row that was changed is not the same. */
function keyed(draft: Fields): Fields {
  const hash = createHash('sha256').update(JSON.stringify(draft)).digest('hex').slice(0, 24);
  return {...draft, key: `row ${hash}`};
}

function notGiven(name: string, file: string): Refusal {
  return new Refusal(
    `no column gives the ${name}`,
    file,
    `Say which does, as in --column "${name} = HEADING", or give one for all rows, as in --column "${name} := VALUE".`,
  );
}
