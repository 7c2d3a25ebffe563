// `--columns time=1,temperature=2`: a person's word on which column is which.
import {Refusal} from '../../records/refusal.ts';

const columnRoles = ['time', 'date', 'temperature', 'humidity', 'minimum', 'maximum'] as const;
export type ColumnRole = (typeof columnRoles)[number];

/** A column by its number, from 1, or by its heading. */
export type ColumnsGiven = ReadonlyMap<ColumnRole, string>;

const EXAMPLE =
  'Write it like time=1,temperature=2,humidity=3, or date=1,time=2,temperature=3, with numbers or headings.';

/** @throws Refusal where it is written otherwise */
export function readColumnsOption(text: string): ColumnsGiven {
  const given = new Map<ColumnRole, string>();
  for (const part of text.split(',')) {
    const [name = '', column = '', ...rest] = part.split('=').map(word => word.trim());
    const role = columnRoles.find(known => known === name.toLowerCase());
    if (role === undefined || column === '' || rest.length > 0)
      throw new Refusal(`"${part.trim()}" names no column`, '--columns', EXAMPLE);
    if (given.has(role)) throw new Refusal(`${role} is given twice`, '--columns', EXAMPLE);
    given.set(role, column);
  }
  if (!given.has('time') && !given.has('date'))
    throw new Refusal('the column of the time is missing', '--columns', EXAMPLE);
  const hasExtremes = given.has('minimum') && given.has('maximum');
  if (!given.has('temperature') && !hasExtremes)
    throw new Refusal('the column of the temperature is missing', '--columns', EXAMPLE);
  return given;
}
