// What degree-days says to people: a table by day, the total, and what it rests on.
import type {LoggerFile} from '../exchange/logger-file/logger-file.ts';
import {unitSign} from '../exchange/temperature-unit.ts';
import {type Column, textTable} from '../exchange/text-table.ts';
import type {Cutoff} from '../thermal/degree-day.ts';
import type {DegreeDaysAnswer, DegreeDaysOfDay, DegreeDayWishes} from '../work/degree-days.ts';

const REJECTED_SHOWN = 5;

const cutoffWords: Readonly<Record<Cutoff, string>> = {
  horizontal: 'no more above',
  intermediate: 'less the further above',
  vertical: 'none above',
};

export function degreeDaysText(answer: DegreeDaysAnswer, {maxGapHours}: DegreeDayWishes): string {
  const {days, total, unit, lower, upper, cutoff, method} = answer;
  const degree = unitSign[unit];
  const above = upper === null ? '' : `, ${cutoffWords[cutoff]} ${upper} ${degree}`;
  const lines = [
    `${fixed(total)} degree-days (${degree}) above ${lower} ${degree}${above}; method ${method}`,
  ];
  const span = spanWords(answer, maxGapHours);
  if (span !== undefined) lines.push(span);
  return days[0]?.day === null ? lines.join('\n') : `${dayTable(days)}\n\n${lines.join('\n')}`;
}

/** Rows of the file that do not count, and why; empty where all do. */
export function rowsText({rows, duplicates, rejected}: LoggerFile): string {
  const lines: string[] = [];
  if (duplicates > 0) lines.push(`${duplicates} of ${rows} rows repeat an earlier one and do not count.`);
  if (rejected.length > 0) {
    lines.push(`${rejected.length} of ${rows} rows cannot be read and do not count:`);
    lines.push(...rejected.slice(0, REJECTED_SHOWN).map(({row, what}) => `  row ${row}: ${what}`));
    if (rejected.length > REJECTED_SHOWN) lines.push(`  and ${rejected.length - REJECTED_SHOWN} more`);
  }
  return lines.map(line => `\n${line}`).join('');
}

function dayTable(days: readonly DegreeDaysOfDay[]): string {
  const columns: Column<DegreeDaysOfDay>[] = [
    {head: 'day', cell: ({day}) => day ?? ''},
    {head: 'degree-days', cell: ({degreeDays}) => fixed(degreeDays), right: true},
    {head: 'sum', cell: ({cumulative}) => fixed(cumulative), right: true},
  ];
  if (days.some(isPartial))
    columns.push({head: 'known', cell: day => (isPartial(day) ? perCent(day.coverage) : ''), right: true});
  return textTable(days, columns);
}

function spanWords(
  {from, to, coverage, gapHours, method}: DegreeDaysAnswer,
  maxGapHours: number,
): string | undefined {
  if (from === null || to === null) return undefined;
  const span = `From ${stamp(from)} to ${stamp(to)}`;
  if (gapHours === 0) return `${span}, without a gap.`;
  const known = `${span}, of which ${perCent(coverage)} are known`;
  if (!from.includes('T')) {
    const missing = gapHours / 24;
    return `${known}: ${missing === 1 ? '1 day is missing and adds' : `${missing} days are missing and add`} nothing.`;
  }
  const pauses = `${fixed(gapHours)} hours lie in pauses longer than ${maxGapHours} h`;
  return method === 'trace'
    ? `${known}: ${pauses} and add nothing.`
    : `${known}: ${pauses}; a day counts by the readings it has.`;
}

/** "2010-05-01 00:00 (UTC+00:00)" of an instant; a day stays as it is. */
function stamp(text: string): string {
  return text.includes('T') ? `${text.slice(0, 16).replace('T', ' ')} (UTC${text.slice(-6)})` : text;
}

function isPartial({coverage}: DegreeDaysOfDay): boolean {
  return coverage < 0.9995;
}

function fixed(number: number): string {
  return number.toFixed(2);
}

/** A share below 1 is never shown as 100 %. */
function perCent(share: number): string {
  return `${Math.min(99.9, Math.floor(share * 1000) / 10)} %`;
}
