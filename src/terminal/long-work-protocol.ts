// What the screens and the thread that does their long work say to each other.
import type {Glyphs} from '../exchange/pictures/glyphs.ts';
import type {Line} from '../exchange/pictures/line.ts';
import type {Day} from '../records/civil.ts';
import type {Imported} from '../work/import.ts';
import type {Outlook} from '../work/outlook.ts';
import type {Question} from '../work/said-answer.ts';
import type {SaidLines} from '../work/said-lines.ts';
import type {TextTopic} from './sheet.ts';

/** The forecasts of all open lots, each told as soon as it is known. */
export interface ForecastsAsked {
  /** Civil days for whose noon the shares of the stages are wanted. */
  readonly days: readonly Day[];
  /** The lot to begin with. */
  readonly first: string | undefined;
}

/** A page of words. */
export interface TextAsked {
  readonly topic: TextTopic;
  readonly columns: number;
  readonly glyphs: Glyphs;
}

/** Every question has its number. A later one for forecasts makes the earlier ones void. */
export type Asked =
  | (ForecastsAsked & {readonly number: number; readonly is: 'forecasts'})
  | (TextAsked & {readonly number: number; readonly is: 'text'})
  | {readonly number: number; readonly is: 'answer'; readonly question: Question}
  /** A logger's file, read into the room: all that rests on its readings is worked out anew. */
  | {readonly number: number; readonly is: 'import'; readonly logger: string; readonly path: string}
  /** What the care list needs to know of each lot, to be kept in the room's cache. */
  | {readonly number: number; readonly is: 'expectations'};

export type Told =
  | {readonly number: number; readonly is: 'outlook'; readonly code: string; readonly outlook: Outlook}
  | {readonly number: number; readonly is: 'text'; readonly text: readonly Line[]}
  | {readonly number: number; readonly is: 'answer'; readonly answer: SaidLines}
  | {readonly number: number; readonly is: 'imported'; readonly imported: Imported}
  | {
      readonly number: number;
      readonly is: 'refused';
      /** The lot that has no forecast; absent where the question as a whole was refused. */
      readonly code?: string | undefined;
      readonly what: string;
      readonly where: string;
      readonly mend: string;
    }
  /** No more forecasts come; what is expected is in the cache. */
  | {readonly number: number; readonly is: 'done'};

/** Who asks of which room; what a session says beside the answer is said by the screens. */
export interface LongWorkOf {
  readonly dir: string;
  readonly by: string;
  readonly now: string | undefined;
}
