// Mean of a function over an interval by brute force, for checks that share no formula with what they check.

/** Composite Gauss–Legendre rule of three points (exact for degree 5 between kinks that fall on a cell's edge). */
export function meanOver(f: (x: number) => number, from: number, to: number, cells: number): number {
  const offset = Math.sqrt(3 / 5) / 2;
  const width = (to - from) / cells;
  let sum = 0;
  for (let i = 0; i < cells; i++) {
    const middle = from + (i + 0.5) * width;
    sum += (5 * f(middle - offset * width) + 8 * f(middle) + 5 * f(middle + offset * width)) / 18;
  }
  return sum / cells;
}
