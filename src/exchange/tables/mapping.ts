// Which column of a spreadsheet gives which field. One line a field, in this room's own notation:
//
//     # a remark
//     code = Trap no                          the column with that heading
//     host = #7                               the seventh column
//     collectedFrom = Set | d.m.y             days written day, month, year
//     sex = Sex | f > female | m > male       words that stand for others
//     collectors = Leg. | split /             several in one cell
//     method := pitfall                       the same for all rows
import {nearest} from '../../records/nearest.ts';
import {Refusal} from '../../records/refusal.ts';
import type {Column} from './column.ts';

export type DayOrder = 'dmy' | 'mdy' | 'ymd';

/** What is done with a cell before it is read. */
export interface Steps {
  readonly words: ReadonlyMap<string, string>;
  readonly dayOrder?: DayOrder | undefined;
  readonly split?: string | undefined;
}

export interface Assignment {
  readonly column: Column;
  /** Index of the column, or what stands in it for all rows. */
  readonly from: {readonly index: number} | {readonly constant: string};
  readonly steps: Steps;
}

export interface MappingLine {
  readonly text: string;
  /** How to name it to a person. */
  readonly where: string;
}

const NOTHING: Steps = {words: new Map()};

/**
 * The assignments of the lines, then those of headings that are called like a field.
 * @throws Refusal for a line that is none, a field or heading that is not there, or a field given twice
 */
export function assignments(
  lines: readonly MappingLine[],
  columns: readonly Column[],
  heading: readonly string[],
): Assignment[] {
  const byColumn = new Map<Column, Assignment>();
  for (const line of lines) {
    if (/^\s*(#|$)/.test(line.text)) continue;
    const assignment = assignmentIn(line, columns, heading);
    if (byColumn.has(assignment.column))
      throw new Refusal(`${assignment.column.name} is given twice`, line.where, 'Leave one of them out.');
    byColumn.set(assignment.column, assignment);
  }
  const taken = new Set([...byColumn.values()].map(({from}) => ('index' in from ? from.index : -1)));
  for (const [index, name] of heading.entries()) {
    const column = columns.find(column => !byColumn.has(column) && bare(column.name) === bare(name));
    if (column !== undefined && !taken.has(index))
      byColumn.set(column, {column, from: {index}, steps: NOTHING});
  }
  return [...byColumn.values()];
}

function assignmentIn(
  {text, where}: MappingLine,
  columns: readonly Column[],
  heading: readonly string[],
): Assignment {
  const [, field = '', sign, rest = ''] = /^\s*([\w.-]+)\s*(:=|=)\s*(.*?)\s*$/.exec(text) ?? [];
  if (sign === undefined || rest === '')
    throw new Refusal(
      `"${text.trim()}" gives no field`,
      where,
      'Write it as field = heading, or field := value.',
    );
  const column = columns.find(({name, field: path}) => [bare(name), bare(path)].includes(bare(field)));
  if (column === undefined)
    throw unknown(
      'field',
      field,
      columns.map(({name}) => name),
      where,
    );
  if (sign === ':=') return {column, from: {constant: rest}, steps: NOTHING};
  const [name = '', ...steps] = rest.split('|').map(part => part.trim());
  return {column, from: {index: indexOf(name, heading, where)}, steps: stepsIn(steps, where)};
}

function indexOf(name: string, heading: readonly string[], where: string): number {
  const number = /^#(\d+)$/.exec(name)?.[1];
  const index =
    number === undefined ? heading.findIndex(one => bare(one) === bare(name)) : Number(number) - 1;
  if (index >= 0 && index < heading.length) return index;
  throw unknown('column', name, heading, where);
}

function stepsIn(steps: readonly string[], where: string): Steps {
  const words = new Map<string, string>();
  let dayOrder: DayOrder | undefined;
  let split: string | undefined;
  for (const step of steps) {
    const order = step.replace(/[./ -]/g, '').toLowerCase();
    const [from = '', to] = step.split('>').map(part => part.trim());
    if (to !== undefined) words.set(from.toLowerCase(), to);
    else if (order === 'dmy' || order === 'mdy' || order === 'ymd') dayOrder = order;
    else if (step.startsWith('split ')) split = step.slice('split '.length).trim();
    else
      throw new Refusal(
        `"${step}" is nothing that can be done with a cell`,
        where,
        'Known are d.m.y, m/d/y, y-m-d, word > other word, and split MARK.',
      );
  }
  return {words, dayOrder, split};
}

function unknown(kind: string, name: string, known: readonly string[], where: string): Refusal {
  const near = nearest(name, known);
  const mend = near === undefined ? `There are ${known.join(', ')}.` : `Nearest is ${near}.`;
  return new Refusal(`there is no ${kind} "${name}"`, where, mend);
}

/** Headings and fields are compared without blanks, marks and capitals. */
function bare(name: string): string {
  return name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
}
