// A smooth curve through points that never swings beyond two neighbours.

/** The cubics c0 + c1·s + c2·s² + c3·s³ of s = x − x[i], one for each interval between two points. */
export type Cubic = readonly [c0: number, c1: number, c2: number, c3: number];

/**
 * The shape-preserving piecewise cubic through (x, y), continuous with its slope: where the points rise it rises,
 * where they turn it is level. For x rising, at least three points.
 *
 * Fritsch & Carlson 1980, SIAM J. Numer. Anal. 17:238–246 (the conditions); inner slopes as the weighted harmonic
 * mean of Fritsch & Butland 1984, SIAM J. Sci. Stat. Comput. 5:300–304; both from memory.
 */
export function monotoneCubic(x: readonly number[], y: readonly number[]): Cubic[] {
  const width = x.slice(1).map((right, i) => right - x[i]!);
  const secant = width.map((h, i) => (y[i + 1]! - y[i]!) / h);
  const slope = slopes(width, secant);
  return width.map((h, i) => {
    const [left, right, mean] = [slope[i]!, slope[i + 1]!, secant[i]!];
    return [y[i]!, left, (3 * mean - 2 * left - right) / h, (left + right - 2 * mean) / h ** 2];
  });
}

function slopes(width: readonly number[], secant: readonly number[]): number[] {
  const last = width.length - 1;
  const inner = secant.slice(1).map((after, i) => {
    const before = secant[i]!;
    if (before * after <= 0) return 0;
    const weightBefore = width[i]! + 2 * width[i + 1]!;
    const weightAfter = 2 * width[i]! + width[i + 1]!;
    return (weightBefore + weightAfter) / (weightBefore / before + weightAfter / after);
  });
  return [
    endSlope(width[0]!, width[1]!, secant[0]!, secant[1]!),
    ...inner,
    endSlope(width[last]!, width[last - 1]!, secant[last]!, secant[last - 1]!),
  ];
}

/** The slope of the parabola through the last three points, held between 0 and three times the outer secant. */
function endSlope(outerWidth: number, innerWidth: number, outer: number, inner: number): number {
  const parabola = ((2 * outerWidth + innerWidth) * outer - outerWidth * inner) / (outerWidth + innerWidth);
  if (parabola * outer <= 0) return 0;
  return Math.abs(parabola) > 3 * Math.abs(outer) ? 3 * outer : parabola;
}
