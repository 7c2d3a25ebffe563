// In which stages the animals are at an instant, over everything unknown.
import type {StageShares} from './answer.ts';
import {massUpTo} from './measure.ts';
import type {AnimalClass, PaceLine} from './scenario.ts';
import {ownDose, type Tempo} from './tempo.ts';

/** The name of what follows the last stage. */
export const ADULT = 'adult';
/** Shares below this are not named. */
const NEGLIGIBLE = 1e-6;

/** The probability of each stage at an instant, of the animals that had joined the lot by then; they sum to one. */
export function stageSharesAt(lines: readonly PaceLine[], atDays: number): StageShares {
  const sums = new Map<string, number>();
  let whole = 0;
  for (const {member, points} of lines) {
    const {stages} = member.chain;
    for (const {tempo, weight, classes} of points) {
      if (weight === 0) continue;
      for (const animals of classes) {
        if (animals.atDays > atDays) continue;
        const all = weight * animals.count;
        whole += all;
        let reached = 1;
        for (let stage = 0; stage < stages.length; stage++) {
          const left = shareBeyond(animals, tempo, stage, atDays);
          add(sums, stages[stage]!.name, all * (reached - left));
          reached = left;
        }
        add(sums, ADULT, all * reached);
      }
    }
  }
  return normalised(sums, whole);
}

/** The share of a class that has left a stage by an instant, or began beyond it. */
export function shareBeyond({passages}: AnimalClass, tempo: Tempo, stage: number, atDays: number): number {
  const leaving = passages.leaving[stage] ?? null;
  const left = leaving === null ? 0 : massUpTo(leaving, ownDose(tempo, stage, atDays));
  return Math.min(1, left + 1 - passages.startsBy[stage]!);
}

function add(sums: Map<string, number>, name: string, share: number) {
  sums.set(name, (sums.get(name) ?? 0) + share);
}

function normalised(sums: ReadonlyMap<string, number>, whole: number): StageShares {
  const named = [...sums].filter(([, share]) => share > NEGLIGIBLE * whole);
  const rest = named.reduce((sum, [, share]) => sum + share, 0);
  return Object.fromEntries(named.map(([name, share]) => [name, share / rest]));
}
