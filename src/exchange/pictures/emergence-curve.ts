// The emergence curve: chance per day as bars, the window that holds four in five, and the adults that came.
import type {EmergenceDay, Window} from '../../development/answer.ts';
import type {Civil} from '../../records/civil.ts';
import type {Glyphs} from './glyphs.ts';
import {joinCells, type Line, type Piece, piece} from './line.ts';
import {tickLine, timeTicks} from './time-axis.ts';

export interface EmergenceCurve {
  readonly perDay: readonly Pick<EmergenceDay, 'fromDays' | 'toDays' | 'probability'>[];
  /** Of one animal alive now, taken at random. */
  readonly animal: Window;
  readonly came: readonly {readonly atDays: number; readonly count: number}[];
  readonly nowDays: number;
  readonly civil: Civil;
}

/** Cells left of the bars: "12 % a day". */
const GUTTER = 12;
/** Rows below the bars: the window, the days; and the adults that came where there are any. */
const FOOT = 2;
/** Days drawn beyond the last one with any chance. */
const MARGIN_DAYS = 1;

/** A day with less chance than this is not drawn. */
const WORTH_DRAWING = 0.0005;

/** @returns no line where there is nothing to draw */
export function emergenceCurve(
  data: EmergenceCurve,
  size: {readonly columns: number; readonly rows: number},
  glyphs: Glyphs,
): Line[] {
  const likely = data.perDay.filter(({probability}) => probability >= WORTH_DRAWING);
  const span = spanOf({...data, perDay: likely});
  if (span === undefined) return [];
  const columns = size.columns - GUTTER;
  const daysEach = Math.max(1, Math.ceil((span.toDays - span.fromDays) / columns));
  const used = Math.min(columns, Math.ceil((span.toDays - span.fromDays) / daysEach));
  const wide = Math.max(1, Math.min(4, Math.floor(columns / used)));
  const toDays = span.fromDays + used * daysEach;
  const chances = Array.from({length: used}, (_, i) => {
    const from = span.fromDays + i * daysEach;
    return chanceWithin(data.perDay, from, from + daysEach) / daysEach;
  });
  const hasCame = data.came.length > 0;
  const rows = size.rows - FOOT - (hasCame ? 1 : 0);
  const top = Math.max(...chances);
  const cellOf = (atDays: number) => ((atDays - span.fromDays) / (toDays - span.fromDays)) * used * wide;

  const lines: Line[] = [];
  for (let row = 0; row < rows; row++) {
    const label = row === 0 && top > 0 ? `${perCent(top)} a day` : '';
    lines.push([piece(`${label.padStart(GUTTER - 1)} `), ...barRow(chances, top, row, rows, wide, glyphs)]);
  }
  if (hasCame)
    lines.push([piece('came out'.padEnd(GUTTER)), ...cameRow(data.came, used * wide, wide, cellOf)]);
  lines.push([piece('4 in 5'.padEnd(GUTTER)), ...windowRow(data, used * wide, cellOf, glyphs)]);
  const ticks = timeTicks(span.fromDays, toDays, used * wide, data.civil);
  lines.push([piece(' '.repeat(GUTTER) + tickLine(ticks, span.fromDays, toDays, used * wide))]);
  return lines;
}

function spanOf({perDay, came, nowDays}: EmergenceCurve): {fromDays: number; toDays: number} | undefined {
  const days = [...perDay.map(({fromDays}) => fromDays), ...came.map(({atDays}) => Math.floor(atDays))];
  if (days.length === 0) return undefined;
  const ends = [...perDay.map(({toDays}) => toDays), ...came.map(({atDays}) => atDays)];
  const fromDays = perDay[0]?.fromDays ?? Math.min(...days);
  // Whole days from the curve's own boundaries, so that bars and civil days agree.
  const before = Math.max(0, Math.ceil(fromDays - Math.min(...days, nowDays)));
  return {fromDays: fromDays - before, toDays: Math.max(...ends, nowDays) + MARGIN_DAYS};
}

function chanceWithin(perDay: EmergenceCurve['perDay'], fromDays: number, toDays: number): number {
  let chance = 0;
  for (const day of perDay) {
    const shared = Math.min(day.toDays, toDays) - Math.max(day.fromDays, fromDays);
    if (shared > 0) chance += (day.probability * shared) / (day.toDays - day.fromDays);
  }
  return chance;
}

function barRow(
  chances: readonly number[],
  top: number,
  row: number,
  rows: number,
  wide: number,
  glyphs: Glyphs,
): Line {
  const steps = glyphs.bars.length;
  const cells = chances.flatMap(chance => {
    const height = top === 0 ? 0 : Math.round((chance / top) * rows * steps);
    const here = Math.min(steps, Math.max(0, height - (rows - 1 - row) * steps));
    const sign = here === 0 ? ' ' : glyphs.bars[here - 1]!;
    return Array.from({length: wide}, () => piece(sign, 'emergence'));
  });
  return joinCells(cells);
}

function cameRow(
  came: EmergenceCurve['came'],
  width: number,
  wide: number,
  cellOf: (atDays: number) => number,
): Line {
  const counts = new Map<number, number>();
  for (const {atDays, count} of came) {
    const at = Math.floor(cellOf(atDays) / wide) * wide;
    counts.set(at, (counts.get(at) ?? 0) + count);
  }
  const cells: Piece[] = Array.from({length: width}, () => piece(' '));
  for (const [at, count] of counts) {
    const text = String(count).length <= wide ? String(count) : count < 10 ? String(count) : '+';
    [...text].forEach((letter, k) => {
      if (at + k < width) cells[at + k] = piece(letter, 'seen');
    });
  }
  return joinCells(cells);
}

function windowRow(
  {animal, nowDays}: EmergenceCurve,
  width: number,
  cellOf: (atDays: number) => number,
  glyphs: Glyphs,
): Line {
  const cells: Piece[] = Array.from({length: width}, () => piece(' '));
  const put = (atDays: number, one: Piece) => {
    const at = Math.floor(cellOf(atDays));
    if (at >= 0 && at < width) cells[at] = one;
  };
  const {from, line, middle, to} = glyphs.window;
  if (animal.p10 !== null && animal.p90 !== null) {
    const last = Math.min(width - 1, Math.floor(cellOf(animal.p90)));
    for (let at = Math.max(0, Math.floor(cellOf(animal.p10))); at <= last; at++) cells[at] = piece(line);
    put(animal.p10, piece(from));
    put(animal.p90, piece(to));
  }
  if (animal.p50 !== null) put(animal.p50, piece(middle));
  put(nowDays, piece(glyphs.now, 'mark'));
  return joinCells(cells);
}

function perCent(share: number): string {
  return share < 0.1 ? `${(share * 100).toFixed(1)} %` : `${Math.round(share * 100)} %`;
}
