// What is asked of a lot's emergence, as distributions over the dose of the last stage.
import {compareStages} from '../records/stage.ts';
import {dosesAt, LEVELS, levelsOf} from './levels.ts';
import {type Measure, massUpTo, reachOf, shifted, together, wholeOf} from './measure.ts';
import {chanceOfAtLeast, sharesForAtLeast} from './order-statistics.ts';
import {rowOfAnimals} from './row-of-animals.ts';
import type {AnimalClass} from './scenario.ts';

/** One animal taken at random; the first; half of them, rounded up; 95 per cent of them, rounded up. */
export const STATISTICS = ['animal', 'first', 'half', 'last'] as const;
export type Statistic = (typeof STATISTICS)[number];

/** A part of a statistic's distribution, as the doses at fixed levels of probability. */
export interface Part {
  readonly statistic: Statistic;
  /** Of which animals: the same name at every pace. */
  readonly of: string;
  readonly share: number;
  readonly levels: Float64Array;
}

/**
 * The parts of every statistic, of animals that are independent of each other. An animal taken at random is of one
 * stage, as it was last judged at an instant: each is a part, for between two there may be a time in which none emerges.
 */
export function statisticParts(classes: readonly AnimalClass[]): readonly Part[] {
  const inOrder = classes.toSorted((a, b) => compareStages(a.label, b.label) || b.atDays - a.atDays);
  const counts = inOrder.map(({count}) => count);
  const all = Math.round(counts.reduce((sum, count) => sum + count, 0));
  const names = inOrder.map(({label, atDays}) => `${label} ${atDays}`);
  const animals = [...new Set(names)].map((name): Part => {
    const alike = inOrder.filter((_, i) => names[i] === name);
    const count = alike.reduce((sum, known) => sum + known.count, 0);
    return {statistic: 'animal', of: name, share: count / all, levels: levelsIn(mixed(alike, count), LEVELS)};
  });
  if (all === 1) return STATISTICS.flatMap(statistic => animals.map(part => ({...part, statistic})));

  const last = inOrder.map(({passages}) => passages.leaving.at(-1) ?? null);
  const ranks = {first: 1, half: Math.ceil(all / 2), last: Math.ceil(0.95 * all - 1e-9)};
  const kth = (statistic: keyof typeof ranks): Part => ({
    statistic,
    of: 'all',
    share: 1,
    levels:
      last.length === 1
        ? levelsIn(last[0]!, sharesForAtLeast(ranks[statistic], all))
        : levelsOfRank(ranks[statistic], last, counts),
  });
  return [...animals, kth('first'), kth('half'), kth('last')];
}

/** When an animal taken at random from classes leaves the last stage. */
function mixed(classes: readonly AnimalClass[], all: number): Measure | null {
  return classes.reduce<Measure | null>((so, {count, passages}) => {
    const leaving = passages.leaving.at(-1) ?? null;
    if (leaving === null) return so;
    const part = shifted(leaving, 0, count / all);
    return so === null ? part : together(so, part);
  }, null);
}

function levelsIn(measure: Measure | null, shares: Float64Array): Float64Array {
  return measure === null
    ? new Float64Array(shares.length).fill(Number.POSITIVE_INFINITY)
    : dosesAt(measure, shares);
}

/** The levels of the dose at which so many of all classes are out. */
function levelsOfRank(
  rank: number,
  leaving: readonly (Measure | null)[],
  counts: readonly number[],
): Float64Array {
  const row = rowOfAnimals(counts);
  const animals = row.map(({count}) => count);
  const byClass = new Float64Array(leaving.length);
  const out = new Float64Array(row.length);
  const share = (dose: number) => {
    for (let c = 0; c < leaving.length; c++) byClass[c] = leaving[c] ? massUpTo(leaving[c]!, dose) : 0;
    for (let i = 0; i < row.length; i++) {
      let sum = 0;
      for (const {place, share} of row[i]!.of) sum += share * byClass[place]!;
      out[i] = sum;
    }
    return chanceOfAtLeast(rank, animals, out);
  };
  const [from, to] = reachOfAll(leaving);
  return from < to ? levelsOf(share, from, to) : levelsOf(share, 0, 0);
}

function reachOfAll(measures: readonly (Measure | null)[]): readonly [from: number, to: number] {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const measure of measures) {
    if (measure === null || wholeOf(measure) === 0) continue;
    const [low, high] = reachOf(measure);
    from = Math.min(from, low);
    to = Math.max(to, high);
  }
  return [from, to];
}
