// What the animals of each point come to if nobody looks again: when each statistic is reached, and in which stages they
// are at instants. Both are read off one walk through the chain.
import {borrowing} from './arena.ts';
import {shifted} from './measure.ts';
import type {AnimalClass, PaceLine, PacePoint} from './scenario.ts';
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
      const going = thoseGoingOn(classes, journeys);
      const parts = wanted.length === 0 ? [] : statisticParts(going.classes, going.journeys, wanted);
      for (const point of points)
        prospects.set(point, {parts, goesOn: going.share, stages: stagesAt(point, journeys, instants)});
    });
  return prospects;
}

interface GoingOn {
  readonly share: number;
  readonly classes: readonly AnimalClass[];
  readonly journeys: readonly Journey[];
}

/** The animals without those that rest. Of how many go on, what is expected is taken, as whole animals. */
function thoseGoingOn(classes: readonly AnimalClass[], journeys: readonly Journey[]): GoingOn {
  const shares = classes.map(({standing}) => 1 - shareResting(standing));
  if (shares.every(share => share === 1)) return {share: 1, classes, journeys};
  const count = (of: (c: number) => number) => classes.reduce((sum, one, c) => sum + of(c) * one.count, 0);
  const expected = count(c => shares[c]!);
  const times = Math.max(1, Math.round(expected)) / expected;
  const some = [...classes.keys()].filter(c => shares[c]! > NONE);
  return {
    share: expected / count(() => 1),
    classes: some.map(c => ({...classes[c]!, count: classes[c]!.count * shares[c]! * times})),
    journeys: some.map(c => {
      const {began, leaving} = journeys[c]!;
      const ofOne = leaving.map(measure => (measure === null ? null : shifted(measure, 0, 1 / shares[c]!)));
      return {began, leaving: ofOne};
    }),
  };
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
