// The dose W as a measure on the grid of its stage.
import {keptMeasure, type Measure} from './measure.ts';
import {remembered} from './remembered.ts';
import {distributionOf, type Spread} from './spread.ts';

/** Chances below this at either end of W are left out. */
const NEGLIGIBLE = 1e-6;

/** The width of a cell in a stage of this spread: a third of the spread, a whole number of them in the mean dose. */
export function stepOf({cv}: Spread): number {
  return 1 / Math.min(400, Math.max(12, Math.ceil(3 / cv)));
}

/**
 * W on the grid. Laying entries into cells, taking W in cells and reading masses evenly over cells add step²/3 to
 * the variance (1/6 + 1/12 + 1/12); W is drawn in towards its mean so that the sum has the variance it should.
 */
export const kernelOf = remembered(
  200,
  (spread: Spread): Measure => {
    const step = stepOf(spread);
    const points = dosePoints(spread, step, step * step * (1 / 3));
    const first = Math.round(points.from / step);
    return keptMeasure(step, first, points.mass);
  },
  ({family, cv}) => `${family} ${cv}`,
);

/**
 * W at even steps through 1, as masses that sum to one, with some variance taken off: all at 1 where that takes all.
 */
export function dosePoints(
  {family, cv}: Spread,
  step: number,
  lessVariance: number,
): {readonly from: number; readonly mass: Float64Array} {
  const kept = cv === 0 ? 0 : 1 - lessVariance / (cv * cv);
  if (kept <= 0) return {from: 1, mass: Float64Array.of(1)};
  const drawnIn = Math.sqrt(kept);
  const share = distributionOf({family, cv});
  const upTo = (dose: number) => share(1 + (dose - 1) / drawnIn);

  let low = 0;
  while (upTo(1 + (low - 0.5) * step) > NEGLIGIBLE) low--;
  let high = 0;
  while (1 - upTo(1 + (high + 0.5) * step) > NEGLIGIBLE) high++;
  const mass = new Float64Array(high - low + 1);
  let below = upTo(1 + (low - 0.5) * step);
  const start = below;
  for (let i = 0; i < mass.length; i++) {
    const above = upTo(1 + (low + i + 0.5) * step);
    mass[i] = above - below;
    below = above;
  }
  for (let i = 0; i < mass.length; i++) mass[i] = mass[i]! / (below - start);
  return {from: 1 + low * step, mass};
}
