// Which animals are which between two looks: they are paired by rank, the furthest with the furthest.
import {compareStages, type Stage} from '../records/stage.ts';
import type {Look} from './looks.ts';

/** Animals seen alike at every look so far. */
export interface Path {
  /** The stage they were last judged to be in. */
  readonly label: Stage;
  /** When they were first judged so. */
  readonly sinceDays: number;
  readonly count: number;
  /** The last instant at which they were surely not out. */
  readonly notOutDays: number;
}

/** What became of some animals of a path at a look. */
export interface Branch {
  /** The path they were on, by its place. */
  readonly from: number;
  readonly count: number;
}

export interface EmergedBranch extends Branch {
  readonly sinceDays: number;
}

export interface StageBranch extends Branch {
  /** The stage they were judged to be in; undefined where these were not looked at. */
  readonly label: Stage | undefined;
}

/** Adults are the animals that were furthest: those of the latest stage, and within it those longest in it. */
export function pairEmerged(paths: readonly Path[], emerged: Look['emerged']): readonly EmergedBranch[] {
  const left = paths.map(({count}) => count);
  return emerged.flatMap(({sinceDays, count}) =>
    take(furthestFirst(paths), left, count).map(branch => ({...branch, sinceDays})),
  );
}

/**
 * The animals of a count paired with those alive. Where fewer were counted than are alive, those not looked at are
 * spread over the paths by their numbers; where more were (an estimate), the count is scaled down.
 */
export function pairCounted(paths: readonly Path[], counted: Look['counted']): readonly StageBranch[] {
  const alive = paths.map(({count}) => count);
  const whole = sum(alive);
  const seen = Math.min(whole, sum(counted.map(({count}) => count)));
  const looked = portions(alive, seen);
  const branches: StageBranch[] = alive.flatMap((count, from) =>
    count > looked[from]! ? [{from, count: count - looked[from]!, label: undefined}] : [],
  );
  const scaled = portions(
    counted.map(({count}) => count),
    seen,
  );
  const order = furthestFirst(paths);
  for (let i = counted.length - 1; i >= 0; i--)
    for (const branch of take(order, looked, scaled[i]!))
      branches.push({...branch, label: counted[i]!.stage});
  return branches;
}

/** Animals taken out of a stage: of the paths last judged to be in it by their numbers, then of the others. */
export function pairRemoved(
  paths: readonly Path[],
  {stage, count}: Look['removed'][number],
): readonly Branch[] {
  const left = paths.map(path => path.count);
  const inStage = paths.map(({label, count: n}) => (stage === undefined || label === stage ? n : 0));
  const first = portions(inStage, Math.min(count, sum(inStage)));
  first.forEach((n, from) => {
    left[from] = left[from]! - n;
  });
  const others = portions(left, Math.min(count - sum(first), sum(left)));
  return paths.flatMap((_, from) => {
    const taken = first[from]! + others[from]!;
    return taken > 0 ? [{from, count: taken}] : [];
  });
}

function furthestFirst(paths: readonly Path[]): readonly number[] {
  return paths
    .map((_, place) => place)
    .sort(
      (a, b) =>
        compareStages(paths[b]!.label, paths[a]!.label) || paths[a]!.sinceDays - paths[b]!.sinceDays || a - b,
    );
}

/** Take so many animals in this order, out of what is left of each path. */
function take(order: readonly number[], left: number[], count: number): Branch[] {
  const branches: Branch[] = [];
  let wanted = count;
  for (const from of order) {
    const taken = Math.min(wanted, left[from]!);
    if (taken === 0) continue;
    left[from] = left[from]! - taken;
    wanted -= taken;
    branches.push({from, count: taken});
  }
  return branches;
}

/** A whole number of animals divided in given proportions, the largest remainders rounded up. */
export function portions(of: readonly number[], whole: number): number[] {
  const all = sum(of);
  if (all === 0) return of.map(() => 0);
  const exact = of.map(part => (part * whole) / all);
  const parts = exact.map(Math.floor);
  const byRemainder = exact
    .map((part, i) => ({i, remainder: part - parts[i]!}))
    .sort((a, b) => b.remainder - a.remainder || a.i - b.i);
  for (let i = 0, short = whole - sum(parts); i < short; i++) {
    const {i: place} = byRemainder[i]!;
    parts[place] = parts[place]! + 1;
  }
  return parts;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
