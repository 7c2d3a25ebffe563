// An entry of the daybook: one record, as it was written down.
import type {RoomRecord} from './schema/index.ts';

/** Milliseconds since 1970, UTC. Records hold ISO text; everything computed from them holds this. */
export type Instant = number;

export interface Entry {
  /** Unique in the room, in the order of writing. */
  readonly id: string;
  /** All entries of one request share it; undo takes back a whole request. */
  readonly request: string;
  /** When it was written down: ISO 8601 with offset. */
  readonly recordedAt: string;
  readonly by: string;
  /**
   * The record with every instant carrying its offset. `at` is filled in, save where a sample or what stands and
   * holds (a unit, logger, rule, profile, person, calendar, setting) is first named without it: that holds from the beginning.
   */
  readonly record: RoomRecord;
}

/** The instant of ISO text that carries its offset. */
export function instantOf(iso: string): Instant {
  return Date.parse(iso);
}

export const MS_PER_DAY = 86_400_000;
export const MS_PER_HOUR = 3_600_000;

/** A record of this key was written down before. */
export function isApplied(key: unknown, entries: readonly Entry[]): boolean {
  return key !== undefined && entries.some(({record}) => record.key === key);
}

/** When it happened; where the record does not say, when it was written down. */
export function atOf({record, recordedAt}: Entry): Instant {
  if ('at' in record && record.at !== undefined) return instantOf(record.at);
  return instantOf(record.record === 'extremes' ? record.to : recordedAt);
}
