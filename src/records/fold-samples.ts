// What is noted about a field sample while it is sorted.
import type {Dated} from './counting.ts';
import type {RoomDraft} from './draft.ts';
import {factsOf} from './fold-furniture.ts';
import type {RecordOf} from './schema/index.ts';

export function noteBycatch({samples}: RoomDraft, record: RecordOf<'bycatch'>, {at, entry}: Dated): void {
  const {sample, ...facts} = factsOf(record);
  samples.get(sample)?.bycatch.push({...facts, at, entry: entry.id});
}

/** The last word counts. */
export function noteSorting({samples}: RoomDraft, record: RecordOf<'sorting'>, {at}: Dated): void {
  const {state, note} = record;
  const sample = samples.get(record.sample);
  if (sample !== undefined) sample.sorting = {state, note, at};
}
