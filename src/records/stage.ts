// Stages of development before the adult, and their order.

/** `egg`, `larva-N`, `nymph-N`, `larva`, `nymph`, `prepupa` or `pupa`. */
export type Stage = string;

/** Numbers of animals by stage. */
export type StageCounts = Readonly<Record<Stage, number>>;

/** Sum over the stages. */
export function total(counts: StageCounts): number {
  let sum = 0;
  for (const stage in counts) sum += counts[stage]!;
  return sum;
}

/** Compare two stages by development: negative when `a` comes first. A larva not told apart stands before its instars. */
export function compareStages(a: Stage, b: Stage): number {
  return rankOf(a) - rankOf(b);
}

/** The counts in order of development, empty stages left out. */
export function inOrder(counts: StageCounts): [Stage, number][] {
  return Object.entries(counts)
    .filter(([, count]) => count > 0)
    .sort(([a], [b]) => compareStages(a, b));
}

const ranks: Readonly<Record<string, number>> = {egg: 0, larva: 100, nymph: 100, prepupa: 200, pupa: 300};

function rankOf(stage: Stage): number {
  const dash = stage.indexOf('-');
  if (dash < 0) return ranks[stage] ?? 400;
  return (ranks[stage.slice(0, dash)] ?? 400) + Number(stage.slice(dash + 1));
}
