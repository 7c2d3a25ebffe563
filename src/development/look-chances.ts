// How likely one look was, at one point of the unknowns, and where it leaves the animals.
import {lnGamma} from './gamma-function.ts';
import {judgedAs, readAs} from './misjudging.ts';
import type {EmergedBranch, StageBranch} from './paths.ts';
import {given, type Standing, shareOut, sharesIn} from './standing.ts';
import type {Tempo} from './tempo.ts';

/** Chances below this lie in the tails that measures let go, and count as none. */
const LEAST = 1e-6;

/** The chance of what was seen, and the standings of the paths after it. */
export interface Seen {
  readonly lnChance: number;
  readonly standings: readonly Standing[];
}

/**
 * Some were found out, each since an instant, and the others were not. The paths that still hold animals come back in
 * their order. The number of ways to tell which is which is the same at every point and left out.
 */
export function emergedChance(
  tempo: Tempo,
  standings: readonly Standing[],
  counts: readonly number[],
  emerged: readonly EmergedBranch[],
): Seen {
  const left = [...counts];
  let lnChance = 0;
  for (const {from, sinceDays, count} of emerged) {
    lnChance += count * lnOf(shareOut(tempo, standings[from]!, sinceDays));
    left[from] = left[from]! - count;
  }
  const any = new Float64Array(tempo.chain.stages.length).fill(1);
  const after: Standing[] = [];
  standings.forEach((standing, path) => {
    if (left[path] === 0) return;
    const inside = sharesIn(tempo, standing).reduce((sum, share) => sum + share, 0);
    lnChance += left[path]! * lnOf(inside);
    after.push(inside > LEAST ? given(tempo, standing, any) : standing);
  });
  return {lnChance, standings: after};
}

/** Some were judged to be in stages; nothing was seen of the others. One standing comes back for every branch. */
export function countedChance(
  tempo: Tempo,
  standings: readonly Standing[],
  branches: readonly StageBranch[],
): Seen {
  const judged = new Map<string, Float64Array>();
  const looked = standings.map(() => 0);
  const read = new Map<string, number>();
  let lnChance = 0;
  const after = branches.map(({from, label, count}) => {
    const standing = standings[from]!;
    if (label === undefined) return standing;
    const chances = judged.get(label) ?? judgedAs(label, tempo.chain);
    judged.set(label, chances);
    const chance = sharesIn(tempo, standing).reduce((sum, share, stage) => sum + share * chances[stage]!, 0);
    lnChance += count * lnOf(chance);
    looked[from] = looked[from]! + count;
    const name = `${from} ${readAs(label, tempo.chain)}`;
    read.set(name, (read.get(name) ?? 0) + count);
    return chance > LEAST ? given(tempo, standing, chances) : standing;
  });
  // In how many ways the animals of each path may be told apart into what they were judged to be.
  for (const count of looked) lnChance += lnGamma(count + 1);
  for (const count of read.values()) lnChance -= lnGamma(count + 1);
  return {lnChance, standings: after};
}

function lnOf(chance: number): number {
  return chance > LEAST ? Math.log(Math.min(1, chance)) : Number.NEGATIVE_INFINITY;
}
