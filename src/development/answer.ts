// What a forecast says. All instants are days since 1970-01-01T00:00Z; null is beyond the horizon, or not known.
import type {Stage} from '../records/stage.ts';
import type {Doubts} from './doubts.ts';
import type {NotOut} from './not-out.ts';
import type {Rest} from './rest.ts';

export type ForecastStatus = 'developing' | 'due' | 'emerging' | 'late' | 'finished' | 'unknown';

/** Seven points of a distribution. */
export interface Quantiles {
  readonly p05: number | null;
  readonly p10: number | null;
  readonly p25: number | null;
  readonly p50: number | null;
  readonly p75: number | null;
  readonly p90: number | null;
  readonly p95: number | null;
}

/** The median and the window that holds four in five. */
export type Window = Pick<Quantiles, 'p10' | 'p50' | 'p90'>;

/** Probability of each stage, of the animals alive; `adult` for those probably out already, unseen. Sums to 1. */
export type StageShares = Readonly<Record<Stage | 'adult', number>>;

/** One civil day of the emergence curve. */
export interface EmergenceDay {
  readonly fromDays: number;
  readonly toDays: number;
  /** That an animal alive now, taken at random, emerges on this day. */
  readonly probability: number;
  /** Adults expected, survival applied; null where nobody knows how many are alive. */
  readonly expected: number | null;
}

export interface LotForecast {
  readonly status: ForecastStatus;
  readonly alive: number | null;
  readonly stagesNow: StageShares;
  /** The shares at the instants that were asked for. */
  readonly stageShares: readonly {readonly atDays: number; readonly shares: StageShares}[];
  /** Of the heaviest candidate, where its most likely stage counts in degree-days: how far those now in it are on average. */
  readonly degreeDays: {
    readonly stage: Stage;
    readonly accumulated: number;
    readonly required: number;
    readonly lower: number;
  } | null;
  /** Adults still to come within the horizon, survival applied. */
  readonly expected: number | null;
  /** The emergence of one animal alive now, taken at random. */
  readonly animal: Quantiles;
  /** At the instants that were asked for: that an animal taken at random is out, and that any is (null where nobody knows how many there are). */
  readonly outBy: readonly {
    readonly atDays: number;
    readonly animal: number;
    readonly first: number | null;
  }[];
  /** When one animal is out with each of the chances that were asked for. */
  readonly atChances: readonly (number | null)[];
  /** The same in each of the futures that were asked for. */
  readonly inFutures: readonly (number | null)[];
  /** When the first, half (rounded up) and 95 per cent (rounded up) of the animals now alive are out. */
  readonly first: Window | null;
  readonly half: Window | null;
  readonly last: Window | null;
  /** The days that hold any probability worth naming, in order of time. */
  readonly perDay: readonly EmergenceDay[];
  /** One animal of each sex, where a likely profile tells them apart: what it needs from the last look on. */
  readonly sexes: {readonly female: Window; readonly male: Window} | null;
  readonly pace: {readonly p10: number; readonly p50: number; readonly p90: number} | null;
  /** In the order of the request; the weights sum to one. */
  readonly candidates: readonly {readonly profile: string; readonly weight: number}[];
  /** Animals that rest (diapause) before they go on. Where most do, the times are those after the cold that ends it. */
  readonly rest: Rest;
  /** Of a lot that is late: what one animal that is left may be. */
  readonly notOut: NotOut | null;
  readonly startCheckingDays: number | null;
  readonly nextCheckDays: number | null;
  /** What the width of the window is made of; null where it was not asked for, or there is no window. */
  readonly doubts: Doubts | null;
  /** Entries whose count was more likely worthless than not, and so left out. */
  readonly leftOut: readonly string[];
  /** What was taken for granted, and what would help, in plain sentences. */
  readonly assumptions: readonly string[];
}
