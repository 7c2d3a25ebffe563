// What the animals of each point come to if nobody looks again: when each statistic is reached, and in which stages they
// are at instants. Both are read off one walk through the chain.
import {borrowing} from './arena.ts';
import {shifted} from './measure.ts';
import {type AnimalClass, type PaceLine, type PacePoint, restingAmong} from './scenario.ts';
import {inStages, type Journey, journeyOf, shareResting} from './standing.ts';
import {type Part, type Statistic, statisticParts} from './statistics.ts';

export interface Prospects {
  readonly parts: readonly Part[];
  /** The share of the animals that goes on: the parts are of these alone. */
  readonly goesOn: number;
  /** By instant asked, how many animals are in each stage of the chain and, last, out. */
  readonly stages: readonly Float64Array[];
}

/** Of a class of which less than this goes on none does. */
const NONE = 1e-9;
/** Sets of whole numbers less likely than this are left out. */
const SLIGHT = 0.01;

/**
 * The prospects of every point that weighs something.
 * @param instants animals that joined the lot after one of them are in no stage then
 */
export function prospectsOf(
  lines: readonly PaceLine[],
  wanted: readonly Statistic[],
  instants: ArrayLike<number>,
): ReadonlyMap<PacePoint, Prospects> {
  const alike = new Map<readonly AnimalClass[], PacePoint[]>();
  for (const {points} of lines)
    for (const point of points) {
      if (point.weight === 0) continue;
      const sharing = alike.get(point.classes);
      if (sharing) sharing.push(point);
      else alike.set(point.classes, [point]);
    }
  const prospects = new Map<PacePoint, Prospects>();
  for (const [classes, points] of alike)
    borrowing(() => {
      const journeys = classes.map(({standing}) => journeyOf(points[0]!.tempo, standing));
      const goesOn = 1 - restingAmong(classes);
      const partsOf = goesOn === 1 ? statisticParts : partsOfThoseGoingOn;
      const parts = wanted.length === 0 ? [] : partsOf(classes, journeys, wanted);
      for (const point of points)
        prospects.set(point, {parts, goesOn, stages: stagesAt(point, journeys, instants)});
    });
  return prospects;
}

/**
 * The parts of the animals without those that rest. Which animal emerges is taken of as many as are expected to go on;
 * the first, half and last of whole numbers that come to these on average.
 */
function partsOfThoseGoingOn(
  classes: readonly AnimalClass[],
  journeys: readonly Journey[],
  wanted: readonly Statistic[],
): readonly Part[] {
  const shares = classes.map(({standing}) => 1 - shareResting(standing));
  const expected = classes.map(({count}, c) => count * shares[c]!);
  const ofOne = journeys.map(({began, leaving}, c) => ({
    began,
    leaving: leaving.map(measure => (measure === null ? null : shifted(measure, 0, 1 / shares[c]!))),
  }));
  const partsFor = (counts: readonly number[], of: readonly Statistic[]) => {
    const some = [...classes.keys()].filter(c => counts[c]! > NONE);
    const going = some.map(c => ({...classes[c]!, count: counts[c]!}));
    return statisticParts(
      going,
      some.map(c => ofOne[c]!),
      of,
    );
  };
  const whole = expected.reduce((sum, count) => sum + count, 0);
  if (!(whole > NONE)) return [];
  const times = Math.max(1, Math.round(whole)) / whole;
  const ranks = wanted.filter(statistic => statistic !== 'animal');
  return [
    ...partsFor(
      expected.map(count => count * times),
      wanted.filter(statistic => statistic === 'animal'),
    ),
    ...wholeNumbersOf(expected).flatMap(({share, counts}, which) =>
      partsFor(counts, ranks).map(part => ({...part, of: `${part.of} ${which}`, share: part.share * share})),
    ),
  ];
}

/** Whole numbers of every class, each set with its share, that are the given ones on average; sets of none are left out. */
function wholeNumbersOf(
  expected: readonly number[],
): readonly {readonly share: number; readonly counts: readonly number[]}[] {
  let sum = 0;
  const upTo = expected.map(count => {
    sum += count;
    return sum;
  });
  // Each running sum is rounded up with the chance of its part above the whole, all by one draw.
  const draws = [0, ...upTo.map(each => Math.ceil(each) - each), 1].sort((a, b) => a - b);
  const sets = draws.slice(1).flatMap((draw, i) => {
    const share = draw - draws[i]!;
    const rounded = upTo.map(each => Math.floor(each + (draw + draws[i]!) / 2));
    const counts = rounded.map((each, c) => each - (rounded[c - 1] ?? 0));
    return share > SLIGHT && rounded.at(-1)! > 0 ? [{share, counts}] : [];
  });
  if (sets.length === 0) return [{share: 1, counts: oneOfTheLikeliest(expected)}];
  const all = sets.reduce((total, {share}) => total + share, 0);
  return sets.map(({share, counts}) => ({share: share / all, counts}));
}

function oneOfTheLikeliest(expected: readonly number[]): readonly number[] {
  const likeliest = expected.indexOf(Math.max(...expected));
  return expected.map((_, c) => Number(c === likeliest));
}

function stagesAt(
  {tempo, classes}: PacePoint,
  journeys: readonly Journey[],
  instants: ArrayLike<number>,
): Float64Array[] {
  return Array.from(instants, atDays => {
    const animals = new Float64Array(tempo.chain.stages.length + 1);
    classes.forEach(({count, standing}, i) => {
      if (standing.atDays <= atDays) inStages(tempo, journeys[i]!, standing, atDays, count, animals);
    });
    return animals;
  });
}
