// The animals a lot began with, class by class.
import {inOrder, type Stage} from '../records/stage.ts';
import type {Progress} from './founding.ts';
import {ANY_STAGE, placesOf} from './places.ts';
import type {FoundingCohort} from './request.ts';
import type {Chain} from './stage-chain.ts';

/** Founders of one cohort found in one stage. */
export interface FounderClass {
  readonly atDays: number;
  readonly stage: Stage;
  readonly count: number;
  readonly progress: Progress;
  readonly oneBrood: boolean;
  /** The lot they joined; empty where there is but one. */
  readonly lot: string;
  /** The share of them that rests. */
  readonly rests: number;
}

/** The classes of a lot's cohorts. A cohort of hidden animals, without stages, is one animal of any stage. */
export function classesOf(cohorts: readonly FoundingCohort[], hidden: boolean): readonly FounderClass[] {
  return cohorts.flatMap(({atDays, stages, progress, ages, lot = ''}) => {
    const counts = inOrder(stages);
    const found: [Stage, number][] = counts.length === 0 && hidden ? [[ANY_STAGE, 1]] : counts;
    const oneBrood = ages === 'one-brood';
    return found.map(([stage, count]) => ({atDays, stage, count, progress, oneBrood, lot, rests: 0}));
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
