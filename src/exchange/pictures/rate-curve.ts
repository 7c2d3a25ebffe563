// A rate model as a curve over temperature, with what was published or seen drawn in. Height is the rate; the axis says
// the days it stands for, since these are what people know.
import {dotGrid} from './dots.ts';
import type {Glyphs} from './glyphs.ts';
import {joinCells, type Line, type Piece, piece} from './line.ts';

export interface RateCurve {
  readonly ratePerDay: (temperatureC: number) => number;
  readonly points: readonly RatePoint[];
  /** Temperatures that the picture must reach. */
  readonly fromC: number;
  readonly toC: number;
}

export interface RatePoint {
  readonly temperature: number;
  readonly days: number;
  /** It was left out of the fit. */
  readonly left?: boolean;
}

/** Cells left of the plot: "12.5 d │". */
const GUTTER = 8;
/** Rows below the curve: the axis and its temperatures. */
const FOOT = 1;
const LABEL_ROWS = 3;
const TICKS_C = [1, 2, 5, 10, 20];
/** Columns that the label of a tick takes, with room beside it. */
const TICK_COLUMNS = 5;

/** @param size at least 30 columns and 6 rows */
export function rateCurve(
  curve: RateCurve,
  size: {readonly columns: number; readonly rows: number},
  glyphs: Glyphs,
): Line[] {
  const columns = size.columns - GUTTER;
  const rows = size.rows - FOOT;
  const grid = dotGrid(columns, rows, glyphs.braille);
  const span = curve.toC - curve.fromC;
  const rates = Array.from({length: grid.steps + 1}, (_, step) =>
    curve.ratePerDay(curve.fromC + (span * step) / grid.steps),
  );
  const top = Math.max(...rates, ...curve.points.map(({days}) => 1 / days));
  if (!(top > 0)) return [[piece(' nothing develops between these temperatures')]];
  const level = (rate: number) => Math.round((1 - Math.max(0, rate) / top) * (grid.levels - 1));
  for (let step = 0; step < grid.steps; step++) {
    const [a, b] = [level(rates[step]!), level(rates[step + 1]!)];
    // Up to the next step's level but for its own dot, so that a slope is no thicker than it must be.
    grid.mark(step, Math.min(a, b + (b < a ? 1 : 0)), Math.max(a, b - (b > a ? 1 : 0)), '*');
  }

  const cells: Piece[][] = Array.from({length: rows}, (_, row) =>
    Array.from({length: columns}, (_, column) => {
      const sign = grid.cell(column, row);
      return sign === undefined ? piece(' ') : piece(sign);
    }),
  );
  for (const {temperature, days, left} of curve.points) {
    const column = Math.floor(((temperature - curve.fromC) / span) * columns);
    const row = Math.floor(((1 - 1 / days / top) * (grid.levels - 1)) / (grid.levels / rows));
    if (column >= 0 && column < columns) cells[row]![column] = piece(left === true ? 'x' : 'o', 'seen');
  }
  const lines = cells.map((line, row): Line => {
    const rate = top * (1 - (row + 0.5) / rows);
    const label = row % LABEL_ROWS === 0 && rate > 0 ? `${daysWords(1 / rate)} d` : '';
    return [piece(`${label.padStart(GUTTER - 2)} `), piece(glyphs.axis, 'mark'), ...joinCells(line)];
  });
  return [...lines, [piece(`${'°C'.padStart(GUTTER - 1)} ${tickWords(curve, columns)}`)]];
}

function daysWords(days: number): string {
  return days < 10 ? days.toFixed(1) : days < 1000 ? String(Math.round(days)) : '999+';
}

/** "10   15   20", each under its column. */
function tickWords({fromC, toC}: RateCurve, columns: number): string {
  const perC = columns / (toC - fromC);
  const step = TICKS_C.find(each => each * perC >= TICK_COLUMNS) ?? 50;
  const letters = Array.from({length: columns}, () => ' ');
  let free = 0;
  for (let at = Math.ceil(fromC / step) * step; at <= toC; at += step) {
    const start = Math.floor((at - fromC) * perC);
    const label = String(at);
    if (start < free || start + label.length > columns) continue;
    [...label].forEach((letter, k) => {
      letters[start + k] = letter;
    });
    free = start + label.length + 1;
  }
  return letters.join('').trimEnd();
}
