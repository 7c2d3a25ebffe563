// By when adults are wanted, as a person writes it: a day, or an instant of it.
import {readDay, readInstant} from '../exchange/instants.ts';
import type {Civil, Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';

export interface Wanted {
  readonly adultsBy: Day;
  readonly byInstant?: Instant | undefined;
}

/** "2026-07-04", "2026-07-04T10:00"; undefined where it is neither. */
export function readWanted(text: string, civil: Civil): Wanted | undefined {
  const day = readDay(text);
  if (day !== undefined) return {adultsBy: day};
  const byInstant = /\d-\d/.test(text) ? readInstant(text.replace(' ', 'T'), civil) : undefined;
  return byInstant === undefined ? undefined : {adultsBy: civil.dayOf(byInstant), byInstant};
}
