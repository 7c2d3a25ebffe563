// How animals of several classes divide among outcomes when only the numbers of each outcome are known.
import {lnChoose} from './gamma-function.ts';

/** Classes, outcomes and what is known of them: chances and flows run over the outcomes of class after class. */
export interface Allotment {
  /** ln of the chance that the outcomes come to these numbers. */
  readonly lnChance: number;
  /** Animals of each class that are expected to have each outcome. */
  readonly flows: readonly number[];
}

const TURNS = 100;
const CLOSE = 1e-7;

/**
 * Of animals in classes, so many had each outcome; nobody saw which. The chance is a coefficient: that of
 * Π y_b^m_b in Π_l (Σ_b q_lb y_b)^n_l. It is found at its saddle point (Daniels 1954, from memory), where y makes the
 * expected numbers those seen, by scaling in turn. There the numbers vary with the matrix diag(m) − Σ f f′/n; label by
 * label the chance of the very number is that of a single class, which is a binomial one, times by how much less the
 * classes leave open, and at most one. With one class it is exact.
 * @param counts n_l, above 0; need not be whole
 * @param outcomes m_b, above 0; their sum is that of the counts
 * @param chances q_lb
 */
export function allot(
  counts: readonly number[],
  outcomes: readonly number[],
  chances: readonly number[],
): Allotment {
  if (isFew(counts, outcomes)) return allotFew(counts, outcomes, chances);
  const [classes, width] = [counts.length, outcomes.length];
  const tilt = outcomes.map(() => 1);
  const sums = new Array<number>(classes).fill(0);
  const flows = new Array<number>(chances.length).fill(0);
  for (let turn = 0, error = 1; turn < TURNS && error > CLOSE; turn++) {
    for (let l = 0; l < classes; l++) {
      let sum = 0;
      for (let b = 0; b < width; b++) sum += chances[l * width + b]! * tilt[b]!;
      if (!(sum > 0)) return IMPOSSIBLE;
      sums[l] = sum;
    }
    error = 0;
    for (let b = 0; b < width; b++) {
      let expected = 0;
      for (let l = 0; l < classes; l++) {
        const flow = (counts[l]! * chances[l * width + b]! * tilt[b]!) / sums[l]!;
        flows[l * width + b] = flow;
        expected += flow;
      }
      if (!(expected > 0)) return IMPOSSIBLE;
      error = Math.max(error, Math.abs(expected / outcomes[b]! - 1));
      if (width > 1) tilt[b] = (tilt[b]! * outcomes[b]!) / expected;
    }
  }
  let lnChance = 0;
  for (let l = 0; l < classes; l++) lnChance += counts[l]! * Math.log(sums[l]!);
  for (let b = 0; b < width; b++) lnChance -= outcomes[b]! * Math.log(tilt[b]!);
  return {lnChance: lnChance + lnOfVeryNumbers(counts, outcomes, flows), flows};
}

/** Counts nearer to a whole number than this are whole. */
const ROUNDING = 1e-6;

function isWhole(count: number): boolean {
  return Math.abs(count - Math.round(count)) < ROUNDING;
}

/** So many ways for outcomes to come to no more than their numbers are gone through one by one. */
const FEW_WAYS = 64;

function isFew(counts: readonly number[], outcomes: readonly number[]): boolean {
  if (counts.length === 1) return false;
  const ways = outcomes.reduce((product, m) => product * (m + 1), 1);
  return ways <= FEW_WAYS + ROUNDING && counts.every(isWhole) && outcomes.every(isWhole);
}

/**
 * The same for few whole animals, exactly: animal after animal, the chance of every way in which the outcomes can have
 * come so far. A way is how often each outcome came but the last, which is that of all other animals. An animal of
 * class l has outcome b where the others come to what is left.
 */
function allotFew(
  counts: readonly number[],
  outcomes: readonly number[],
  chances: readonly number[],
): Allotment {
  const width = outcomes.length;
  const last = width - 1;
  const strides: number[] = [];
  let ways = 1;
  for (const m of outcomes.slice(0, last)) {
    strides.push(ways);
    ways *= Math.round(m) + 1;
  }
  const so = new Float64Array(ways);
  const oneMore = (l: number) => {
    const ofLast = chances[l * width + last]!;
    for (let way = ways - 1; way >= 0; way--) {
      let sum = so[way]! * ofLast;
      let rest = way;
      for (let b = last - 1; b >= 0; b--) {
        const stride = strides[b]!;
        if (rest < stride) continue;
        rest %= stride;
        sum += so[way - stride]! * chances[l * width + b]!;
      }
      so[way] = sum;
    }
  };
  const flows: number[] = [];
  let chance = 0;
  for (let one = 0; one < counts.length; one++) {
    so.fill(0);
    so[0] = 1;
    for (let l = 0; l < counts.length; l++)
      for (let i = l === one ? 1 : 0; i < Math.round(counts[l]!); i++) oneMore(l);
    const others = (b: number) => (b === last ? so[ways - 1]! : so[ways - 1 - strides[b]!]!);
    for (let b = 0; b < width; b++) flows.push(counts[one]! * chances[one * width + b]! * others(b));
    if (one > 0) continue;
    for (let b = 0; b < width; b++) chance += chances[b]! * others(b);
  }
  if (!(chance > 0)) return IMPOSSIBLE;
  return {lnChance: Math.log(chance), flows: flows.map(flow => flow / chance)};
}

const IMPOSSIBLE: Allotment = {lnChance: Number.NEGATIVE_INFINITY, flows: []};

/** ln of the chance of the very numbers where they are the expected ones. */
function lnOfVeryNumbers(
  counts: readonly number[],
  outcomes: readonly number[],
  flows: readonly number[],
): number {
  const width = outcomes.length;
  const matrix = covariances(counts, outcomes, flows);
  let rest = outcomes.reduce((sum, m) => sum + m, 0);
  let ln = 0;
  for (let b = 0; b + 1 < width; b++) {
    // The variance of this outcome's number given those before it: the pivots of Gauss's elimination.
    const open = Math.max(matrix[b * width + b]!, 1e-12);
    for (let row = b + 1; row + 1 < width; row++) {
      const times = matrix[row * width + b]! / open;
      for (let column = b + 1; column + 1 < width; column++)
        matrix[row * width + column] = matrix[row * width + column]! - times * matrix[b * width + column]!;
    }
    const m = outcomes[b]!;
    const others = rest - m;
    const ofOneClass = (m * others) / rest;
    ln += Math.min(0, lnBinomial(rest, m, m / rest) - Math.log(open / ofOneClass) / 2);
    rest = others;
  }
  return ln;
}

/** diag(m) − Σ_l f_l f_l′ / n_l. */
function covariances(
  counts: readonly number[],
  outcomes: readonly number[],
  flows: readonly number[],
): number[] {
  const width = outcomes.length;
  const matrix = new Array<number>(width * width).fill(0);
  for (let a = 0; a < width; a++)
    for (let b = 0; b < width; b++) {
      let sum = a === b ? outcomes[a]! : 0;
      for (let l = 0; l < counts.length; l++)
        sum -= (flows[l * width + a]! * flows[l * width + b]!) / counts[l]!;
      matrix[a * width + b] = sum;
    }
  return matrix;
}

/** ln of C(n, k) p^k (1 − p)^(n − k). */
function lnBinomial(n: number, k: number, p: number): number {
  return lnChoose(n, k) + k * Math.log(p) + (n - k) * Math.log1p(-p);
}
