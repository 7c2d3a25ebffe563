// UTC months: the pieces in which readings are stored.
import {MS_PER_DAY} from '../records/entry.ts';

/** A UTC month, yyyy-mm. */
export type Month = string;

/** The UTC month an instant (ms since 1970) falls in. */
export function monthAt(ms: number): Month {
  return new Date(ms).toISOString().slice(0, 'yyyy-mm'.length);
}

/** The instant (ms since 1970) a month begins. */
export function startOf(month: Month): number {
  return Date.parse(`${month}-01T00:00:00Z`);
}

/** The instant (ms since 1970) the next month begins. */
export function endOf(month: Month): number {
  const start = new Date(startOf(month));
  return Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + 1);
}

/** The instant, in ms since 1970, of days since 1970. */
export function msOf(days: number): number {
  return Math.round(days * MS_PER_DAY);
}
