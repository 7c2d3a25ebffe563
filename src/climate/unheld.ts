// Which readings are new: those of instants that are not held yet.
import {MS_PER_DAY} from '../records/entry.ts';
import {rowsOf, type Series} from './series.ts';

/**
 * The rows of `fresh` whose instants, to the millisecond, `held` does not have. Both in order of time, as series are;
 * what a logger exports again is the same reading, so the one that came first stays.
 */
export function unheld(fresh: Series, held: Series): Series {
  const known = new Set(Array.from(held.atDays, toMs));
  const kept: number[] = [];
  fresh.atDays.forEach((at, row) => {
    if (!known.has(toMs(at))) kept.push(row);
  });
  return kept.length === fresh.atDays.length ? fresh : rowsOf(fresh, kept);
}

function toMs(days: number): number {
  return Math.round(days * MS_PER_DAY);
}
