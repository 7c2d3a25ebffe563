// Something amiss in the room that is no task, and what it is told from.
import type {Instant} from '../records/entry.ts';

export interface Alert {
  /** Kind, code and day: `silent:L1:2026-06-12`. The same as long as it is the same matter. */
  readonly id: string;
  /** What is amiss, as a sentence without a full stop. */
  readonly what: string;
  /** Codes of the units, loggers or lots concerned. */
  readonly where: string;
  readonly since: Instant;
  /** It is said beforehand: what is done about it before `since` is done about it. */
  readonly foreseen?: boolean | undefined;
  /** What to do about it. */
  readonly mend: string;
}

/** What the room's daybook does not hold, found out by the caller. */
export interface RoomFacts {
  /** By logger: its last imported reading; a logger that never had one is left out. */
  readonly lastReadings: ReadonlyMap<string, Instant>;
  /** By unit: the last reading as its animals have it, where it is not older than the logger's allowed gap. */
  readonly climate: ReadonlyMap<string, ReadingNow>;
  /** What a person read beside a logger, with what the logger had at that moment. */
  readonly checked?: readonly CheckedReading[];
}

/** A temperature read by a person and the same from the logger, °C, as the animals have it. */
export interface CheckedReading {
  readonly logger: string;
  /** The unit whose water it was; undefined for the logger itself. */
  readonly unit?: string | undefined;
  readonly at: Instant;
  readonly byHandC: number;
  readonly loggerC: number;
}

/** A stretch of readings of one unit, in order of time. */
export interface RecentReadings {
  readonly at: readonly Instant[];
  readonly temperatureC: readonly number[];
  readonly rhPercent: readonly number[];
  /** A longer pause says nothing of the time between. */
  readonly maxGapMs: number;
}

export interface ReadingNow {
  readonly at: Instant;
  readonly temperatureC?: number | undefined;
  readonly rhPercent?: number | undefined;
  /** The last days up to it. */
  readonly recent?: RecentReadings | undefined;
}
