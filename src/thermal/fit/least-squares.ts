// The smallest sum of squares from a starting point.

/** Relative step of the central differences: the cube root of the precision of numbers. */
const STEP = 6e-6;
const MOST_ROUNDS = 300;
/** So many rounds that gain next to nothing end the search. */
const STALE_ROUNDS = 4;
const GAIN = 1e-13;
const STIFFEST = 1e12;

export interface Minimum {
  readonly at: readonly number[];
  readonly sumOfSquares: number;
}

/**
 * Levenberg–Marquardt with derivatives by central differences: (JᵀJ + λ·diag JᵀJ)·δ = −Jᵀr, λ smaller after a gain,
 * larger after a loss. Marquardt 1963, Journal of the Society for Industrial and Applied Mathematics 11:431–441. The
 * variables should be of size about 1. Points at which a residual is no number are never gone to.
 */
export function leastSquares(
  residuals: (at: readonly number[]) => readonly number[],
  start: readonly number[],
): Minimum {
  let at = start;
  let left = residuals(at);
  let sum = squares(left);
  let damping = 1e-3;
  for (let round = 0, stale = 0; round < MOST_ROUNDS && stale < STALE_ROUNDS && sum > 0; round++) {
    const {normal, gradient} = equations(jacobian(residuals, at), left);
    let gained = 0;
    while (damping < STIFFEST) {
      const step = solved(
        normal.map((row, i) => row.map((value, j) => (i === j ? value * (1 + damping) + 1e-300 : value))),
        gradient,
      );
      const next = at.map((value, i) => value - step[i]!);
      const nextLeft = residuals(next);
      const nextSum = squares(nextLeft);
      if (nextSum < sum) {
        gained = (sum - nextSum) / sum;
        [at, left, sum] = [next, nextLeft, nextSum];
        damping = Math.max(damping / 9, 1e-12);
        break;
      }
      damping *= 4;
    }
    if (damping >= STIFFEST) break;
    stale = gained < GAIN ? stale + 1 : 0;
  }
  return {at, sumOfSquares: sum};
}

function squares(values: readonly number[]): number {
  const sum = values.reduce((all, value) => all + value * value, 0);
  return Number.isNaN(sum) ? Number.POSITIVE_INFINITY : sum;
}

/** Derivatives of the residuals, a column a variable. */
function jacobian(
  residuals: (at: readonly number[]) => readonly number[],
  at: readonly number[],
): number[][] {
  return at.map((value, j) => {
    const step = STEP * Math.max(1, Math.abs(value));
    const moved = (by: number) => residuals(at.map((each, i) => (i === j ? each + by : each)));
    const [up, down] = [moved(step), moved(-step)];
    return up.map((each, i) => {
      const slope = (each - down[i]!) / (2 * step);
      return Number.isFinite(slope) ? slope : 0;
    });
  });
}

/** JᵀJ and Jᵀr. */
function equations(columns: readonly number[][], left: readonly number[]) {
  const dot = (a: readonly number[], b: readonly number[]) =>
    a.reduce((sum, value, i) => sum + value * b[i]!, 0);
  return {
    normal: columns.map(a => columns.map(b => dot(a, b))),
    gradient: columns.map(column => dot(column, left)),
  };
}

/** A·x = b for a symmetric, positive A: Gauss with the largest pivot first. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!]);
  const size = rows.length;
  for (let k = 0; k < size; k++) {
    let pivot = k;
    for (let i = k + 1; i < size; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[pivot]![k]!)) pivot = i;
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    for (let i = k + 1; i < size; i++) {
      const share = rows[i]![k]! / rows[k]![k]! || 0;
      for (let j = k; j <= size; j++) rows[i]![j] = rows[i]![j]! - share * rows[k]![j]!;
    }
  }
  const solution = Array.from({length: size}, () => 0);
  for (let i = size - 1; i >= 0; i--) {
    const known = rows[i]!.slice(i + 1, size).reduce(
      (sum, value, j) => sum + value * solution[i + 1 + j]!,
      0,
    );
    solution[i] = (rows[i]![size]! - known) / rows[i]![i]! || 0;
  }
  return solution;
}
