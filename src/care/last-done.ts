// When a task was last done for a lot, also before its animals were parted from another lot or joined it.
import type {Instant} from '../records/entry.ts';
import type {Lot} from '../records/state.ts';
import {type Deed, lastIn} from './ledger.ts';

/**
 * The last time a task was done for a lot's animals, at the latest at `limit`; undefined when it never was. What was
 * split off keeps the time of the lot it comes from; of lots that were merged the one waiting longer counts.
 * @param deedsOf what was done and skipped for a lot, in order of time
 */
export function lastDoneForLot(
  lot: Lot,
  limit: Instant,
  deedsOf: (lot: Lot) => readonly Deed[],
  lots: ReadonlyMap<string, Lot>,
): Instant | undefined {
  let last = lastIn(deedsOf(lot), limit);
  for (const {at, how, fromLot} of lot.cohorts) {
    const from = lots.get(fromLot ?? '');
    if (from === undefined || at >= limit || (last !== undefined && last >= at)) continue;
    const theirs = lastDoneForLot(from, at, deedsOf, lots);
    if (theirs === undefined) continue;
    last = how === 'merged' && last !== undefined ? Math.min(last, theirs) : theirs;
  }
  return last;
}
