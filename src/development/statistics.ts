// What is asked of a lot's emergence, as distributions over the dose of the last stage.
import {levelsOf} from './levels.ts';
import {type Measure, massUpTo, reachOf, wholeOf} from './measure.ts';
import {chanceOfAtLeast} from './order-statistics.ts';
import type {AnimalClass} from './scenario.ts';

/** One animal taken at random; the first; half of them, rounded up; 95 per cent of them, rounded up. */
export const STATISTICS = ['animal', 'first', 'half', 'last'] as const;
export type Statistic = (typeof STATISTICS)[number];

/** For each statistic the doses at fixed levels of probability. */
export type StatisticLevels = Readonly<Record<Statistic, Float64Array>>;

/** The levels of every statistic, of animals that are independent of each other. */
export function statisticLevels(classes: readonly AnimalClass[]): StatisticLevels {
  const last = classes.map(({passages}) => passages.leaving.at(-1) ?? null);
  const counts = classes.map(({count}) => count);
  const all = counts.reduce((sum, count) => sum + count, 0);
  const [from, to, step] = span(last);
  const out = new Float64Array(last.length);
  const at = (dose: number) => {
    for (let c = 0; c < last.length; c++) out[c] = last[c] ? massUpTo(last[c]!, dose) : 0;
  };
  const animal = levelsOf(
    dose => {
      at(dose);
      let sum = 0;
      for (let c = 0; c < out.length; c++) sum += counts[c]! * out[c]!;
      return sum / all;
    },
    from,
    to,
    step,
  );
  if (all === 1) return {animal, first: animal, half: animal, last: animal};
  const kth = (k: number) =>
    levelsOf(
      dose => {
        at(dose);
        return chanceOfAtLeast(k, counts, out);
      },
      from,
      to,
      step,
    );
  return {animal, first: kth(1), half: kth(Math.ceil(all / 2)), last: kth(Math.ceil(0.95 * all - 1e-9))};
}

function span(measures: readonly (Measure | null)[]): readonly [from: number, to: number, step: number] {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  let step = 1;
  for (const measure of measures) {
    if (measure === null || wholeOf(measure) === 0) continue;
    const [low, high] = reachOf(measure);
    from = Math.min(from, low);
    to = Math.max(to, high);
    step = measure.step;
  }
  return from < to ? [from, to, step] : [0, 0, 1];
}
