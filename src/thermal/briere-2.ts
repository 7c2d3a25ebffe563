// The Briere curve with a free exponent: a slow start above the lower threshold, a sharp fall before the upper one.
import {integralOver} from './gauss-legendre.ts';
import type {Fault, Landmarks, RateModel} from './rate.ts';

/** Rate = a·T·(T − lower)·(upper − T)^(1/m). */
export interface Briere2Spec {
  readonly kind: 'briere-2';
  readonly a: number;
  readonly lower: number;
  readonly upper: number;
  readonly m: number;
}

/**
 * r(T) = a·T·(T − T0)·(TL − T)^(1/m) between T0 and TL, 0 outside and below 0 °C, where the formula turns negative.
 * Briere, Pracros, Le Roux & Pierre 1999, Environmental Entomology 28:22–29 (formula from memory).
 *
 * Antiderivative: with u = TL − T, s = TL − T0 and p = 1/m the rate is a·(TL − u)·(s − u)·u^p, whose integral is
 * G(u) = TL·s·u^(p+1)/(p+1) − (TL + s)·u^(p+2)/(p+2) + u^(p+3)/(p+3).
 * @throws RangeError where the parameters lie outside the domain
 */
export function briere2(spec: Briere2Spec): RateModel {
  const fault = briere2Fault(spec);
  if (fault !== undefined) throw new RangeError(`briere-2: ${fault.field} ${fault.what}`);
  const {a, lower, upper, m} = spec;
  const p = 1 / m;
  const begin = Math.max(lower, 0);
  const whole = upper - begin;

  const ratePerDay = (temperature: number) =>
    temperature > begin && temperature < upper
      ? a * temperature * (temperature - lower) * (upper - temperature) ** p
      : 0;
  const areaBelow = (u: number) =>
    u ** (p + 1) * ((upper * (upper - lower)) / (p + 1) - u * ((2 * upper - lower) / (p + 2) - u / (p + 3)));
  const all = areaBelow(whole);

  return {
    ratePerDay,
    antiderivative: temperature => {
      if (!(temperature > begin)) return 0;
      if (temperature >= upper) return a * all;
      // Just above the threshold the difference of two large areas would keep few digits.
      if (temperature - begin < whole / 4) return integralOver(ratePerDay, begin, temperature);
      return a * (all - areaBelow(upper - temperature));
    },
  };
}

/** Optimum: the larger root of r′ = 0, (2 + p)·T² − ((1 + p)·T0 + 2·TL)·T + TL·T0 = 0 with p = 1/m. */
export function briere2Landmarks({lower, upper, m}: Omit<Briere2Spec, 'kind'>): Landmarks {
  const p = 1 / m;
  const half = ((1 + p) * lower + 2 * upper) / 2;
  const optimumC = (half + Math.sqrt(half ** 2 - (2 + p) * upper * lower)) / (2 + p);
  return {lowerC: Math.max(lower, 0), optimumC, upperC: upper};
}

export function briere2Fault({a, lower, upper, m}: Omit<Briere2Spec, 'kind'>): Fault | undefined {
  if (!(a > 0)) return {field: 'a', what: 'must be above 0'};
  if (!(upper > Math.max(lower, 0)))
    return {field: 'upper', what: `must be above the lower threshold (${lower} °C) and above 0 °C`};
  if (!(m > 0)) return {field: 'm', what: 'must be above 0'};
  return undefined;
}
