// Where in a chain an animal may be, given the name of the stage it was found in.
import type {Stage} from '../records/stage.ts';
import type {Progress} from './founding.ts';
import type {Chain, ChainStage} from './stage-chain.ts';

/** The stage of a hidden animal: any, for as long as each takes. */
export const ANY_STAGE = 'any';

export interface Place {
  /** Which stage of the chain. */
  readonly index: number;
  readonly weight: number;
  readonly progress: Progress;
}

/**
 * The places that a stage's name may mean in this chain, with weights that sum to one; none where the chain does
 * not have it. `larva` (or `nymph`) is spread over the instars by how long each takes at 20 °C; an instar is read as
 * `larva` in a chain that tells none apart.
 */
export function placesOf({stages}: Chain, name: Stage, progress: Progress): readonly Place[] {
  const exact = stages.findIndex(stage => stage.name === name);
  if (exact >= 0) return [{index: exact, weight: 1, progress}];
  const [kind, instar] = name.split('-');
  if (instar !== undefined) {
    const whole = stages.findIndex(stage => stage.name === kind);
    return whole < 0 ? [] : [{index: whole, weight: 1, progress}];
  }
  return spreadOver(stages, stage => name === ANY_STAGE || stage.startsWith(`${kind}-`), progress);
}

/** A progress through several stages taken as one, divided among them by their length. */
function spreadOver(
  stages: readonly ChainStage[],
  isMeant: (name: Stage) => boolean,
  [from, to]: Progress,
): readonly Place[] {
  const meant = stages.flatMap((stage, index) =>
    isMeant(stage.name) ? [{index, days: stage.daysAt20}] : [],
  );
  const comparable = meant.every(({days}) => Number.isFinite(days));
  const lengths = meant.map(({days}) => (comparable ? days : 1));
  const whole = lengths.reduce((sum, length) => sum + length, 0);

  const places: Place[] = [];
  let start = 0;
  meant.forEach(({index}, i) => {
    const share = lengths[i]! / whole;
    const within = (progress: number) => Math.min(1, Math.max(0, (progress - start) / share));
    const [begin, end] = [within(from), within(to)];
    const isLast = i === meant.length - 1;
    const holdsPoint = from === to && from >= start && (from < start + share || isLast);
    const weight = from === to ? Number(holdsPoint) : ((end - begin) * share) / (to - from);
    if (weight > 0) places.push({index, weight, progress: [begin, end]});
    start += share;
  });
  return places;
}
