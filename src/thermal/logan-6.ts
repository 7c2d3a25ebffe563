// The Logan curve: exponential growth of the rate, broken down by heat.
import {type ExponentialFall, growth, growthArea, growthFault, growthOptimum} from './exponential-fall.ts';
import type {Fault, Landmarks, RateModel} from './rate.ts';

/** Rate = psi·(e^(rho·T) − e^(rho·upper − (upper − T)/delta)), T and `upper` counted from `base`. */
export interface Logan6Spec extends ExponentialFall {
  readonly kind: 'logan-6';
  readonly psi: number;
  /** °C from which temperatures count, and below which nothing develops; default 0. */
  readonly base?: number | undefined;
}

/**
 * r(T) = ψ·(e^(ρT) − e^(ρTm − (Tm − T)/δ)) with T above a base. It never reaches 0 in the cold, so it is cut off at
 * the base. Logan, Wollkind, Hoyt & Tanigoshi 1976, Environmental Entomology 5:1133–1140, equation 6 (from memory).
 * @throws RangeError where the parameters lie outside the domain
 */
export function logan6(spec: Logan6Spec): RateModel {
  const fault = logan6Fault(spec);
  if (fault !== undefined) throw new RangeError(`logan-6: ${fault.field} ${fault.what}`);
  const {psi, base = 0, upper} = spec;
  const g = growth(spec);
  const area = growthArea(spec);
  const begin = area(0);
  return {
    ratePerDay: temperature => {
      const t = temperature - base;
      return t > 0 && t < upper ? psi * g(t) : 0;
    },
    antiderivative: temperature => {
      const t = Math.min(upper, temperature - base);
      return t > 0 ? psi * (area(t) - begin) : 0;
    },
  };
}

export function logan6Landmarks(spec: Logan6Spec): Landmarks {
  const {base = 0, upper} = spec;
  return {lowerC: null, optimumC: base + Math.max(0, growthOptimum(spec)), upperC: base + upper};
}

export function logan6Fault(spec: Logan6Spec): Fault | undefined {
  if (!(spec.psi > 0)) return {field: 'psi', what: 'must be above 0'};
  if (!(spec.upper > 0)) return {field: 'upper', what: 'must be above 0: it counts from the base'};
  return growthFault(spec);
}
