// What a cell of a spreadsheet says, as a record holds it. A blank cell says nothing: blank is not zero.
import {readDay} from '../instants.ts';
import type {CellKind} from './column.ts';
import type {DayOrder, Steps} from './mapping.ts';

/** What is wrong with a cell, and how to mend it. */
export class CellFault extends Error {
  readonly mend: string;

  constructor(what: string, mend: string) {
    super(what);
    this.mend = mend;
  }
}

/** @throws CellFault where the cell holds something else */
export function cellValue(cell: string, kind: CellKind, steps: Steps): unknown {
  const text = steps.words.get(cell.trim().toLowerCase()) ?? cell.trim();
  if (text === '') return undefined;
  switch (kind) {
    case 'text':
      return text;
    case 'word':
      return text.toLowerCase().replace(/\s+/g, '-');
    case 'number':
      return numberIn(text);
    case 'day':
      return dayIn(text, steps.dayOrder);
    case 'instant':
      return instantIn(text, steps.dayOrder);
    case 'list':
      return text
        .split(steps.split ?? ';')
        .map(part => part.trim())
        .filter(part => part !== '');
    case 'counts':
      return countsIn(text);
    case 'yes-no':
      return yesNoIn(text);
  }
}

/** A decimal comma is one where no point stands beside it. */
function numberIn(text: string): number {
  if (!/^[-+]?\d+([.,]\d+)?$/.test(text))
    throw new CellFault(
      `"${text}" is no number`,
      'Write digits alone, without a unit or marks for thousands.',
    );
  return Number(text.replace(',', '.'));
}

const HOW = 'Write it as 2026-05-30, or say how it is written: field = heading | d.m.y.';
const months = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'viii', 'ix', 'x', 'xi', 'xii'];

/** Day and month are never guessed: what is not written as ISO 8601 needs its order. Months may be roman. */
function dayIn(text: string, order: DayOrder | undefined): string {
  const iso = readDay(text);
  if (iso !== undefined) return iso;
  const parts = /^(\w{1,4})[./ -]+(\w{1,4})[./ -]+(\w{1,4})$/.exec(text)?.slice(1) ?? [];
  if (order === undefined || parts.length < 3) throw new CellFault(`"${text}" is no day`, HOW);
  const [year = '', month = '', date = ''] = ['y', 'm', 'd'].map(part => parts[order.indexOf(part)]!);
  const roman = months.indexOf(month.toLowerCase()) + 1;
  const number = roman > 0 ? String(roman) : month;
  const day = readDay(`${year}-${number.padStart(2, '0')}-${date.padStart(2, '0')}`);
  if (day === undefined)
    throw new CellFault(`"${text}" is no day`, 'Years have four digits; check day and month.');
  return day;
}

/** A day, or a day and a time. */
function instantIn(text: string, order: DayOrder | undefined): string {
  const [, day = text, time] = /^(.*?)[T ]+(\d{1,2}:\d{2}.*)$/.exec(text) ?? [];
  const written = dayIn(day, order);
  return time === undefined ? written : `${written}T${time.padStart(5, '0')}`;
}

/** "larva-4=18 larva-5=6", as on the command line. */
function countsIn(text: string): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const part of text.split(/[\s;]+/)) {
    const [stage = '', count = '', ...rest] = part.split('=');
    if (!/^\d+$/.test(count) || rest.length > 0)
      throw new CellFault(`"${part}" is not written stage=number`, 'Write it as larva-4=18 larva-5=6.');
    counts[stage.toLowerCase()] = Number(count);
  }
  return counts;
}

function yesNoIn(text: string): boolean {
  if (/^(yes|y|true|1|x)$/i.test(text)) return true;
  if (/^(no|n|false|0)$/i.test(text)) return false;
  throw new CellFault(`"${text}" is neither yes nor no`, 'Write yes or no.');
}
