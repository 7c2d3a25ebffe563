// Civil time as the pure folders see it: days and times of day in the room's zone. Made in exchange/.
import type {Instant} from './entry.ts';

/** A civil day, yyyy-mm-dd. */
export type Day = string;

export type Weekday = 'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun';

export interface Civil {
  readonly zone: string;
  /** The civil day an instant falls in. */
  dayOf(at: Instant): Day;
  /** The instant of a time of day, hh:mm. A time that a clock change skips is the instant the clocks go forward. */
  at(day: Day, time: string): Instant;
  addDays(day: Day, days: number): Day;
  weekdayOf(day: Day): Weekday;
  /** How far the zone's clocks are ahead of UTC then, ms. */
  offsetMs(at: Instant): number;
  /** ISO 8601 with the zone's offset, to the second (finer only where the instant is). */
  iso(at: Instant): string;
}
