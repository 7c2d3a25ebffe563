// How much of something lies where along a dose axis: masses in cells of one width.
import {rowOf} from './arena.ts';

/**
 * Cell i is centred on (first + i) · step, and its mass lies evenly over its width. The numbers stand in a row shared
 * with others: cell i has mass scale · cells[mass + i], and scale · (cells[sums + i] − cells[sums]) lies below it.
 */
export interface Measure {
  readonly step: number;
  readonly first: number;
  readonly length: number;
  readonly scale: number;
  readonly cells: Float64Array;
  readonly mass: number;
  readonly sums: number;
}

/** Cells that are still to be filled, and their sums: made ready by `summed`. */
export function emptyMeasure(step: number, first: number, length: number): Measure {
  const {cells, at} = rowOf(2 * length + 1, length + 1);
  return {step, first, length, scale: 1, cells, mass: at, sums: at + length};
}

/** A measure whose masses are all in place. */
export function summed(measure: Measure): Measure {
  const {cells, mass, sums, length} = measure;
  let sum = 0;
  for (let i = 0; i < length; i++) {
    sum += cells[mass + i]!;
    cells[sums + i + 1] = sum;
  }
  return measure;
}

/** A measure that is kept for good, in room of its own. */
export function keptMeasure(step: number, first: number, masses: Float64Array): Measure {
  const {length} = masses;
  const cells = new Float64Array(2 * length + 1);
  cells.set(masses);
  return summed({step, first, length, scale: 1, cells, mass: 0, sums: length});
}

export function wholeOf({cells, sums, length, scale}: Measure): number {
  return scale * (cells[sums + length]! - cells[sums]!);
}

/** The mass up to a dose. */
export function massUpTo({step, first, length, scale, cells, mass, sums}: Measure, dose: number): number {
  const position = dose / step - first + 0.5;
  if (position <= 0) return 0;
  if (position >= length) return scale * (cells[sums + length]! - cells[sums]!);
  const cell = Math.floor(position);
  return scale * (cells[sums + cell]! - cells[sums]! + (position - cell) * cells[mass + cell]!);
}

/** The mass beyond a dose. */
export function massBeyond(measure: Measure, dose: number): number {
  return wholeOf(measure) - massUpTo(measure, dose);
}

/** The lower edge of the first cell and the upper edge of the last. */
export function reachOf({step, first, length}: Measure): readonly [from: number, to: number] {
  return [(first - 0.5) * step, (first + length - 0.5) * step];
}

/**
 * Lay a mass evenly from one place to another, both counted in cells from the centre of the first, in pieces no longer
 * than a cell. Each piece is shared between the two nearest centres so that its mean stays exact, however sharp it is
 * beside a cell.
 */
export function lay(cells: Float64Array, at: number, from: number, to: number, mass: number) {
  const pieces = Math.max(1, Math.ceil(to - from));
  const width = (to - from) / pieces;
  const share = mass / pieces;
  let position = from + width / 2;
  for (let piece = 0; piece < pieces; piece++) {
    const cell = Math.floor(position);
    const upper = share * (position - cell);
    cells[at + cell] = cells[at + cell]! + share - upper;
    cells[at + cell + 1] = cells[at + cell + 1]! + upper;
    position += width;
  }
}

/** The measure of a sum: one dose from each, independently. Steps must agree. */
export function convolve(a: Measure, b: Measure): Measure {
  const [long, short] = a.length < b.length ? [b, a] : [a, b];
  const sum = emptyMeasure(a.step, a.first + b.first, long.length + short.length - 1);
  for (let j = 0; j < short.length; j += 4) addFourTimes(sum, long, short, j);
  return summed(sum);
}

/**
 * Adds one measure as often as four neighbouring cells of another have mass. Four together touch every cell of the sum
 * once instead of four times: here the model spends much of its time.
 */
