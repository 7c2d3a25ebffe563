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
  /** What to do about it. */
  readonly mend: string;
}

/** What the room's daybook does not hold, found out by the caller. */
export interface RoomFacts {
  /** By logger: its last imported reading; a logger that never had one is left out. */
  readonly lastReadings: ReadonlyMap<string, Instant>;
  /** By unit: the last reading as its animals have it, where it is not older than the logger's allowed gap. */
  readonly climate: ReadonlyMap<string, ReadingNow>;
}

export interface ReadingNow {
  readonly at: Instant;
  readonly temperatureC?: number | undefined;
  readonly rhPercent?: number | undefined;
}
