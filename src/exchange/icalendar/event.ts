// An event of a calendar file.
import type {Day} from '../../records/civil.ts';
import type {Instant} from '../../records/entry.ts';

export interface CalendarEvent {
  /** The same as long as it is the same matter, whatever day it moves to: a calendar that reads it again replaces it. */
  readonly uid: string;
  readonly summary: string;
  readonly description: string;
  readonly location?: string | undefined;
  /** From one instant to another, or whole days, the last one included. */
  readonly when:
    | {readonly from: Instant; readonly to: Instant}
    | {readonly firstDay: Day; readonly lastDay: Day};
}

/** An event as it stands in a file, with what tells a reader whether it is news. */
export interface DatedEvent extends CalendarEvent {
  /** Goes up by one with every change. */
  readonly sequence: number;
  /** When it was written like this. */
  readonly stamp: Instant;
  readonly cancelled: boolean;
}
