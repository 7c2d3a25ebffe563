// What is asked of a lot's emergence, as distributions over the dose of the last stage.
import {compareStages} from '../records/stage.ts';
import {borrowing} from './arena.ts';
import {dosesAt, LEVELS, levelsOf} from './levels.ts';
import {type Measure, massUpTo, reachOf, shifted, together, wholeOf} from './measure.ts';
import {chanceOfAtLeast, sharesForAtLeast} from './order-statistics.ts';
import {rowOfAnimals} from './row-of-animals.ts';
import type {AnimalClass} from './scenario.ts';
import {emergenceOf} from './standing.ts';
import type {Tempo} from './tempo.ts';

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
 * The parts of statistics, of animals that are independent of each other. An animal taken at random is of one stage, as
 * it was last judged at an instant: each is a part, for between two there may be a time in which none emerges.
 */
export function statisticParts(
  tempo: Tempo,
  classes: readonly AnimalClass[],
  wanted: readonly Statistic[],
): readonly Part[] {
  return borrowing(() => partsOf(tempo, classes, wanted));
}

function partsOf(tempo: Tempo, classes: readonly AnimalClass[], wanted: readonly Statistic[]): Part[] {
  const inOrder = classes.toSorted(
    (a, b) => compareStages(a.label, b.label) || b.standing.atDays - a.standing.atDays,
  );
  const leaving = inOrder.map(({standing}) => emergenceOf(tempo, standing));
  const counts = inOrder.map(({count}) => count);
  const all = Math.round(sum(counts));
  const names = inOrder.map(({label, standing}) => `${label} ${standing.atDays}`);
  const animals = [...new Set(names)].map((name): Part => {
    const alike = [...names.keys()].filter(i => names[i] === name);
    const count = sum(alike.map(i => counts[i]!));
    const mixture = alike.reduce<Measure | null>((so, i) => mixed(so, leaving[i]!, counts[i]! / count), null);
    return {statistic: 'animal', of: name, share: count / all, levels: levelsIn(mixture, LEVELS)};
  });
  if (all === 1) return wanted.flatMap(statistic => animals.map(part => ({...part, statistic})));

  const rankOf = {first: 1, half: Math.ceil(all / 2), last: Math.ceil(0.95 * all - 1e-9)};
  return wanted.flatMap((statistic): Part[] => {
    if (statistic === 'animal') return animals;
    const rank = rankOf[statistic];
    const levels =
      leaving.length === 1
        ? levelsIn(leaving[0]!, sharesForAtLeast(rank, all))
        : levelsOfRank(rank, leaving, counts);
    return [{statistic, of: 'all', share: 1, levels}];
  });
}

function mixed(so: Measure | null, leaving: Measure | null, share: number): Measure | null {
  if (leaving === null) return so;
  const part = shifted(leaving, 0, share);
  return so === null ? part : together(so, part);
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

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
