// What the animals of each point come to if nobody looks again: when each statistic is reached, and in which stages they
// are at instants. Both are read off one walk through the chain.
import {borrowing} from './arena.ts';
import type {AnimalClass, PaceLine, PacePoint} from './scenario.ts';
import {inStages, type Journey, journeyOf} from './standing.ts';
import {type Part, type Statistic, statisticParts} from './statistics.ts';

export interface Prospects {
  readonly parts: readonly Part[];
  /** By instant asked, how many animals are in each stage of the chain and, last, out. */
  readonly stages: readonly Float64Array[];
}

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
      const parts = wanted.length === 0 ? [] : statisticParts(classes, journeys, wanted);
      for (const point of points) prospects.set(point, {parts, stages: stagesAt(point, journeys, instants)});
    });
  return prospects;
}

function stagesAt(
  {tempo, classes}: PacePoint,
  journeys: readonly Journey[],
  instants: ArrayLike<number>,
): Float64Array[] {
  return Array.from(instants, atDays => {
    const animals = new Float64Array(tempo.chain.stages.length + 1);
    classes.forEach(({count, standing}, i) => {
      if (standing.atDays <= atDays) inStages(tempo, journeys[i]!, atDays, count, animals);
    });
    return animals;
  });
}
