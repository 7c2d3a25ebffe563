// How good forecasts were: when half of a lot's adults were said to be out, and when they were.
import type {SeenAnimals} from './request.ts';

/** One forecast looked back on, in days. */
export interface Looked {
  readonly p10: number | null;
  readonly p50: number;
  readonly p90: number | null;
  readonly outcome: number;
}

export interface Skill {
  readonly n: number;
  /** Forecast less outcome: above 0 it said too late. */
  readonly biasDays: number | null;
  /** Mean absolute error. */
  readonly maeDays: number | null;
  /** The share of outcomes inside the window that should hold four in five. */
  readonly held80: number | null;
}

export function skillOf(looked: readonly Looked[]): Skill {
  const n = looked.length;
  if (n === 0) return {n, biasDays: null, maeDays: null, held80: null};
  const mean = (of: (one: Looked) => number) => looked.reduce((sum, one) => sum + of(one), 0) / n;
  return {
    n,
    biasDays: mean(({p50, outcome}) => p50 - outcome),
    maeDays: mean(({p50, outcome}) => Math.abs(p50 - outcome)),
    held80: mean(({p10, p90, outcome}) =>
      Number((p10 ?? Number.NEGATIVE_INFINITY) <= outcome && outcome <= (p90 ?? Number.POSITIVE_INFINITY)),
    ),
  };
}

/**
 * When half of those that came out (rounded up) were out: the middle between the look that found that one and the
 * last look before it. Undefined where none came.
 */
export function halfOutDays(sightings: readonly SeenAnimals[]): number | undefined {
  const out = sightings.flatMap(seen => (seen.kind === 'emergence' ? [seen] : []));
  const half = Math.ceil(out.reduce((sum, {count}) => sum + count, 0) / 2);
  let so = 0;
  for (const {sinceDays, atDays, count} of out.toSorted((a, b) => a.atDays - b.atDays)) {
    so += count;
    if (so >= half) return (sinceDays + atDays) / 2;
  }
  return undefined;
}
