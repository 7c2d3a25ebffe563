// The Briere curve in its usual form, with a square root.
import {briere2, briere2Fault, briere2Landmarks} from './briere-2.ts';
import type {Fault, Landmarks, RateModel} from './rate.ts';

/** Rate = a·T·(T − lower)·√(upper − T). */
export interface Briere1Spec {
  readonly kind: 'briere-1';
  readonly a: number;
  readonly lower: number;
  readonly upper: number;
}

/**
 * r(T) = a·T·(T − T0)·√(TL − T) between T0 and TL: the second form with m = 2. Briere, Pracros, Le Roux & Pierre
 * 1999, Environmental Entomology 28:22–29 (from memory; form seen in the data archive of Shocket et al. 2020).
 * @throws RangeError where the parameters lie outside the domain
 */
export function briere1({a, lower, upper}: Briere1Spec): RateModel {
  return briere2({kind: 'briere-2', a, lower, upper, m: 2});
}

export function briere1Landmarks(spec: Briere1Spec): Landmarks {
  return briere2Landmarks({...spec, m: 2});
}

export function briere1Fault(spec: Briere1Spec): Fault | undefined {
  return briere2Fault({...spec, m: 2});
}
