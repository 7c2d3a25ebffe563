// Which readings are new: those of instants that are not held yet.
import {MS_PER_DAY} from '../records/entry.ts';
import {rowsOf, type Series} from './series.ts';

export interface Unheld {
  readonly series: Series;
  /** Rows left out although their temperature is another than the one that is held, by more than rounding. */
  readonly conflicts: number;
}

/** Two readings of one instant that differ by more are two readings, °C. */
const ROUNDING_C = 0.1;

/**
 * The rows of `fresh` whose instants, to the millisecond, `held` does not have. Both in order of time, as series are;
 * what a logger exports again is the same reading, so the one that came first stays.
 */
export function unheld(fresh: Series, held: Series): Unheld {
  const kept: number[] = [];
  let conflicts = 0;
  let inHeld = 0;
  for (let row = 0; row < fresh.atDays.length; row++) {
    const at = toMs(fresh.atDays[row]!);
    while (inHeld < held.atDays.length && toMs(held.atDays[inHeld]!) < at) inHeld++;
    if (inHeld === held.atDays.length || toMs(held.atDays[inHeld]!) > at) kept.push(row);
    else if (Math.abs(fresh.temperatureC[row]! - held.temperatureC[inHeld]!) > ROUNDING_C) conflicts++;
  }
  return {series: kept.length === fresh.atDays.length ? fresh : rowsOf(fresh, kept), conflicts};
}

function toMs(days: number): number {
  return Math.round(days * MS_PER_DAY);
}