function addFourTimes(sum: Measure, long: Measure, short: Measure, j: number) {
  const {cells, mass} = sum;
  const {cells: from, mass: begin, length} = long;
  const scale = long.scale * short.scale;
  const at = short.mass + j;
  const four = Math.min(4, short.length - j);
  const w0 = scale * short.cells[at]!;
  const w1 = four > 1 ? scale * short.cells[at + 1]! : 0;
  const w2 = four > 2 ? scale * short.cells[at + 2]! : 0;
  const w3 = four > 3 ? scale * short.cells[at + 3]! : 0;
  const to = mass + j;
  let m1 = 0;
  let m2 = 0;
  let m3 = 0;
  for (let i = 0; i < length; i++) {
    const m0 = from[begin + i]!;
    cells[to + i] = cells[to + i]! + (w0 * m0 + w1 * m1 + w2 * m2 + w3 * m3);
    m3 = m2;
    m2 = m1;
    m1 = m0;
  }
  const end = to + length;
  if (four > 1) cells[end] = cells[end]! + (w1 * m1 + w2 * m2 + w3 * m3);
  if (four > 2) cells[end + 1] = cells[end + 1]! + (w2 * m1 + w3 * m2);
  if (four > 3) cells[end + 2] = cells[end + 2]! + w3 * m1;
}

/** A measure and another one on any grid, together on the grid of the first. */
export function together(measure: Measure, other: Measure): Measure {
  const {step, first, length} = measure;
  const [from, to] = reachOf(other);
  const start = Math.min(0, Math.floor(from / step - first));
  const end = Math.max(length, Math.floor(to / step - first) + 2);
  const both = emptyMeasure(step, first + start, end - start);
  const {cells, mass} = both;
  for (let i = 0; i < length; i++) cells[mass - start + i] = measure.scale * measure.cells[measure.mass + i]!;
  const offset = other.first - first - start;
  if (other.step === step && Number.isInteger(offset))
    for (let i = 0; i < other.length; i++)
      cells[mass + offset + i] = cells[mass + offset + i]! + other.scale * other.cells[other.mass + i]!;
  else {
    const width = other.step / step;
    const begin = from / step - first - start;
    for (let i = 0; i < other.length; i++)
      lay(
        cells,
        mass,
        begin + i * width,
        begin + (i + 1) * width,
        other.scale * other.cells[other.mass + i]!,
      );
  }
  return summed(both);
}

/** A measure moved along its axis, and scaled. */
export function shifted(measure: Measure, by: number, times: number): Measure {
  const {step, first, length, scale, cells, mass, sums} = measure;
  return {step, first: first + by / step, length, scale: scale * times, cells, mass, sums};
}

/** The cells of a measure from one to before another. */
function part({step, first, scale, cells, mass, sums}: Measure, from: number, to: number): Measure {
  return {step, first: first + from, length: to - from, scale, cells, mass: mass + from, sums: sums + from};
}

/** The same measures in room of their own, all in one piece. */
export function settled(measures: readonly (Measure | null)[]): (Measure | null)[] {
  let room = 0;
  for (const measure of measures) room += measure === null ? 0 : 2 * measure.length + 1;
  const cells = new Float64Array(room);
  let at = 0;
  return measures.map(measure => {
    if (measure === null) return null;
    const {step, first, length, scale, mass, sums} = measure;
    for (let i = 0; i < length; i++) cells[at + i] = measure.cells[mass + i]!;
    for (let i = 0; i <= length; i++) cells[at + length + i] = measure.cells[sums + i]!;
    at += 2 * length + 1;
    return {step, first, length, scale, cells, mass: at - 2 * length - 1, sums: at - length - 1};
  });
}

/** Without the cells that lie wholly below a dose. */
export function withoutBelow(measure: Measure, dose: number): Measure {
  const {step, first, length} = measure;
  const passed = Math.min(length - 1, Math.floor(dose / step - first + 0.5));
  return passed <= 0 ? measure : part(measure, passed, length);
}

/** Without the outer cells that hold next to nothing. */
export function trimmed(measure: Measure, negligible: number): Measure {
  const {length, cells, sums, scale} = measure;
  const least = negligible / scale;
  const [lowest, highest] = [cells[sums]!, cells[sums + length]!];
  let from = 0;
  while (from < length - 1 && cells[sums + from + 1]! - lowest <= least) from++;
  let to = length;
  while (to > from + 1 && highest - cells[sums + to - 1]! <= least) to--;
  return part(measure, from, to);
}
