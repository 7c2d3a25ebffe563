// Which temperatures lie on the straight part of a rate curve.
import {rateLine} from './line.ts';
import {type Observed, sumOfProducts, unweighted, weightedMean} from './observed.ts';

/** Student's t, one per cent on one side, by degrees of freedom from 1. Standard tables. */
const T99 = [31.82, 6.965, 4.541, 3.747, 3.365, 3.143, 2.998, 2.896, 2.821, 2.764] as const;
/** Nobody wonders at less than this share of the rate. */
const NOTICED = 0.03;
const FEWEST = 4;

/**
 * Rows beyond the straight part: at the warm end no faster than the row before, or slower than the line of the others
 * allows by chance (one in a hundred); at the cold end faster than it allows. Ends are taken off one at a time while
 * at least three rows are left.
 */
export function outsideLinearRange(rows: readonly Observed[]): Observed[] {
  let inside = [...rows].sort((a, b) => a.temperature - b.temperature);
  const outside: Observed[] = [];
  while (inside.length >= FEWEST) {
    const [cold, warm] = [inside[0]!, inside.at(-1)!];
    if (isTooSlow(warm, inside.slice(0, -1))) {
      outside.push(warm);
      inside = inside.slice(0, -1);
    } else if (isTooFast(cold, inside.slice(1))) {
      outside.push(cold);
      inside = inside.slice(1);
    } else break;
  }
  return outside.sort((a, b) => a.temperature - b.temperature);
}

function isTooSlow(row: Observed, others: readonly Observed[]): boolean {
  return row.days >= others.at(-1)!.days || beside(row, others) < -1;
}

function isTooFast(row: Observed, others: readonly Observed[]): boolean {
  return row.days < others[0]!.days || beside(row, others) > 1;
}

/** How far a row's rate lies from the line of the others, in what chance allows. */
function beside({temperature, days}: Observed, others: readonly Observed[]): number {
  const {lowerC, degreeDays} = rateLine(others);
  const line = (at: number) => (at - lowerC) / degreeDays;
  const weights = unweighted(others);
  const temperatures = others.map(other => other.temperature);
  const spread = sumOfProducts(temperatures, temperatures, weights);
  const freedom = others.length - 2;
  const left = others.reduce((sum, other) => sum + (1 / other.days - line(other.temperature)) ** 2, 0);
  const error = Math.sqrt(
    (left / freedom) *
      (1 + 1 / others.length + (temperature - weightedMean(temperatures, weights)) ** 2 / spread),
  );
  const allowed = Math.max(T99[Math.min(freedom, T99.length) - 1]! * error, NOTICED / days);
  return (1 / days - line(temperature)) / allowed;
}
