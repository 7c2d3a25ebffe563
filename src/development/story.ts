// What was seen as a sequence of steps, the same at every point of the unknowns.
import type {FounderClass} from './founders.ts';
import {countedChance, emergedChance} from './look-chances.ts';
import type {EmergedBranch, StageBranch} from './paths.ts';
import {later, type Standing, standingOf} from './standing.ts';
import type {Tempo} from './tempo.ts';

export type Step =
  /** Time passes up to a look; founders that joined by then are added, by their place among the classes. */
  | {readonly kind: 'later'; readonly atDays: number; readonly joining: readonly number[]}
  | {
      readonly kind: 'emerged';
      readonly counts: readonly number[];
      readonly branches: readonly EmergedBranch[];
    }
  | {
      readonly kind: 'counted';
      readonly branches: readonly StageBranch[];
      /** ln of the chance of this count if it is worthless. */
      readonly lnIfWorthless: number;
    }
  /** Paths that lost all their animals are left out; these are kept. */
  | {readonly kind: 'kept'; readonly paths: readonly number[]};

/** A point of the unknowns as far as the story has been told. */
export interface Told {
  /** ln of the chance of everything seen so far. */
  readonly lnChance: number;
  readonly standings: readonly Standing[];
}

/** How likely it is that a whole count is worthless. */
export const WORTHLESS = 0.02;

/** A point one step further on. */
export function tell(
  told: Told,
  step: Step,
  tempo: Tempo,
  classes: readonly FounderClass[],
  broods: readonly (number | undefined)[],
): Told {
  switch (step.kind) {
    case 'later': {
      const joined = step.joining.map(place => standingOf(tempo, classes[place]!, broods[place]));
      const standings = [...told.standings, ...joined].map(standing => later(tempo, standing, step.atDays));
      return {...told, standings};
    }
    case 'emerged': {
      const seen = emergedChance(tempo, told.standings, step.counts, step.branches);
      return {lnChance: told.lnChance + seen.lnChance, standings: seen.standings};
    }
    case 'counted': {
      const seen = countedChance(tempo, told.standings, step.branches);
      return {
        lnChance: told.lnChance + lnOfCount(seen.lnChance, step.lnIfWorthless),
        standings: seen.standings,
      };
    }
    case 'kept':
      return {...told, standings: step.paths.map(path => told.standings[path]!)};
  }
}

/** ln((1 − q) · P + q · P if worthless). */
function lnOfCount(lnChance: number, lnIfWorthless: number): number {
  const good = Math.log1p(-WORTHLESS) + lnChance;
  const worthless = Math.log(WORTHLESS) + lnIfWorthless;
  const larger = Math.max(good, worthless);
  return larger + Math.log(Math.exp(good - larger) + Math.exp(worthless - larger));
}
