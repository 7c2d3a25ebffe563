// A chain run through at one pace from the start of the lot, with its instants as doses.
import {doseAt} from './dose-course.ts';
import type {Chain} from './stage-chain.ts';

/**
 * Each stage has a dose axis of its own: pace · (dose since the lot began) / (dose its mean animal needs). On it the
 * dose W that an individual needs has the same distribution whatever the pace and the temperatures: an animal that
 * enters at y leaves at y + W.
 */
export interface Tempo {
  readonly chain: Chain;
  readonly pace: number;
  /** The dose at the start of the lot, by stage. */
  readonly origins: Float64Array;
}

export function tempoOf(chain: Chain, startDays: number, pace: number): Tempo {
  const origins = new Float64Array(chain.stages.length);
  for (let stage = 0; stage < origins.length; stage++)
    origins[stage] = doseAt(chain.stages[stage]!.course, startDays);
  return {chain, pace, origins};
}

/** An instant on the dose axis of a stage; before the start nothing has begun. */
export function ownDose({chain, pace, origins}: Tempo, stage: number, atDays: number): number {
  const {course, required} = chain.stages[stage]!;
  return (pace * Math.max(0, doseAt(course, atDays) - origins[stage]!)) / required;
}

/** The tempo of each lot's animals: not all of them lived through the same. */
export type Tempos = (lot: string) => Tempo;
