// What happens to the immatures of one lot: counted, looked at, hatched, found, lost, moved, closed.
import type {Dated} from './counting.ts';
import type {LotDraft} from './draft.ts';
import type {Instant} from './entry.ts';
import {endLot, isHidden, leaveUnit, removeFrom} from './fold-lots.ts';
import type {RecordOf} from './schema/index.ts';
import {type Stage, type StageCounts, total} from './stage.ts';
import {isEmpty, put, recount, take} from './stock.ts';

/** A count changes stages only. Animals counted beyond those alive are booked as found. */
export function countAnimals(lot: LotDraft, record: RecordOf<'count'>, {at, entry}: Dated): void {
  const {stages} = record;
  const complete = record.complete ?? (!isHidden(lot) && total(stages) === total(lot.alive));
  const {alive, surplus} = recount(lot.alive, stages);
  lot.alive = alive;
  if (!isEmpty(surplus)) comeToLight(lot, surplus, {at, entry});
  lot.sightings.push({kind: 'count', at, stages, complete, entry: entry.id});
  if (complete) look(lot, at);
}

/** A look that found adults is no sighting of its own: they are recorded as an emergence. */
export function lookForAdults(lot: LotDraft, {found}: RecordOf<'check'>, {at, entry}: Dated): void {
  if (found === 0) lot.sightings.push({kind: 'check', at, entry: entry.id});
  look(lot, at);
}

/** The hatched come out of the eggs counted, as seen at this look; the rest are new to the lot. */
export function hatchAnimals(lot: LotDraft, record: RecordOf<'hatch'>, {at, entry}: Dated): void {
  const stage = record.stage ?? hatchlingStage(lot);
  const fromEggs = Math.min(record.count, lot.alive.egg ?? 0);
  const others = record.count - fromEggs;
  lot.alive = put(take(lot.alive, fromEggs, {stage: 'egg'}).left, {[stage]: record.count});
  if (fromEggs > 0) {
    const seen = {kind: 'count', at, stages: {[stage]: fromEggs}, complete: false, entry: entry.id} as const;
    lot.sightings.push(seen);
  }
  if (others > 0) {
    lot.tally.hatched += others;
    lot.cohorts.push({
      ...{at, stages: {[stage]: others}, progress: [0, 0], ages: 'mixed'},
      ...{how: 'hatched', entry: entry.id},
    });
  }
}

export function findAnimals(lot: LotDraft, {stage, count}: RecordOf<'found'>, dated: Dated): void {
  lot.alive = put(lot.alive, {[stage]: count});
  comeToLight(lot, {[stage]: count}, dated);
}

export function loseAnimals(lot: LotDraft, record: RecordOf<'loss'>, {at, entry}: Dated): void {
  const {stage, count} = record;
  removeFrom(lot, 'lost', count, stage === undefined ? 'youngest' : {stage});
  lot.sightings.push({kind: 'removal', at, stage, count, entry: entry.id});
}

export function moveLot(lot: LotDraft, {unit}: RecordOf<'move'>, {at}: Dated): void {
  leaveUnit(lot, at);
  lot.stays.push({unit, from: at});
}

export function closeLot(lot: LotDraft, {reason}: RecordOf<'close'>, {at}: Dated): void {
  endLot(lot, {at, reason});
}

/** Somebody looked whether adults were out. */
export function look(lot: LotDraft, at: Instant): void {
  lot.looks.push(at);
  lot.lastLook = at;
}

/** The last look before an instant, else the start of the lot. */
export function lookBefore(lot: LotDraft, at: Instant): Instant {
  return lot.looks.findLast(look => look < at) ?? lot.startedAt;
}

function comeToLight(lot: LotDraft, stages: StageCounts, {at, entry}: Dated): void {
  lot.tally.found += total(stages);
  lot.cohorts.push({at, stages, progress: [0, 1], ages: 'mixed', how: 'found', entry: entry.id});
}

/** `nymph-1` where the lot has had nymphs, else `larva-1`; without the number where it tells no instars apart. */
function hatchlingStage(lot: LotDraft): Stage {
  const known = [lot.alive, ...lot.cohorts.map(({stages}) => stages)].flatMap(stages => Object.keys(stages));
  const kind = known.some(stage => stage.startsWith('nymph')) ? 'nymph' : 'larva';
  return known.includes(kind) ? kind : `${kind}-1`;
}
