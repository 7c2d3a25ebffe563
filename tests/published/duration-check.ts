// A published duration that no profile was made from, and how far the profile may be from it.
import {expect} from 'vitest';
import {daysAt} from '../profiles/bundled.ts';

export interface Check {
  readonly source: string;
  readonly profile: string;
  /** Stages in a row, joined by "+", or `all`. */
  readonly stages: string;
  readonly points: readonly (readonly [temperatureC: number, days: number])[];
  /** The greatest relative difference met, rounded up: it says how far studies of one species disagree. */
  readonly within: number;
}

/** Days that a published threshold and constant give at 20 and 25 °C. */
export function constant(lower: number, degreeDays: number): Check['points'] {
  return [20, 25].map(t => [t, degreeDays / (t - lower)] as const);
}

/** Every published duration against development through the rate models. */
export function expectWithin({profile, stages, points, within}: Check) {
  for (const [temperatureC, days] of points)
    expect(Math.abs(daysAt(profile, stages, temperatureC) / days - 1)).toBeLessThanOrEqual(within);
}
