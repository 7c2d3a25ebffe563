// The Lactin curve without a lower threshold: the Logan curve whose height is that of its own exponential.
import type {ExponentialFall} from './exponential-fall.ts';
import {logan6, logan6Fault, logan6Landmarks} from './logan-6.ts';
import type {Fault, Landmarks, RateModel} from './rate.ts';

/** Rate = e^(rho·T) − e^(rho·upper − (upper − T)/delta), T and `upper` counted from `base`. */
export interface Lactin1Spec extends ExponentialFall {
  readonly kind: 'lactin-1';
  /** °C from which temperatures count, and below which nothing develops; default 0. */
  readonly base?: number | undefined;
}

/**
 * r(T) = e^(ρT) − e^(ρTm − (Tm − T)/δ): the Logan curve with ψ = 1. Lactin, Holliday, Johnson & Craigen 1995,
 * Environmental Entomology 24:68–75 (from memory).
 * @throws RangeError where the parameters lie outside the domain
 */
export function lactin1(spec: Lactin1Spec): RateModel {
  return logan6({...spec, kind: 'logan-6', psi: 1});
}

export function lactin1Landmarks(spec: Lactin1Spec): Landmarks {
  return logan6Landmarks({...spec, kind: 'logan-6', psi: 1});
}

export function lactin1Fault(spec: Lactin1Spec): Fault | undefined {
  return logan6Fault({...spec, kind: 'logan-6', psi: 1});
}
