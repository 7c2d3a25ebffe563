// The animals a lot began with, class by class, and how they go through a chain if nobody looks.
import {inOrder, type Stage} from '../records/stage.ts';
import type {Progress} from './founding.ts';
import {remainingOf} from './founding.ts';
import {type Measure, shifted, together} from './measure.ts';
import {passOn} from './passage.ts';
import {ANY_STAGE, placesOf} from './places.ts';
import type {FoundingCohort} from './request.ts';
import type {Chain} from './stage-chain.ts';
import {ownDose, type Tempo} from './tempo.ts';

/** Founders of one cohort found in one stage. */
export interface FounderClass {
  readonly atDays: number;
  readonly stage: Stage;
  readonly count: number;
  readonly progress: Progress;
  readonly oneBrood: boolean;
}

/** How an animal goes through the stages of a chain. */
export interface Passages {
  /** For every stage, the share of animals that began in it or in one before it. */
  readonly startsBy: readonly number[];
  /** For every stage, the doses at which these leave it; null where none come. */
  readonly leaving: readonly (Measure | null)[];
}

/** The classes of a lot's cohorts. A cohort of hidden animals, without stages, is one animal of any stage. */
export function classesOf(cohorts: readonly FoundingCohort[], hidden: boolean): readonly FounderClass[] {
  return cohorts.flatMap(({atDays, stages, progress, ages}) => {
    const counts = inOrder(stages);
    const found: [Stage, number][] = counts.length === 0 && hidden ? [[ANY_STAGE, 1]] : counts;
    return found.map(([stage, count]) => ({atDays, stage, count, progress, oneBrood: ages === 'one-brood'}));
  });
}

/** Whether every class finds its place in the chain. */
export function hasPlacesFor(chain: Chain, classes: readonly FounderClass[]): boolean {
  return classes.every(({stage, progress}) => placesOf(chain, stage, progress).length > 0);
}

/** The first stage that none of the chains has. */
export function missingStage(chains: readonly Chain[], classes: readonly FounderClass[]): Stage | undefined {
  return classes.find(({stage, progress}) =>
    chains.every(chain => placesOf(chain, stage, progress).length === 0),
  )?.stage;
}

/**
 * How the animals of a class leave one stage after the other at this tempo.
 * @param brood the progress they share, where they are of one brood
 */
export function passagesOf(tempo: Tempo, {atDays, stage, progress}: FounderClass, brood?: number): Passages {
  const {stages} = tempo.chain;
  const within: Progress = brood === undefined ? progress : [brood, brood];
  const founding = new Map(placesOf(tempo.chain, stage, within).map(place => [place.index, place] as const));
  const startsBy: number[] = [];
  const leaving: (Measure | null)[] = [];
  let begun = 0;
  let before: Measure | null = null;
  stages.forEach(({spread}, index) => {
    const place = founding.get(index);
    const coming = before === null ? null : passOn(tempo, index - 1, before);
    const starting =
      place &&
      shifted(remainingOf({spread, progress: place.progress}), ownDose(tempo, index, atDays), place.weight);
    before = coming && starting ? together(coming, starting) : (starting ?? coming);
    begun += place?.weight ?? 0;
    startsBy.push(begun);
    leaving.push(before);
  });
  return {startsBy, leaving};
}
