// Exponential growth that breaks down towards an upper temperature: the common part of the Logan and Lactin curves.
import type {Fault} from './rate.ts';

/**
 * g(T) = e^(ρT) − e^(ρTm − (Tm − T)/δ): growth with ρ per degree, and its breakdown within about δ degrees below Tm,
 * where g is 0. Logan, Wollkind, Hoyt & Tanigoshi 1976, Environmental Entomology 5:1133–1140 (formula from memory).
 */
export interface ExponentialFall {
  /** ρ, per °C. */
  readonly rho: number;
  /** Tm, °C. */
  readonly upper: number;
  /** δ, °C. */
  readonly delta: number;
}

/**
 * g. Both exponentials are large and nearly alike, so that their difference is formed as
 * −e^(ρT)·expm1(−k·(Tm − T)) with k = 1/δ − ρ, which keeps every digit.
 */
export function growth({rho, upper, delta}: ExponentialFall): (temperature: number) => number {
  const k = 1 / delta - rho;
  return temperature => -Math.exp(rho * temperature) * Math.expm1(-k * (upper - temperature));
}

/** ∫ g = e^(ρT)/ρ − δ·e^(ρT − k(Tm − T)) = e^(ρT)·δ·(k/ρ − expm1(−k·(Tm − T))), a sum of two terms of one sign. */
export function growthArea({rho, upper, delta}: ExponentialFall): (temperature: number) => number {
  const k = 1 / delta - rho;
  return temperature =>
    Math.exp(rho * temperature) * delta * (k / rho - Math.expm1(-k * (upper - temperature)));
}

/** Where g is largest: Tm + ln(ρδ)/(1/δ − ρ), from g′ = 0. */
export function growthOptimum({rho, upper, delta}: ExponentialFall): number {
  return upper + Math.log(rho * delta) / (1 / delta - rho);
}

export function growthFault({rho, upper, delta}: ExponentialFall): Fault | undefined {
  if (!(rho > 0)) return {field: 'rho', what: 'must be above 0'};
  if (!Number.isFinite(upper)) return {field: 'upper', what: 'must be a number'};
  if (!(delta > 0)) return {field: 'delta', what: 'must be above 0'};
  if (!(rho * delta < 1))
    return {
      field: 'delta',
      what: `must be below 1/rho (${(1 / rho).toPrecision(4)} °C), else no temperature has a rate above 0`,
    };
  return undefined;
}
