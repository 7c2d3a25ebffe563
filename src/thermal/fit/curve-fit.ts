// A nonlinear rate model through days at constant temperatures, by least squares of the rates from many beginnings.
import {type RateModelSpec, rateModel} from '../rate-model.ts';
import {type Curve, type CurveKind, curveOf} from './curves.ts';
import {leastSquares} from './least-squares.ts';
import {type Observed, unweighted, type Weights} from './observed.ts';

export interface CurveFit {
  readonly model: RateModelSpec;
  readonly parameters: number;
  /** Sum of squares of the rates that is left, per day². */
  readonly rss: number;
  /** Null where the rows are too few for it. */
  readonly aicc: number | null;
}

/** So many of the best beginnings are followed to their end. */
const FOLLOWED = 10;

/** @returns undefined where no curve of this kind comes near the rows, or they are fewer than its parameters */
export function fitCurve(
  kind: CurveKind,
  rows: readonly Observed[],
  weights: Weights = unweighted(rows),
): CurveFit | undefined {
  const curve = curveOf(kind, rows, weights);
  if (rows.length < curve.parameters) return undefined;
  const residuals = residualsOf(curve, rows, weights);
  const sumAt = (free: readonly number[]) => residuals(free).reduce((sum, each) => sum + each * each, 0);
  const begun = product(curve.starts)
    .map(free => ({free, sum: sumAt(free)}))
    .filter(({sum}) => Number.isFinite(sum))
    .sort((a, b) => a.sum - b.sum)
    .slice(0, FOLLOWED);
  const ends = begun.map(({free}) => leastSquares(residuals, free));
  const best = ends.sort((a, b) => a.sumOfSquares - b.sumOfSquares)[0];
  const model = best === undefined ? undefined : curve.spec(best.at);
  if (best === undefined || model === undefined) return undefined;
  return {
    model,
    parameters: curve.parameters,
    rss: best.sumOfSquares,
    aicc: aicc(best.sumOfSquares, rows.length, curve.parameters),
  };
}

/** The sum of squares that any model leaves on the rows. */
export function rssOf(
  model: RateModelSpec,
  rows: readonly Observed[],
  weights: Weights = unweighted(rows),
): number {
  const {ratePerDay} = rateModel(model);
  return rows.reduce(
    (sum, {temperature, days}, i) => sum + weights[i]! * (1 / days - ratePerDay(temperature)) ** 2,
    0,
  );
}

/**
 * Akaike's criterion for few rows, n·ln(RSS/n) + 2k + 2k(k + 1)/(n − k − 1), with k one more than the parameters for
 * the variance. Burnham & Anderson 2002, Model Selection and Multimodel Inference, 2nd ed. (from memory). The lowest
 * of several models of the same rows is the best supported.
 * @returns null where n is not above k + 1, or nothing is left over
 */
export function aicc(rss: number, rows: number, parameters: number): number | null {
  const k = parameters + 1;
  if (rows <= k + 1 || !(rss > 0)) return null;
  return rows * Math.log(rss / rows) + 2 * k + (2 * k * (k + 1)) / (rows - k - 1);
}

function residualsOf(curve: Curve, rows: readonly Observed[], weights: Weights) {
  const roots = weights.map(Math.sqrt);
  return (free: readonly number[]): number[] => {
    const spec = curve.spec(free);
    if (spec === undefined) return rows.map(() => Number.NaN);
    const {ratePerDay} = rateModel(spec);
    return rows.map(({temperature, days}, i) => roots[i]! * (ratePerDay(temperature) - 1 / days));
  };
}

/** Every choice of one value from each list. */
function product(lists: readonly (readonly number[])[]): number[][] {
  return lists.reduce<number[][]>(
    (chosen, list) => chosen.flatMap(some => list.map(value => [...some, value])),
    [[]],
  );
}
