// What the screens and their forecasting thread say to each other.
import type {Day} from '../records/civil.ts';
import type {Outlook} from '../work/outlook.ts';

export interface ForecastAsked {
  /** A later number makes the earlier ones void. */
  readonly number: number;
  /** Civil days for whose noon the shares of the stages are wanted. */
  readonly days: readonly Day[];
  /** The lot to begin with. */
  readonly first: string | undefined;
}

export type ForecastTold =
  | {readonly number: number; readonly is: 'outlook'; readonly code: string; readonly outlook: Outlook}
  | {
      readonly number: number;
      readonly is: 'refused';
      /** Absent where the room itself could not be opened. */
      readonly code: string | undefined;
      readonly what: string;
      readonly where: string;
      readonly mend: string;
    }
  | {readonly number: number; readonly is: 'done'};

/** Who asks of which room; what a session says beside the answer is said by the screens. */
export interface ForecasterOf {
  readonly dir: string;
  readonly by: string;
  readonly now: string | undefined;
}
