// Something that has to be done again and again for one lot or one unit.
import type {Instant} from '../records/entry.ts';
import type {Lot, Rule, Unit} from '../records/state.ts';
import type {Deed} from './ledger.ts';
import type {Window} from './window.ts';

export interface Job {
  readonly rule: Rule;
  readonly unit: Unit;
  /** The lot it is done for; undefined when it is done for the unit. */
  readonly lot?: Lot | undefined;
  /** Every lot it serves. */
  readonly lots: readonly Lot[];
  /** What was done and skipped, in order of time. */
  readonly deeds: readonly Deed[];
  /** When it was last done, at the latest at `limit`. */
  lastDone(limit: Instant): Instant | undefined;
  /** The window that opens with the last time it was done; null when it is not wanted. */
  windowAfter(last: Instant | undefined): Window | null;
}
