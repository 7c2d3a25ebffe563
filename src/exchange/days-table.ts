// A table of days at temperatures, as papers print them: temperature, days, perhaps sd, n and stage.
import {Refusal} from '../records/refusal.ts';
import type {Observed} from '../thermal/fit/observed.ts';
import {plainName, unitNamed} from './logger-file/column-names.ts';
import {readNumber} from './logger-file/written-number.ts';
import {type Delimiter, rowAt} from './logger-file/written-row.ts';
import {convert} from './temperature-unit.ts';

export interface DaysRow extends Observed {
  /** As written in the table's column of that name. */
  readonly stage?: string | undefined;
}

export interface DaysTable {
  readonly rows: readonly DaysRow[];
  /** Temperatures at which the table gives no days: nothing developed, or nothing is said. */
  readonly withoutDays: readonly number[];
}

const NAMES: Readonly<Record<Role, RegExp>> = {
  stage: /^(stage|instar)s?$/,
  n: /^(n|number|count|sample size)$/,
  sd: /^(sd|s\.d\.|stdev|standard deviation)( .*)?$/,
  days: /^(mean )?(days?|duration|time|development( time)?|d)( .*)?$/,
  temperature: /^(t|temp|temperature)([_ (°].*)?$|^[°º]?\s?[cf]$/,
};
type Role = 'stage' | 'n' | 'sd' | 'days' | 'temperature';

/** No development ends beyond these at a constant temperature. */
const POSSIBLE_C = [-10, 50] as const;

/**
 * The rows of a table's text: comma, semicolon or tab between, decimal point or comma. Columns go by their names; without
 * a heading the first two are temperature and days. Temperatures under a heading in °F are turned into °C.
 * @param where how the table is named to a person
 * @throws Refusal naming the row and the cell that cannot be read
 */
export function daysTable(text: string, where: string): DaysTable {
  const lines = rowsOf(text);
  const heading = lines[0]?.cells.some(cell => cell !== '' && readNumber(cell) === undefined)
    ? lines[0].cells
    : [];
  const body = heading.length > 0 ? lines.slice(1) : lines;
  const columns = columnsOf(heading, where);
  const unit = unitNamed(heading[columns.temperature] ?? '') ?? 'C';
  const rows: DaysRow[] = [];
  const withoutDays: number[] = [];
  for (const {cells, line} of body) {
    const at = `${where}, row ${line}`;
    const number = (role: 'temperature' | 'days' | 'sd' | 'n') => {
      const cell = cells[columns[role] ?? -1] ?? '';
      if (/^[-–—]?$|^(na|nd|none)$/i.test(cell)) return undefined;
      const value = readNumber(cell);
      if (value === undefined)
        throw new Refusal(
          `"${cell}" is no number`,
          `${at}, ${role}`,
          'Write a number such as 21.5, or leave it empty.',
        );
      return value;
    };
    const given = number('temperature');
    if (given === undefined)
      throw new Refusal('the temperature is missing', at, 'Give the temperature of every row.');
    const temperature = convert(given, unit, 'C');
    if (temperature < POSSIBLE_C[0] || temperature > POSSIBLE_C[1])
      throw new Refusal(
        `no animal develops at ${given} °${unit}`,
        `${at}, temperature`,
        unit === 'C' ? 'If the table is in °F, head the column temperature_F.' : 'Correct the temperature.',
      );
    const days = number('days');
    if (days === undefined) {
      withoutDays.push(temperature);
      continue;
    }
    const sd = number('sd');
    const n = number('n');
    for (const [role, value] of Object.entries({days, sd, n}))
      if (value !== undefined && !(value > 0))
        throw new Refusal(`${value} is not above 0`, `${at}, ${role}`, 'Correct it, or leave it empty.');
    const stage = columns.stage === undefined ? undefined : cells[columns.stage];
    rows.push({temperature, days, sd, n, ...(stage === undefined || stage === '' ? {} : {stage})});
  }
  if (rows.length === 0)
    throw new Refusal(
      'there is no row with days',
      where,
      'Give the columns temperature and days, a row a temperature.',
    );
  return {rows, withoutDays};
}

function columnsOf(
  heading: readonly string[],
  where: string,
): Readonly<Record<'temperature' | 'days', number>> & Partial<Record<Role, number>> {
  if (heading.length === 0) return {temperature: 0, days: 1};
  const found: Partial<Record<Role, number>> = {};
  heading.forEach((name, column) => {
    const role = (Object.keys(NAMES) as Role[]).find(
      each => found[each] === undefined && NAMES[each].test(plainName(name)),
    );
    if (role !== undefined) found[role] = column;
  });
  const {temperature, days} = found;
  if (temperature === undefined || days === undefined)
    throw new Refusal(
      `the heading names no column ${temperature === undefined ? 'temperature' : 'days'}`,
      where,
      'Head the columns temperature, days, and perhaps sd, n and stage.',
    );
  return {...found, temperature, days};
}

function rowsOf(text: string): {cells: readonly string[]; line: number}[] {
  const bytes = Buffer.from(`${text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n')}\n`);
  const first = text.split('\n').find(line => line.trim() !== '') ?? '';
  const delimiter: Delimiter = first.includes('\t') ? '\t' : first.includes(';') ? ';' : ',';
  const rows: {cells: readonly string[]; line: number}[] = [];
  for (let start = 0, line = 1; start < bytes.length; ) {
    const row = rowAt(bytes, start, bytes.length, true, delimiter, part =>
      Buffer.from(part).toString('utf8'),
    );
    if (row === undefined) break;
    if (row.cells.some(cell => cell !== '')) rows.push({cells: row.cells, line});
    line += row.lines;
    start = row.next;
  }
  return rows;
}
