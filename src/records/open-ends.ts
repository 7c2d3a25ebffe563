// What is still to be done about samples, lots and specimens on paper and under the lens: not linked, not labelled, not
// identified, not identified for too long.
import {type Instant, MS_PER_DAY} from './entry.ts';
import type {Lot, RoomState, Sample, Specimen} from './state.ts';

export type OpenEnd = 'unlinked' | 'unlabelled' | 'unidentified' | 'overdue' | 'unsorted';

export interface Open {
  readonly code: string;
  readonly kind: 'sample' | 'lot' | 'specimen';
  readonly what: OpenEnd;
  /** In words: what is missing. */
  readonly missing: string;
  readonly since: Instant;
}

/** A specimen waits so long for its name before it is overdue (common practice, no source). */
export const OVERDUE_DAYS = 180;

/** A sample waits so long to be sorted (common practice, no source). */
const UNSORTED_DAYS = 14;

/** Everything open, the oldest first. */
export function openEnds(state: RoomState, now: Instant, overdueDays = OVERDUE_DAYS): Open[] {
  const all = [
    ...[...state.samples.values()].flatMap(sample => ofSample(sample, state, now)),
    ...[...state.lots.values()].flatMap(ofLot),
    ...[...state.specimens.values()].flatMap(specimen => ofSpecimen(specimen, now, overdueDays)),
  ];
  return all.sort((a, b) => a.since - b.since);
}

function ofSample(sample: Sample, {lots, samples}: RoomState, now: Instant): Open[] {
  const {code, at, specimens, sorting} = sample;
  const about = {code, kind: 'sample', since: at} as const;
  const isUsed =
    specimens.length > 0 ||
    [...lots.values()].some(lot => lot.sample === code) ||
    [...samples.values()].some(part => part.of === code);
  const isOld = now - at >= UNSORTED_DAYS * MS_PER_DAY;
  const open: Open[] = [];
  if (!isUsed && sorting?.state !== 'sorted')
    open.push({...about, what: 'unlinked', missing: 'nothing was made of it yet: no lot, nothing taken out'});
  else if (sorting !== undefined && sorting.state !== 'sorted' && isOld)
    open.push({
      ...about,
      what: 'unsorted',
      missing: `sorted ${sorting.state === 'partly' ? 'only in part' : 'not yet'}`,
    });
  if (sample.of === undefined && sample.place?.latitude === undefined)
    open.push({...about, what: 'unlinked', missing: 'its place has no coordinates'});
  if (sample.of === undefined && (sample.collectors ?? []).length === 0)
    open.push({...about, what: 'unlinked', missing: 'nobody is named as its collector'});
  return open;
}

function ofLot({code, startedAt, taxon, candidates, closed}: Lot): Open[] {
  if (closed !== undefined || taxon !== undefined || candidates.length > 0) return [];
  const missing = 'neither a name nor a candidate';
  return [{code, kind: 'lot', since: startedAt, what: 'unidentified', missing}];
}

function ofSpecimen(specimen: Specimen, now: Instant, overdueDays: number): Open[] {
  const {code, at, fate, identifications, printed, exuviae} = specimen;
  const about = {code, kind: 'specimen', since: at} as const;
  const open: Open[] = [];
  const days = Math.floor((now - at) / MS_PER_DAY);
  if (identifications.length === 0)
    open.push(
      days >= overdueDays
        ? {...about, what: 'overdue', missing: `not identified for ${days} days`}
        : {...about, what: 'unidentified', missing: 'not identified yet'},
    );
  if (printed.length === 0 && fate !== 'released')
    open.push({...about, what: 'unlabelled', missing: 'no label printed'});
  if (exuviae !== undefined && exuviae.association === undefined)
    open.push({
      ...about,
      what: 'unlinked',
      missing: `nobody said how surely ${exuviae.what ?? 'exuviae'} ${exuviae.code} belong to it`,
    });
  return open;
}
