// The Lactin curve moved down, so that it meets the axis at a lower threshold too.
import {type ExponentialFall, growth, growthArea, growthFault, growthOptimum} from './exponential-fall.ts';
import {integralOver} from './gauss-legendre.ts';
import type {Fault, Landmarks, RateModel} from './rate.ts';
import {rootBetween} from './root.ts';

/** Rate = e^(rho·T) − e^(rho·upper − (upper − T)/delta) + lambda. */
export interface Lactin2Spec extends ExponentialFall {
  readonly kind: 'lactin-2';
  /** How far the curve is moved; below 0 gives it a lower threshold. */
  readonly lambda: number;
}

/**
 * r(T) = e^(ρT) − e^(ρTm − (Tm − T)/δ) + λ, 0 outside its two roots. Where λ is not below 0 there is no lower root;
 * the rate then begins at 0 °C. Lactin, Holliday, Johnson & Craigen 1995, Environmental Entomology 24:68–75 (from
 * memory).
 * @throws RangeError where the parameters lie outside the domain
 */
export function lactin2(spec: Lactin2Spec): RateModel {
  const fault = lactin2Fault(spec);
  if (fault !== undefined) throw new RangeError(`lactin-2: ${fault.field} ${fault.what}`);
  const {lambda} = spec;
  const g = growth(spec);
  const area = growthArea(spec);
  const [begin, end] = roots(spec);
  const before = area(begin);
  const ratePerDay = (temperature: number) =>
    temperature > begin && temperature < end ? Math.max(0, g(temperature) + lambda) : 0;
  return {
    ratePerDay,
    antiderivative: temperature => {
      const t = Math.min(end, temperature);
      if (!(t > begin)) return 0;
      // Just above the threshold the difference of two large areas would keep few digits.
      if (t - begin < NEAR_C) return integralOver(ratePerDay, begin, t);
      return area(t) - before + lambda * (t - begin);
    },
  };
}

const NEAR_C = 1;

export function lactin2Landmarks(spec: Lactin2Spec): Landmarks {
  const [begin, end] = roots(spec);
  return {lowerC: spec.lambda < 0 ? begin : null, optimumC: growthOptimum(spec), upperC: end};
}

export function lactin2Fault(spec: Lactin2Spec): Fault | undefined {
  const fault = growthFault(spec);
  if (fault !== undefined) return fault;
  const highest = growth(spec)(growthOptimum(spec));
  if (!(highest + spec.lambda > 0))
    return {
      field: 'lambda',
      what: `must be above ${(-highest).toPrecision(4)}, else no temperature has a rate above 0`,
    };
  return undefined;
}

/** Where the rate begins and ends. g < e^(ρT), so that the lower root lies above ln(−λ)/ρ. */
function roots(spec: Lactin2Spec): readonly [begin: number, end: number] {
  const {rho, upper, delta, lambda} = spec;
  const g = growth(spec);
  const rate = (temperature: number) => g(temperature) + lambda;
  const optimum = growthOptimum(spec);
  const begin = lambda < 0 ? rootBetween(rate, Math.log(-lambda) / rho, optimum) : 0;
  // Beyond Tm the fall is steeper than e^(ρTm)·k per degree: the root of λ > 0 is no further than this.
  const k = 1 / delta - rho;
  const beyond = lambda > 0 ? lambda / (Math.exp(rho * upper) * k) : 0;
  return [begin, rootBetween(rate, optimum, upper + beyond)];
}
