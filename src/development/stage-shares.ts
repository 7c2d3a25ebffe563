// In which stages the animals are at an instant, over everything unknown.
import type {StageShares} from './answer.ts';
import {borrowing} from './arena.ts';
import type {PaceLine} from './scenario.ts';
import {later, sharesIn} from './standing.ts';

/** The name of what follows the last stage. */
export const ADULT = 'adult';
/** Shares below this are not named. */
const NEGLIGIBLE = 1e-6;

/** The probability of each stage at an instant, of the animals that had joined the lot by then; they sum to one. */
export function stageSharesAt(lines: readonly PaceLine[], atDays: number): StageShares {
  const sums = new Map<string, number>();
  let whole = 0;
  for (const {member, points} of lines)
    for (const {tempo, weight, classes} of points) {
      if (weight === 0) continue;
      for (const {count, standing} of classes) {
        if (standing.atDays > atDays) continue;
        const all = weight * count;
        whole += all;
        let out = all;
        const shares = borrowing(() => sharesIn(tempo, later(tempo, standing, atDays)));
        shares.forEach((share, stage) => {
          add(sums, member.chain.stages[stage]!.name, all * share);
          out -= all * share;
        });
        add(sums, ADULT, Math.max(0, out));
      }
    }
  return normalised(sums, whole);
}

function add(sums: Map<string, number>, name: string, share: number) {
  sums.set(name, (sums.get(name) ?? 0) + share);
}

function normalised(sums: ReadonlyMap<string, number>, whole: number): StageShares {
  const named = [...sums].filter(([, share]) => share > NEGLIGIBLE * whole);
  const rest = named.reduce((sum, [, share]) => sum + share, 0);
  return Object.fromEntries(named.map(([name, share]) => [name, share / rest]));
}
