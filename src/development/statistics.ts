// What is asked of a lot's emergence, as distributions over the dose of the last stage.
import {levelsOf} from './levels.ts';
import {type Measure, massUpTo, reachOf, wholeOf} from './measure.ts';
import {chanceOfAtLeast} from './order-statistics.ts';
import type {AnimalClass} from './scenario.ts';

/** One animal taken at random; the first; half of them, rounded up; 95 per cent of them, rounded up. */
export const STATISTICS = ['animal', 'first', 'half', 'last'] as const;
export type Statistic = (typeof STATISTICS)[number];

/** A part of a statistic's distribution, as the doses at fixed levels of probability. */
export interface Part {
  readonly statistic: Statistic;
  readonly share: number;
  readonly levels: Float64Array;
}

/**
 * The parts of every statistic, of animals that are independent of each other. An animal taken at random is one of a
 * class: each class is a part, for between two of them there may be a time in which none emerges.
 */
export function statisticParts(classes: readonly AnimalClass[]): readonly Part[] {
  const last = classes.map(({passages}) => passages.leaving.at(-1) ?? null);
  const counts = classes.map(({count}) => count);
  const all = counts.reduce((sum, count) => sum + count, 0);
  const animals = last.map((measure, c): Part => {
    const levels = levelsBetween([measure], dose => (measure === null ? 0 : massUpTo(measure, dose)));
    return {statistic: 'animal', share: counts[c]! / all, levels};
  });
  if (all === 1) return STATISTICS.flatMap(statistic => animals.map(part => ({...part, statistic})));

  const out = new Float64Array(last.length);
  const kth = (statistic: Statistic, k: number): Part => {
    const levels = levelsBetween(last, dose => {
      for (let c = 0; c < last.length; c++) out[c] = last[c] ? massUpTo(last[c]!, dose) : 0;
      return chanceOfAtLeast(k, counts, out);
    });
    return {statistic, share: 1, levels};
  };
  return [
    ...animals,
    kth('first', 1),
    kth('half', Math.ceil(all / 2)),
    kth('last', Math.ceil(0.95 * all - 1e-9)),
  ];
}

function levelsBetween(measures: readonly (Measure | null)[], share: (dose: number) => number): Float64Array {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const measure of measures) {
    if (measure === null || wholeOf(measure) === 0) continue;
    const [low, high] = reachOf(measure);
    from = Math.min(from, low);
    to = Math.max(to, high);
  }
  return from < to ? levelsOf(share, from, to) : levelsOf(share, 0, 0);
}
