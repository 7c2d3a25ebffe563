// Animals that rest before they go on: no date holds for them.

import {MS_PER_DAY} from '../records/entry.ts';
import type {FounderClass} from './founders.ts';
import type {Candidate} from './request.ts';

/**
 * The chance that an animal of the lot, as it was found, is in diapause, over candidates and classes. The month is
 * that of the day it joined the lot; a larva's chance holds for its instars too.
 */
export function diapauseChance(
  candidates: readonly Candidate[],
  weights: readonly number[],
  classes: readonly FounderClass[],
): number {
  const all = classes.reduce((sum, {count}) => sum + count, 0);
  let chance = 0;
  candidates.forEach(({profile}, i) => {
    for (const {stage, atDays, count} of classes) {
      const month = new Date(atDays * MS_PER_DAY).getUTCMonth() + 1;
      const known = profile.diapause.find(
        entry => isSameStage(entry.stage, stage) && entry.months.includes(month),
      );
      chance += ((known?.chance ?? 0) * weights[i]! * count) / all;
    }
  });
  return chance;
}

function isSameStage(known: string, found: string): boolean {
  return known === found || found.startsWith(`${known}-`);
}
