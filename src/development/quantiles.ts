// The instants at which a rising curve reaches given chances.
import type {Quantiles, Window} from './answer.ts';

export type Curve = (atDays: number) => number;

export interface Span {
  readonly fromDays: number;
  /** Where nothing more is known, or asked. */
  readonly untilDays: number;
}

/** A tenth of a second. */
const CLOSE_DAYS = 1e-6;

/** When the curve reaches a chance; null where it does not within the span. */
export function instantOf(curve: Curve, chance: number, {fromDays, untilDays}: Span): number | null {
  if (!(curve(untilDays) >= chance)) return null;
  let low = fromDays;
  let high = untilDays;
  while (high - low > CLOSE_DAYS) {
    const middle = (low + high) / 2;
    if (curve(middle) >= chance) high = middle;
    else low = middle;
  }
  return (low + high) / 2;
}

export function quantilesOf(curve: Curve, span: Span): Quantiles {
  const at = (chance: number) => instantOf(curve, chance, span);
  return {
    p05: at(0.05),
    p10: at(0.1),
    p25: at(0.25),
    p50: at(0.5),
    p75: at(0.75),
    p90: at(0.9),
    p95: at(0.95),
  };
}

export function windowOf(curve: Curve, span: Span): Window {
  const at = (chance: number) => instantOf(curve, chance, span);
  return {p10: at(0.1), p50: at(0.5), p90: at(0.9)};
}
