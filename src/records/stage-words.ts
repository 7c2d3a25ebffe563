// Stages of development in words.
import {inOrder, type Stage, type StageCounts} from './stage.ts';

/** "1 pupa", "3 larvae of the fifth instar". */
export function animalsInWords(count: number, stage: Stage | undefined): string {
  const [kind = '', instar] = (stage ?? '').split('-');
  const name = names[kind];
  if (name === undefined) return count === 1 ? '1 animal' : `${count} animals`;
  const noun = count === 1 ? name.one : name.many;
  return instar === undefined
    ? `${count} ${noun}`
    : `${count} ${noun} of the ${ordinal(Number(instar))} instar`;
}

/** "pupa", "larva 5": short enough for a column. */
export function stageInWords(stage: Stage): string {
  return stage.replace('-', ' ');
}

/** "9 pupae and 3 larvae of the fifth instar", the furthest developed first; "no animals" where there are none. */
export function countsInWords(counts: StageCounts): string {
  const parts = inOrder(counts)
    .reverse()
    .map(([stage, count]) => animalsInWords(count, stage));
  return parts.length === 0 ? 'no animals' : listed(parts);
}

/** "a, b and c". */
export function listed(parts: readonly string[]): string {
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

const names: Readonly<Record<string, {readonly one: string; readonly many: string}>> = {
  egg: {one: 'egg', many: 'eggs'},
  larva: {one: 'larva', many: 'larvae'},
  nymph: {one: 'nymph', many: 'nymphs'},
  prepupa: {one: 'prepupa', many: 'prepupae'},
  pupa: {one: 'pupa', many: 'pupae'},
  adult: {one: 'adult', many: 'adults'},
};

const ordinals = ['first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth'];

function ordinal(number: number): string {
  return ordinals[number - 1] ?? `${number}th`;
}
