// A column of a table: which field of a record it holds, and how that is written in a cell. The same columns are
// written out and read in.

/** A `word` is one of a list: upper case and blanks are not told apart from what the list has. */
export type CellKind = 'text' | 'word' | 'number' | 'day' | 'instant' | 'list' | 'counts' | 'yes-no';

export interface Column {
  readonly name: string;
  /** Where the field stands in the record: `place.latitude`. */
  readonly field: string;
  readonly kind: CellKind;
}

/** Columns in their order, written name:kind=field; text where no kind is given, the name where no field is. */
export function columns(words: string): Column[] {
  return words
    .trim()
    .split(/\s+/)
    .map(word => {
      const [called = '', field] = word.split('=');
      const [name = '', kind = 'text'] = called.split(':');
      return {name, field: field ?? name, kind: kinds.find(known => known === kind) ?? 'text'};
    });
}

const kinds: readonly CellKind[] = ['word', 'number', 'day', 'instant', 'list', 'counts', 'yes-no'];

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
