// What a forecast is made from. All instants are days since 1970-01-01T00:00Z.
import type {Course} from '../climate/course.ts';
import type {Profile} from '../records/schema/index.ts';
import type {Stage, StageCounts} from '../records/stage.ts';
import type {Temperatures} from './dose-course.ts';
import type {OwnPace} from './lesson.ts';

/** Animals that joined the lot together. */
export interface FoundingCohort {
  readonly atDays: number;
  readonly stages: StageCounts;
  /** How far through their stage they were, from 0 (just moulted) to 1 (about to moult). */
  readonly progress: readonly [from: number, to: number];
  /** `one-brood`: all that start in the same stage are of one age; `mixed`: each of its own. */
  readonly ages: 'mixed' | 'one-brood';
  /** The lot that they joined, where they went from lot to lot. */
  readonly lot?: string | undefined;
}

/** A profile the lot may belong to. Weights need not sum to one. */
export interface Candidate {
  readonly profile: Profile;
  readonly weight: number;
  /** How fast its lots went in this room; absent: as published. A group's members are too unlike for one. */
  readonly ownPace?: OwnPace | undefined;
}

/**
 * Something seen of the animals, in order of time: the lot's sightings with their instants in days. `lot` is the one
 * that the animals were in, where they went from lot to lot.
 */
export type SeenAnimals = {readonly lot?: string | undefined} & Seen;

type Seen =
  | {
      readonly kind: 'count';
      readonly atDays: number;
      readonly stages: StageCounts;
      /** All animals alive were looked at. */
      readonly complete: boolean;
      readonly entry: string;
    }
  | {readonly kind: 'check'; readonly atDays: number; readonly entry: string}
  | {
      readonly kind: 'emergence';
      /** The last look at which they were not out. */
      readonly sinceDays: number;
      readonly atDays: number;
      readonly count: number;
      readonly entry: string;
    }
  | {
      readonly kind: 'removal';
      readonly atDays: number;
      readonly stage?: Stage | undefined;
      readonly count: number;
      /** The lot in which they go on; absent: they are gone. */
      readonly into?: string | undefined;
      readonly entry: string;
    }
  /** All of the lot go on in another. */
  | {readonly kind: 'merge'; readonly atDays: number; readonly into: string; readonly entry: string};

export interface ForecastRequest {
  /** The lot whose animals are asked about, where cohorts and sightings are told of several. */
  readonly lot?: string | undefined;
  /** What animals of other lots lived through before they came into this one, where it was not the same. */
  readonly elsewhere?: ReadonlyMap<string, Temperatures> | undefined;
  readonly cohorts: readonly FoundingCohort[];
  readonly candidates: readonly Candidate[];
  /** What the animals lived through and will, from the first cohort to the horizon (now + 400 days); NaN is unknown. */
  readonly course: Pick<Course, 'atDays' | 'temperatureC' | 'futures'>;
  readonly nowDays: number;
  /** How many are alive; null where nobody knows: hidden animals, or not counted. */
  readonly alive: number | null;
  /** A person closed the lot. */
  readonly closed: boolean;
  readonly sightings: readonly SeenAnimals[];
  /** Days by which the year where they come from lies behind that of the north, of which profiles tell the months. */
  readonly seasonLagDays?: number | undefined;
  /** Every time somebody looked for adults, in order of time. */
  readonly looksDays: readonly number[];
  /** Share of animals that reach the adult, from the room's own finished lots; null: the profiles' own. */
  readonly survival: number | null;
  /** The open rounds from the first cohort to the horizon, in order of time. */
  readonly roundsDays: readonly number[];
  /** For each round, the last instant of its opening at which somebody may still begin to look; absent: the rounds alone. */
  readonly closesDays?: readonly number[] | undefined;
  /** How long an adult may wait unseen. */
  readonly holdHours: number;
  /** Boundaries of the civil days from the first cohort to the horizon, in order of time; `perDay` lies between them. */
  readonly dayBoundsDays: ArrayLike<number>;
  /** Instants at which the shares of the stages are wanted beside now. */
  readonly sharesAtDays: ArrayLike<number>;
  /** Chances for which the instant is wanted at which an animal is out with them. */
  readonly chances?: readonly number[] | undefined;
  /** Instants by which the chance of an animal, and of the first of all, to be out is wanted. */
  readonly outAtDays?: readonly number[] | undefined;
  /** What the width of the window is made of is wanted too. */
  readonly doubts?: boolean | undefined;
  /** Futures of the course, by their place, in which the instant of a chance is wanted. */
  readonly inFutures?: readonly {readonly future: number; readonly chance: number}[] | undefined;
}
