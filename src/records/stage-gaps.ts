// Whether stages make a chain: nothing left out between the first and the last.
import {compareStages, type Stage} from './stage.ts';

/**
 * What is wrong with stages as a chain, as a sentence without its stop; undefined where nothing is. A chain may begin
 * and end anywhere (only larva-5 and pupa may be known), but it leaves no stage out in between.
 */
export function chainFault(stages: readonly Stage[]): string | undefined {
  const ordered = [...stages].sort(compareStages);
  for (const kind of ['larva', 'nymph']) {
    const instars = ordered.filter(stage => stage.startsWith(`${kind}-`)).map(instarOf);
    if (instars.length > 0 && ordered.includes(kind))
      return `${kind} stands beside ${kind}-${instars[0]}: either its instars are told apart or they are not`;
    const gap = instars.findIndex((instar, i) => i > 0 && instar !== instars[i - 1]! + 1);
    if (gap > 0) return `${kind}-${instars[gap - 1]! + 1} is missing before ${kind}-${instars[gap]}`;
    if (ordered.includes('egg') && instars.length > 0 && instars[0] !== 1 && !hasEarlier(ordered, kind))
      return `${kind}-1 is missing between egg and ${kind}-${instars[0]}`;
  }
  const grows = ordered.some(stage => /^(larva|nymph)/.test(stage));
  const after = ordered.find(stage => stage === 'prepupa' || stage === 'pupa');
  if (ordered.includes('egg') && after !== undefined && !grows)
    return `a larva or nymph is missing between egg and ${after}`;
  return undefined;
}

/** Mites have a larva, then nymphs. */
function hasEarlier(ordered: readonly Stage[], kind: string): boolean {
  return kind === 'nymph' && ordered.some(stage => stage.startsWith('larva'));
}

function instarOf(stage: Stage): number {
  return Number(stage.slice(stage.indexOf('-') + 1));
}
