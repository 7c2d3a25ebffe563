// How a person judges the stage of an animal.
import type {Stage} from '../records/stage.ts';
import type {Chain} from './stage-chain.ts';

/** The chance that an animal is put into a neighbouring stage. */
const MISJUDGED = 0.02;

/**
 * The chance of being judged as a stage, for an animal in each stage of the chain. `larva` (or `nymph`) is any of its
 * instars; an instar is read as `larva` in a chain that tells none apart.
 */
export function judgedAs(label: Stage, {stages}: Chain): readonly number[] {
  const last = stages.length - 1;
  return stages.map((_, stage) => {
    if (last === 0) return Number(isRead(label, stages[0]!.name));
    let chance = isRead(label, stages[stage]!.name) ? 1 - MISJUDGED : 0;
    const each = stage === 0 || stage === last ? MISJUDGED : MISJUDGED / 2;
    if (stage > 0 && isRead(label, stages[stage - 1]!.name)) chance += each;
    if (stage < last && isRead(label, stages[stage + 1]!.name)) chance += each;
    return chance;
  });
}

/** One name for all labels that this chain reads alike. */
export function readAs(label: Stage, {stages}: Chain): Stage {
  const [kind = label] = label.split('-');
  return stages.some(({name}) => name === kind) ? kind : label;
}

/** Whether a label says no more or less than a stage's name: one is the other, or an instar of it. */
export function isRead(label: Stage, name: Stage): boolean {
  return label === name || name.startsWith(`${label}-`) || label.startsWith(`${name}-`);
}
