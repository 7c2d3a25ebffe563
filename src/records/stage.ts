// Stages of development before the adult, and their order.

/** `egg`, `larva-N`, `nymph-N`, `larva`, `nymph`, `prepupa` or `pupa`. */
export type Stage = string;

/** Numbers of animals by stage. */
export type StageCounts = Readonly<Record<Stage, number>>;

/** Sum over the stages. */
export function total(counts: StageCounts): number {
  return Object.values(counts).reduce((sum, count) => sum + count, 0);
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

function rankOf(stage: Stage): number {
  const [kind, instar] = stage.split('-');
  const base = {egg: 0, larva: 100, nymph: 100, prepupa: 200, pupa: 300}[kind ?? ''] ?? 400;
  return base + Number(instar ?? 0);
}
