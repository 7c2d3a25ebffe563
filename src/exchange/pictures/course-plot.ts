// The temperature course of a unit as a plot in characters, with the levels that matter drawn in and named.
import type {Course} from '../../climate/course.ts';
import type {Civil} from '../../records/civil.ts';
import {basisRow, humidityRow, lightRow} from './course-bands.ts';
import {extents, type Ground, grounds} from './course-extents.ts';
import {dotGrid} from './dots.ts';
import {cut} from './fit.ts';
import type {Glyphs} from './glyphs.ts';
import {joinCells, type Kind, type Line, type Piece, piece} from './line.ts';
import {tickLine, timeTicks} from './time-axis.ts';
import {LABEL_CELLS, type Level, levelsByRow, type ValueScale, valueScale} from './value-scale.ts';

export interface CoursePlot {
  readonly course: Pick<Course, 'atDays' | 'temperatureC' | 'stretches'>;
  readonly fromDays: number;
  readonly toDays: number;
  readonly nowDays: number;
  /** Set points, and thresholds of the lots that live there. */
  readonly levels: readonly Level[];
  /** When the unit is lit; drawn where a column is short enough to tell day from night. */
  readonly lit?: readonly {readonly fromDays: number; readonly toDays: number}[] | undefined;
  readonly humidity?: {readonly atDays: ArrayLike<number>; readonly rhPercent: ArrayLike<number>} | undefined;
  readonly civil: Civil;
}

export interface PlotSize {
  /** At least 40. */
  readonly columns: number;
  /** At least 8. */
  readonly rows: number;
}

/** Cells left of the plot: "24 °C │". */
const GUTTER = LABEL_CELLS + 2;
/** Rows below the curve: what it rests on, and the time axis. */
const FOOT = 2;
/** Light and dark are told apart in columns up to four hours wide. */
const LONGEST_LIT_DAYS = 4 / 24;
/** A level so far above the course would press it flat and says nothing that matters now. */
const FAR_ABOVE_C = 8;
/** A pause in humidity readings that is not bridged. */
const HUMIDITY_PAUSE_DAYS = 0.25;

const KINDS: Readonly<Record<Ground, Kind>> = {
  read: 'seen',
  filled: 'plain',
  expected: 'expected',
  unknown: 'mark',
};
const PLAIN_SIGNS: Readonly<Record<Ground, string>> = {read: '*', filled: 'o', expected: '.', unknown: ' '};

export function coursePlot(plot: CoursePlot, size: PlotSize, glyphs: Glyphs): Line[] {
  const {fromDays, toDays, course, humidity} = plot;
  const columns = size.columns - GUTTER;
  const lit = (toDays - fromDays) / columns <= LONGEST_LIT_DAYS ? plot.lit : undefined;
  const rows = size.rows - FOOT - (humidity === undefined ? 0 : 1) - (lit === undefined ? 0 : 1);
  const ground = grounds(course.stretches, fromDays, toDays, columns);
  const known = extents(course.atDays, course.temperatureC, fromDays, toDays, columns);
  const levels = plot.levels.filter(({valueC}) => valueC <= highest(known) + FAR_ABOVE_C);
  const scale = valueScale(known, levels, rows);

  const lines = canvas({...plot, levels}, scale, ground, columns, rows, glyphs).map((cells, row) => [
    piece(`${(scale.labels.get(row) ?? '').padStart(LABEL_CELLS)} `),
    piece(glyphs.axis, 'mark'),
    ...joinCells(cells),
  ]);
  if (humidity !== undefined) {
    const moist = extents(
      humidity.atDays,
      humidity.rhPercent,
      fromDays,
      toDays,
      columns,
      HUMIDITY_PAUSE_DAYS,
    );
    lines.push([piece(' % RH '), piece(glyphs.axis, 'mark'), ...humidityRow(moist, glyphs)]);
  }
  if (lit !== undefined)
    lines.push([
      piece('light '),
      piece(glyphs.axis, 'mark'),
      ...lightRow(lit, fromDays, toDays, columns, glyphs),
    ]);
  lines.push([piece(' '.repeat(GUTTER)), ...basisRow(ground, glyphs)]);
  const ticks = timeTicks(fromDays, toDays, columns, plot.civil);
  lines.push([piece(' '.repeat(GUTTER) + tickLine(ticks, fromDays, toDays, columns))]);
  return lines;
}

/** Infinite where nothing is known: then every level matters. */
function highest(known: ReturnType<typeof extents>): number {
  const highs = known.flatMap(extent => (extent === undefined ? [] : [extent.high]));
  return highs.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...highs);
}

function canvas(
  plot: CoursePlot,
  scale: ValueScale,
  ground: readonly Ground[],
  columns: number,
  rows: number,
  glyphs: Glyphs,
): Piece[][] {
  const cells: Piece[][] = Array.from({length: rows}, () => Array.from({length: columns}, () => piece(' ')));
  const set = (row: number, column: number, one: Piece) => {
    if (column >= 0 && column < columns) cells[row]![column] = one;
  };
  const now = Math.floor(((plot.nowDays - plot.fromDays) / (plot.toDays - plot.fromDays)) * columns);
  for (let row = 0; row < rows; row++) set(row, now, piece(glyphs.now, 'mark'));

  const byRow = levelsByRow(plot.levels, scale);
  for (const row of byRow.keys())
    for (let column = 0; column < columns; column++) set(row, column, piece(glyphs.level, 'mark'));

  drawCurve(plot, scale, ground, columns, rows, glyphs, set);

  for (const [row, name] of byRow) {
    const label = ` ${cut(name, columns - 4, glyphs.more)} `;
    const start = emptiest(cells[row]!, label.length, glyphs);
    [...label].forEach((letter, k) => {
      set(row, start + k, piece(letter));
    });
  }
  return cells;
}

function drawCurve(
  {course, fromDays, toDays}: CoursePlot,
  scale: ValueScale,
  ground: readonly Ground[],
  columns: number,
  rows: number,
  glyphs: Glyphs,
  set: (row: number, column: number, one: Piece) => void,
): void {
  const grid = dotGrid(columns, rows, glyphs.braille);
  const perCell = grid.steps / columns;
  const level = (value: number) => Math.round(scale.share(value) * (grid.levels - 1));
  extents(course.atDays, course.temperatureC, fromDays, toDays, grid.steps).forEach((extent, step) => {
    const under = ground[Math.floor(step / perCell)]!;
    // Half the dots where nothing was read, so that it shows without colour.
    if (extent === undefined || (perCell > 1 && under !== 'read' && step % 2 === 1)) return;
    grid.mark(step, level(extent.high), level(extent.low), PLAIN_SIGNS[under]);
  });
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const sign = grid.cell(column, row);
      if (sign !== undefined) set(row, column, piece(sign, KINDS[ground[column]!]));
    }
}

/** Where a name hides least of the curve: at the right end, at the left end, else wherever it is emptiest. */
function emptiest(row: readonly Piece[], width: number, glyphs: Glyphs): number {
  const hidden = (start: number) =>
    row.slice(start, start + width).filter(({text}) => text !== ' ' && text !== glyphs.level).length;
  const last = Math.max(0, row.length - width - 1);
  let best = last;
  for (const start of [1, ...Array.from({length: last}, (_, i) => last - i)])
    if (hidden(start) < hidden(best)) best = start;
  return best;
}
