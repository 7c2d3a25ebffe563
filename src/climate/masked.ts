// Readings without those that a person has masked.
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {Mask} from '../records/state.ts';
import {rowsOf, type Series} from './series.ts';

/** Whether the last word on an instant, ends included, is that it is not to be trusted. Masks of one logger, in order. */
export function isMasked(masks: readonly Mask[], at: Instant): boolean {
  const last = masks.findLast(({from, to}) => from <= at && at <= to);
  return last !== undefined && !last.lift;
}

/** Whether the last word on an instant is a person's that it is to be trusted, whatever a rule says. */
export function isTrusted(masks: readonly Mask[], at: Instant): boolean {
  return masks.findLast(({from, to}) => from <= at && at <= to)?.lift === true;
}

/** The series without its masked rows; itself where nothing is masked. Masks of this logger only, in order. */
export function masked(series: Series, masks: readonly Mask[]): Series {
  if (!masks.some(({lift}) => !lift)) return series;
  const kept: number[] = [];
  series.atDays.forEach((at, row) => {
    if (!isMasked(masks, Math.round(at * MS_PER_DAY))) kept.push(row);
  });
  return kept.length === series.atDays.length ? series : rowsOf(series, kept);
}
