// A column of a table: which field of a record it holds, and how that is written in a cell. The same columns are
// written out and read in.

export type CellKind = 'text' | 'number' | 'day' | 'instant' | 'list' | 'counts' | 'yes-no';

export interface Column {
  readonly name: string;
  /** Where the field stands in the record: `place.latitude`. */
  readonly field: string;
  readonly kind: CellKind;
}

/** Columns whose field has another name than they have are given as name=field. */
export function columns(kinds: Readonly<Partial<Record<CellKind, string>>>): Column[] {
  return Object.entries(kinds).flatMap(([kind, words]) =>
    words.split(' ').map(word => {
      const [name = '', field = name] = word.split('=');
      return {name, field, kind: kind as CellKind};
    }),
  );
}

/** Lists stand in one cell, parted so. */
export const LIST_MARK = '; ';

/** What stands in the cell of a column for a record; nothing where the record has no such field. */
export function cellOf({field}: Column, record: object): string {
  let value: unknown = record;
  for (const step of field.split('.'))
    value = typeof value === 'object' && value !== null ? Reflect.get(value, step) : undefined;
  return textOf(value);
}

function textOf(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (Array.isArray(value)) return value.map(textOf).join(LIST_MARK);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'object')
    return Object.entries(value)
      .map(([stage, count]) => `${stage}=${count}`)
      .join(' ');
  return String(value);
}
