// What is asked of a lot's emergence, as distributions over the dose of the last stage.
import {compareStages} from '../records/stage.ts';
import {dosesAt, LEVELS, levelsOf} from './levels.ts';
import {type Measure, massUpTo, reachOf, shifted, together} from './measure.ts';
import {chanceOfAtLeast, sharesForAtLeast} from './order-statistics.ts';
import {rowOfAnimals} from './row-of-animals.ts';
import type {AnimalClass} from './scenario.ts';
import type {Journey} from './standing.ts';

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
 * @param journeys of each class
 */
export function statisticParts(
  classes: readonly AnimalClass[],
  journeys: readonly Journey[],
  wanted: readonly Statistic[],
): readonly Part[] {
  const order = [...classes.keys()].sort(
    (a, b) =>
      compareStages(classes[a]!.label, classes[b]!.label) ||
      classes[b]!.standing.atDays - classes[a]!.standing.atDays,
  );
  const inOrder = order.map(place => classes[place]!);
  const leaving = order.map(place => journeys[place]!.leaving.at(-1)!);
  const counts = inOrder.map(({count}) => count);
  const all = Math.round(sum(counts));
  const groups = new Map<string, {count: number; leaving: Measure | null}>();
  inOrder.forEach(({label, standing, count}, i) => {
    const name = `${label} ${standing.atDays}`;
    const so = groups.get(name);
    if (so === undefined) groups.set(name, {count, leaving: times(leaving[i]!, count)});
    else {
      so.count += count;
      so.leaving = added(so.leaving, times(leaving[i]!, count));
    }
  });
  const animals = Array.from(groups, ([of, {count, leaving}]): Part => {
    return {statistic: 'animal', of, share: count / all, levels: levelsIn(times(leaving, 1 / count), LEVELS)};
  });
  if (all === 1) return wanted.flatMap(statistic => animals.map(part => ({...part, statistic})));

  const rankOf = {first: 1, half: Math.ceil(all / 2), last: Math.ceil(0.95 * all - 1e-9)};
  const rankLevels = leaving.length === 1 ? null : rankLevelsOf(leaving, counts, pooled(groups, all));
  return wanted.flatMap((statistic): Part[] => {
    if (statistic === 'animal') return animals;
    const rank = rankOf[statistic];
    const levels =
      rankLevels === null ? levelsIn(leaving[0]!, sharesForAtLeast(rank, all)) : rankLevels(rank, all);
    return [{statistic, of: 'all', share: 1, levels}];
  });
}

function times(leaving: Measure | null, count: number): Measure | null {
  return leaving === null ? null : shifted(leaving, 0, count);
}

function added(so: Measure | null, leaving: Measure | null): Measure | null {
  return so === null ? leaving : leaving === null ? so : together(so, leaving);
}

/** One animal taken at random of all. */
function pooled(
  groups: ReadonlyMap<string, {readonly leaving: Measure | null}>,
  all: number,
): Measure | null {
  let so: Measure | null = null;
  for (const {leaving} of groups.values()) so = added(so, times(leaving, 1 / all));
  return so;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);

function levelsIn(measure: Measure | null, shares: Float64Array): Float64Array {
  return measure === null
    ? new Float64Array(shares.length).fill(Number.POSITIVE_INFINITY)
    : dosesAt(measure, shares);
}

/**
 * The levels of the dose at which so many of all classes are out. Were all animals alike it would be reached where one
 * at random is out with known shares: there it is asked.
 */
function rankLevelsOf(
  leaving: readonly (Measure | null)[],
  counts: readonly number[],
  oneAtRandom: Measure | null,
): (rank: number, all: number) => Float64Array {
  const row = rowOfAnimals(counts);
  const animals = row.map(({count}) => count);
  const byClass = new Float64Array(leaving.length);
  const out = new Float64Array(row.length);
  const chancesAt = (dose: number) => {
    for (let c = 0; c < leaving.length; c++) byClass[c] = leaving[c] ? massUpTo(leaving[c]!, dose) : 0;
    for (let i = 0; i < row.length; i++) {
      let sum = 0;
      for (const {place, share} of row[i]!.of) sum += share * byClass[place]!;
      out[i] = sum;
    }
    return out;
  };
  return (rank, all) => {
    const nodes = levelsIn(oneAtRandom, sharesForAtLeast(rank, all)).filter(Number.isFinite);
    const [from, to] = oneAtRandom === null ? [0, 0] : reachOf(oneAtRandom);
    return levelsOf(dose => chanceOfAtLeast(rank, animals, chancesAt(dose)), [from, ...nodes, to]);
  };
}
