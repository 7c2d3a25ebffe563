// One doubt about readings, and what a rule knows of the place they come from.
import type {DoubtName} from './doubt-rules.ts';

/** A run of rows that a rule doubts. */
export interface Doubt {
  readonly rule: DoubtName;
  /** First and last row. */
  readonly first: number;
  readonly last: number;
  /** What was seen, as a sentence without a full stop. */
  readonly what: string;
}

/** Where the logger hangs, as far as it tells what its readings can be. */
export interface LoggerPlace {
  readonly inWater: boolean;
  /** The local time of day, hours. */
  readonly hourOf: (atDays: number) => number;
}
