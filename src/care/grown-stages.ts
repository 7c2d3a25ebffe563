// How many animals of each stage a lot is to have on a day to come, for those that are counted as alive today.
import {type Stage, total} from '../records/stage.ts';

type Numbers = Readonly<Record<Stage, number>>;

/**
 * Those alive, shared out over the stages by what the forecast has. Where it does not tell the instars of a kind apart,
 * they stand to each other as they were counted.
 * @param shares what share of the animals is in which stage; they sum to one
 */
export function grownStages(alive: Numbers, shares: Numbers): Numbers {
  const all = total(alive);
  const grown: Record<Stage, number> = {};
  for (const [stage, share] of Object.entries(shares)) {
    const counted = Object.entries(alive).filter(([other]) => other.startsWith(`${stage}-`));
    const ofKind = counted.reduce((sum, [, count]) => sum + count, 0);
    if (ofKind === 0) grown[stage] = (grown[stage] ?? 0) + all * share;
    else
      for (const [instar, count] of counted)
        grown[instar] = (grown[instar] ?? 0) + (all * share * count) / ofKind;
  }
  return grown;
}
