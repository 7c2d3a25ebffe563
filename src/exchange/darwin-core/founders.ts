// The animals with which a lot began, by kind of stage.
import {countsInWords} from '../../records/stage-words.ts';
import type {Lot} from '../../records/state.ts';

/** In place of a stage, where animals are hidden in galls, wood, litter or fruit. */
export const HIDDEN = 'hidden';

/** A lot's founders by kind of stage; of hidden animals one record without a number. */
export function foundersOf(lot: Lot): {stage: string; count?: number; instars?: string}[] {
  const {origin, material, cohorts, counted} = lot;
  if (origin.kind === 'lot' && origin.how === 'split') return [];
  if (material !== undefined) return [{stage: HIDDEN}];
  const started = cohorts.find(({how}) => how === 'started')?.stages ?? {};
  const kinds = new Map<string, Record<string, number>>();
  for (const [stage, count] of Object.entries(started)) {
    const kind = stage.split('-')[0]!;
    if (count > 0) kinds.set(kind, {...kinds.get(kind), [stage]: count});
  }
  return [...kinds].map(([stage, counts]) => ({
    stage,
    ...(counted === 'unknown' ? {} : {count: Object.values(counts).reduce((sum, count) => sum + count, 0)}),
    ...(Object.keys(counts).some(each => each !== stage) ? {instars: countsInWords(counts)} : {}),
  }));
}
