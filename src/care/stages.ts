// What the stages of a lot's animals mean for its care: who eats, who rests, who may emerge, and since when.
import type {Instant} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import {type Stage, total} from '../records/stage.ts';
import type {Lot} from '../records/state.ts';

type Animals = Pick<Lot, 'alive' | 'cohorts' | 'material' | 'counted'>;

/** A larva or nymph eats; eggs, prepupae and pupae do not. Common practice, no source. */
export function eats(stage: Stage): boolean {
  return stage.startsWith('larva') || stage.startsWith('nymph');
}

/** A stage that adults come out of: a pupa, or a nymph whose instars may be the last. */
export function mayEmerge(stage: Stage): boolean {
  return stage === 'pupa' || stage.startsWith('nymph');
}

/** `larva` names every instar of it; any other stage only itself. */
export function isStage(stage: Stage, named: Stage): boolean {
  return stage === named || stage.startsWith(`${named}-`);
}

/** There is somebody to care for. A lot whose animals are hidden or not counted only ends when a person closes it. */
export function isLiving(lot: Lot): boolean {
  return lot.closed === undefined && (isHidden(lot) || total(lot.alive) > 0);
}

/** The stages its animals were last seen in; those it began with where nobody counted. */
export function stagesOf({alive, cohorts, counted}: Animals): readonly Stage[] {
  const seen = Object.keys(alive).filter(stage => alive[stage]! > 0);
  if (seen.length > 0 || counted !== 'unknown') return seen;
  return [...new Set(cohorts.flatMap(({stages}) => Object.keys(stages)))];
}

/** Any of its animals eat. Those inside material are not fed. */
export function hasFeeders(lot: Animals): boolean {
  if (lot.material !== undefined) return false;
  for (const stage in lot.alive) if (lot.alive[stage]! > 0 && eats(stage)) return true;
  return lot.counted === 'unknown' && stagesOf(lot).some(eats);
}

/** How many of the animals counted still eat. */
export function feeders({alive}: Pick<Lot, 'alive'>): number {
  return Object.entries(alive).reduce((sum, [stage, count]) => (eats(stage) ? sum + count : sum), 0);
}

/**
 * Since when animals of such a stage have been in the lot, as far as anybody saw. Animals that came from another
 * lot count from when that one had them.
 * @param lots where to look that one up
 * @param before only what was so before this instant
 */
export function since(
  lot: Lot,
  suits: (stage: Stage) => boolean,
  lots: ReadonlyMap<string, Lot>,
  before = Number.POSITIVE_INFINITY,
): Instant {
  const among = (stages: object) => Object.keys(stages).some(suits);
  let first = Number.POSITIVE_INFINITY;
  for (const {at, stages, fromLot} of lot.cohorts) {
    if (at >= before || !among(stages)) continue;
    const from = lots.get(fromLot ?? '');
    first = Math.min(first, at, from === undefined ? at : since(from, suits, lots, at));
  }
  const counted = lot.sightings.find(sighting => sighting.kind === 'count' && among(sighting.stages));
  if (counted !== undefined) first = Math.min(first, counted.at);
  return first < before ? first : lot.startedAt;
}

/** Since when nobody in the lot has eaten: the first count after the last that held a larva or nymph. */
export function restsSince(lot: Lot): Instant {
  const counts = lot.sightings.filter(sighting => sighting.kind === 'count');
  const last = counts.findLastIndex(({stages}) => Object.keys(stages).some(eats));
  return (
    (last < 0 ? counts.find(({stages}) => !Object.keys(stages).some(eats)) : counts[last + 1])?.at ??
    lot.startedAt
  );
}
