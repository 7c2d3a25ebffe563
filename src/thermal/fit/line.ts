// Lower threshold and thermal constant from days at constant temperatures, by two straight lines.
import {type Observed, sumOfProducts, unweighted, type Weights, weightedMean} from './observed.ts';

export interface LineFit {
  readonly lowerC: number;
  readonly degreeDays: number;
  /** Standard errors; null with fewer than three rows. */
  readonly lowerSe: number | null;
  readonly degreeDaysSe: number | null;
  /** Of the line that was drawn: of 1/D on T, or of D·T on D. */
  readonly r2: number;
}

/**
 * The line 1/D = a + b·T by least squares: T0 = −a/b, K = 1/b. Standard errors as Campbell, Frazer, Gilbert,
 * Gutierrez & Mackauer 1974, Journal of Applied Ecology 11:431–438 (formulas from memory):
 * SE(K) = SE(b)/b², SE(T0) = (r̄/b)·√(s²/(N·r̄²) + (SE(b)/b)²), with r̄ the mean rate and s² the residual variance.
 * Where the rates do not rise with temperature the constant is not above 0: no threshold can be told.
 */
export function rateLine(rows: readonly Observed[], weights: Weights = unweighted(rows)): LineFit {
  const temperatures = rows.map(({temperature}) => temperature);
  const rates = rows.map(({days}) => 1 / days);
  const spread = sumOfProducts(temperatures, temperatures, weights);
  const common = sumOfProducts(temperatures, rates, weights);
  const slope = common / spread;
  const meanRate = weightedMean(rates, weights);
  const lowerC = weightedMean(temperatures, weights) - meanRate / slope;
  const variance = residualVariance(rates, weights, common ** 2 / spread);
  const slopeSe = variance === null ? null : Math.sqrt(variance / spread);
  return {
    lowerC,
    degreeDays: 1 / slope,
    lowerSe:
      variance === null || slopeSe === null
        ? null
        : (meanRate / slope) * Math.sqrt(variance / (rows.length * meanRate ** 2) + (slopeSe / slope) ** 2),
    degreeDaysSe: slopeSe === null ? null : slopeSe / slope ** 2,
    r2: common ** 2 / (spread * sumOfProducts(rates, rates, weights)),
  };
}

/**
 * The reduced major axis of D·T on D: D·T = K + T0·D, with T0 = sign(r)·s(DT)/s(D), K the mean of D·T less T0 times
 * that of D. Ikemoto & Takai 2000, Environmental Entomology 29:671–682. Standard errors as for the least-squares
 * slope and intercept of the same points, the usual approximation (Sokal & Rohlf, Biometry; from memory).
 */
export function majorAxis(rows: readonly Observed[], weights: Weights = unweighted(rows)): LineFit {
  const days = rows.map(row => row.days);
  const products = rows.map(row => row.days * row.temperature);
  const spread = sumOfProducts(days, days, weights);
  const height = sumOfProducts(products, products, weights);
  const common = sumOfProducts(days, products, weights);
  const lowerC = Math.sign(common) * Math.sqrt(height / spread);
  const meanDays = weightedMean(days, weights);
  const variance = residualVariance(products, weights, common ** 2 / spread);
  return {
    lowerC,
    degreeDays: weightedMean(products, weights) - lowerC * meanDays,
    lowerSe: variance === null ? null : Math.sqrt(variance / spread),
    degreeDaysSe: variance === null ? null : Math.sqrt(variance * (1 / rows.length + meanDays ** 2 / spread)),
    r2: common ** 2 / (spread * height),
  };
}

/** Of what a line leaves unexplained; null where nothing is left to tell it by. */
function residualVariance(y: readonly number[], weights: Weights, explained: number): number | null {
  if (y.length < 3) return null;
  return Math.max(0, sumOfProducts(y, y, weights) - explained) / (y.length - 2);
}
