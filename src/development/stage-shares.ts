// In which stages the animals are at an instant, over everything unknown.
import type {StageShares} from './answer.ts';
import type {Prospects} from './prospects.ts';
import type {PaceLine, PacePoint} from './scenario.ts';

/** The name of what follows the last stage. */
export const ADULT = 'adult';
/** Shares below this are not named. */
const NEGLIGIBLE = 1e-6;

/** The probability of each stage at an instant that the prospects tell of, by its place; they sum to one. */
export function stageShares(
  lines: readonly PaceLine[],
  prospects: ReadonlyMap<PacePoint, Prospects>,
  instant: number,
): StageShares {
  const sums = new Map<string, number>();
  for (const {member, points} of lines) {
    const {stages} = member.chain;
    for (const point of points) {
      const animals = prospects.get(point)?.stages[instant];
      for (let stage = 0; animals !== undefined && stage < animals.length; stage++)
        add(sums, stages[stage]?.name ?? ADULT, point.weight * animals[stage]!);
    }
  }
  return normalised(sums);
}

function add(sums: Map<string, number>, name: string, share: number) {
  sums.set(name, (sums.get(name) ?? 0) + share);
}

function normalised(sums: ReadonlyMap<string, number>): StageShares {
  const whole = [...sums.values()].reduce((sum, share) => sum + share, 0);
  const named = [...sums].filter(([, share]) => share > NEGLIGIBLE * whole);
  const rest = named.reduce((sum, [, share]) => sum + share, 0);
  return Object.fromEntries(named.map(([name, share]) => [name, share / rest]));
}
