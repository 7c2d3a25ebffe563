// How much of something lies where along a dose axis: masses in cells of one width.

/**
 * Cell i is centred on (first + i) · step, and its mass lies evenly over its width. `first` is whole where measures
 * are to be added.
 */
export interface Measure {
  readonly step: number;
  readonly first: number;
  readonly mass: Float64Array;
  /** Mass below the lower edge of cell i; one longer than `mass`, so the last is the whole. */
  readonly below: Float64Array;
}

/** A measure whose masses are all in place. */
export function measureOf(step: number, first: number, mass: Float64Array): Measure {
  const below = new Float64Array(mass.length + 1);
  for (let i = 0; i < mass.length; i++) below[i + 1] = below[i]! + mass[i]!;
  return {step, first, mass, below};
}

export function wholeOf({below}: Measure): number {
  return below[below.length - 1]!;
}

/** The mass up to a dose. */
export function massUpTo({step, first, mass, below}: Measure, dose: number): number {
  const position = dose / step - first + 0.5;
  if (position <= 0) return 0;
  if (position >= mass.length) return below[mass.length]!;
  const cell = Math.floor(position);
  return below[cell]! + (position - cell) * mass[cell]!;
}

/** The lower edge of the first cell and the upper edge of the last. */
export function reachOf({step, first, mass}: Measure): readonly [from: number, to: number] {
  return [(first - 0.5) * step, (first + mass.length - 0.5) * step];
}

/**
 * Lay a mass evenly from one dose to another into cells, in pieces no longer than a step. Each piece is shared
 * between the two nearest centres so that its mean stays exact, however sharp it is beside a cell.
 */
export function lay(
  cells: Float64Array,
  step: number,
  first: number,
  from: number,
  to: number,
  mass: number,
) {
  const pieces = Math.max(1, Math.ceil((to - from) / step));
  const width = (to - from) / pieces;
  const share = mass / pieces;
  for (let piece = 0; piece < pieces; piece++) {
    const position = (from + (piece + 0.5) * width) / step - first;
    const cell = Math.floor(position);
    const upper = share * (position - cell);
    cells[cell] = cells[cell]! + share - upper;
    cells[cell + 1] = cells[cell + 1]! + upper;
  }
}

/** The measure of a sum: one dose from each, independently. Steps must agree. */
export function convolve(a: Measure, b: Measure): Measure {
  const [long, short] = a.mass.length < b.mass.length ? [b.mass, a.mass] : [a.mass, b.mass];
  const mass = new Float64Array(long.length + short.length - 1);
  for (let j = 0; j < short.length; j++) {
    const weight = short[j]!;
    if (weight !== 0) for (let i = 0; i < long.length; i++) mass[i + j] = mass[i + j]! + weight * long[i]!;
  }
  return measureOf(a.step, a.first + b.first, mass);
}

/** A measure of whole `first` and another one on any grid, together on the grid of the first. */
export function together({step, first, mass}: Measure, other: Measure): Measure {
  const [from, to] = reachOf(other);
  const start = Math.min(first, Math.floor(from / step));
  const end = Math.max(first + mass.length, Math.floor(to / step) + 2);
  const cells = new Float64Array(end - start);
  cells.set(mass, first - start);
  if (other.step === step && Number.isInteger(other.first)) {
    const offset = other.first - start;
    for (let i = 0; i < other.mass.length; i++) cells[offset + i] = cells[offset + i]! + other.mass[i]!;
  } else
    other.mass.forEach((cell, i) => {
      lay(cells, step, start, from + i * other.step, from + (i + 1) * other.step, cell);
    });
  return measureOf(step, start, cells);
}

/** A measure moved along its axis, and scaled. */
export function shifted({step, first, mass}: Measure, by: number, scale: number): Measure {
  return measureOf(step, first + by / step, scale === 1 ? mass : mass.map(cell => cell * scale));
}

/** Without the cells that lie wholly below a dose. */
export function withoutBelow(measure: Measure, dose: number): Measure {
  const {step, first, mass} = measure;
  const passed = Math.min(mass.length - 1, Math.floor(dose / step - first + 0.5));
  return passed <= 0 ? measure : measureOf(step, first + passed, mass.subarray(passed));
}

/** Without the outer cells that hold next to nothing. */
export function trimmed({step, first, mass, below}: Measure, negligible: number): Measure {
  const whole = below[mass.length]!;
  let from = 0;
  while (from < mass.length - 1 && below[from + 1]! <= negligible) from++;
  let to = mass.length;
  while (to > from + 1 && whole - below[to - 1]! <= negligible) to--;
  return measureOf(step, first + from, mass.subarray(from, to));
}
