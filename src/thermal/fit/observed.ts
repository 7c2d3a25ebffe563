// Days seen at constant temperatures: what every fit starts from.

/** Mean days that a stage took at one temperature. */
export interface Observed {
  readonly temperature: number;
  readonly days: number;
  /** Standard deviation among the individuals, and how many they were. */
  readonly sd?: number | undefined;
  readonly n?: number | undefined;
}

/** Weights whose mean is 1, so that what is left over reads as without them. */
export type Weights = readonly number[];

export function unweighted(rows: readonly Observed[]): Weights {
  return rows.map(() => 1);
}

/**
 * How surely the rate 1/D of each mean is known: its variance is that of D over D⁴ (first order), so that the weight
 * goes as n·D⁴/sd². Where no sd is given, as n.
 */
export function rateWeights(rows: readonly Observed[]): Weights {
  return scaled(rows.map(({days, sd, n = 1}) => (sd === undefined ? n : (n * days ** 4) / sd ** 2)));
}

/**
 * How surely each point lies across the line D·T = K + T0·D: an error of D moves it by D·(T − T0)/D ≈ K/D, so that
 * the weight goes as n·D²/sd², one over the squared coefficient of variation of the mean. Where no sd is given, as n.
 */
export function productWeights(rows: readonly Observed[]): Weights {
  return scaled(rows.map(({days, sd, n = 1}) => (sd === undefined ? n : (n * days ** 2) / sd ** 2)));
}

function scaled(weights: readonly number[]): Weights {
  const mean = weights.reduce((sum, weight) => sum + weight, 0) / weights.length;
  return weights.map(weight => weight / mean);
}

export function weightedMean(values: readonly number[], weights: Weights): number {
  return values.reduce((sum, value, i) => sum + value * weights[i]!, 0) / values.length;
}

/** Σ w·(x − x̄)·(y − ȳ) */
export function sumOfProducts(x: readonly number[], y: readonly number[], weights: Weights): number {
  const [meanX, meanY] = [weightedMean(x, weights), weightedMean(y, weights)];
  return x.reduce((sum, each, i) => sum + weights[i]! * (each - meanX) * (y[i]! - meanY), 0);
}
