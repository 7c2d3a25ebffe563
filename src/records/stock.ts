// The animals of a lot by stage: taking some out, and learning their stages anew. Pure sums, no history.
import {compareStages, inOrder, type Stage, type StageCounts, total} from './stage.ts';

/** Where animals are taken from: a stage named by a person, the youngest first, or the oldest first. */
export type Source = {readonly stage: Stage} | 'youngest' | 'oldest';

export interface Taken {
  readonly left: StageCounts;
  /** How many were to be taken that are not there. */
  readonly missing: number;
}

/**
 * Take animals out. A stage that holds too few is helped out by the latest stage before it (they have moulted
 * unseen), then by any other, so that the sum stays right.
 */
export function take(alive: StageCounts, count: number, source: Source): Taken {
  const left = {...alive};
  const missing = drain(left, count, source);
  return {left: withoutEmpty(left), missing};
}

/** Put animals in. */
export function put(alive: StageCounts, added: StageCounts): StageCounts {
  const sum: Record<Stage, number> = {...alive};
  for (const stage in added) sum[stage] = (sum[stage] ?? 0) + added[stage]!;
  return withoutEmpty(sum);
}

/**
 * A count tells the stages of the animals counted; those not counted keep the stage they were last seen in. Animals
 * counted beyond those alive are the surplus.
 */
export function recount(
  alive: StageCounts,
  counted: StageCounts,
): {readonly alive: StageCounts; readonly surplus: StageCounts} {
  const uncounted = {...alive};
  const surplus: Record<Stage, number> = {};
  for (const [stage, count] of inOrder(counted).reverse()) {
    const missing = drain(uncounted, count, {stage});
    if (missing > 0) surplus[stage] = missing;
  }
  return {alive: put(uncounted, counted), surplus};
}

/** How many are known to be in a stage, or in any instar of it. */
export function knownIn(alive: StageCounts, stage: Stage): number {
  return total(Object.fromEntries(Object.entries(alive).filter(([name]) => isWithin(name, stage))));
}

export function isEmpty(counts: StageCounts): boolean {
  return total(counts) === 0;
}

/** Take out what is there. @returns how many are missing */
function drain(left: Record<Stage, number>, count: number, source: Source): number {
  let missing = count;
  for (const stage of takingOrder(Object.keys(left), source)) {
    const taken = Math.min(left[stage]!, missing);
    left[stage]! -= taken;
    missing -= taken;
  }
  return missing;
}

function takingOrder(stages: readonly Stage[], source: Source): readonly Stage[] {
  if (stages.length < 2) return stages;
  const youngestFirst = [...stages].sort(compareStages);
  if (source === 'youngest') return youngestFirst;
  if (source === 'oldest') return youngestFirst.reverse();
  const named = youngestFirst.filter(stage => isWithin(stage, source.stage));
  const others = youngestFirst.filter(stage => !named.includes(stage));
  const before = others.filter(stage => compareStages(stage, source.stage) < 0);
  return [...named, ...before.reverse(), ...others.filter(stage => !before.includes(stage))];
}

/** `larva` is any of `larva-1`, `larva-2` …; a stage is within itself. */
function isWithin(stage: Stage, named: Stage): boolean {
  return stage === named || stage.startsWith(`${named}-`);
}

function withoutEmpty(counts: StageCounts): StageCounts {
  const kept: Record<Stage, number> = {};
  for (const stage in counts) if (counts[stage]! > 0) kept[stage] = counts[stage]!;
  return kept;
}
