// What was seen, as one chain reads it: the same at every pace.
import type {Stage} from '../records/stage.ts';
import {lnChoose} from './gamma-function.ts';
import type {Look} from './looks.ts';
import {judgedAs, readAs} from './misjudging.ts';
import type {Chain} from './stage-chain.ts';

/** How many were judged to be in a stage. */
export interface Judged {
  readonly label: Stage;
  readonly count: number;
  /** The chance to be judged so, for an animal in each stage of the chain. */
  readonly chances: readonly number[];
}

export interface ReadLook {
  readonly atDays: number;
  readonly lot: string;
  /** Founders that joined since the look before, by their place among the classes. */
  readonly joining: readonly number[];
  readonly complete: boolean;
  readonly emerged: Look['emerged'];
  readonly judged: readonly Judged[];
  /** ln of the chance of this count if it is worthless. */
  readonly lnIfWorthless: number;
  readonly removed: Look['removed'];
  readonly mergedInto: Look['mergedInto'];
}

/**
 * Looks as a chain reads them: stages it does not tell apart are taken as one.
 * @param joining founders that joined since the look before, for each look
 * @param stages how many stages a count may name, the adult among them
 */
export function readLooks(
  looks: readonly Look[],
  joining: readonly (readonly number[])[],
  stages: number,
  chain: Chain,
): readonly ReadLook[] {
  return looks.map(({atDays, lot, complete, emerged, counted, removed, mergedInto}, i) => ({
    atDays,
    lot,
    mergedInto,
    joining: joining[i]!,
    complete,
    emerged: sameTogether(emerged),
    judged: judgedBy(counted, chain),
    lnIfWorthless: lnIfWorthless(counted, stages),
    removed: removed.map(({stage, count, into}) => ({
      count,
      into,
      stage: stage === undefined ? undefined : readAs(stage, chain),
    })),
  }));
}

function sameTogether(emerged: Look['emerged']): Look['emerged'] {
  const counts = new Map<number, number>();
  for (const {sinceDays, count} of emerged) counts.set(sinceDays, (counts.get(sinceDays) ?? 0) + count);
  return [...counts].map(([sinceDays, count]) => ({sinceDays, count}));
}

function judgedBy(counted: Look['counted'], chain: Chain): Judged[] {
  const counts = new Map<Stage, number>();
  for (const {stage, count} of counted) {
    const label = readAs(stage, chain);
    counts.set(label, (counts.get(label) ?? 0) + count);
  }
  return [...counts].map(([label, count]) => ({label, count, chances: judgedAs(label, chain)}));
}

/** A worthless count is any of the ways to divide n animals among S stages: ln 1/C(n + S − 1, S − 1). */
function lnIfWorthless(counted: Look['counted'], stages: number): number {
  const n = counted.reduce((sum, {count}) => sum + count, 0);
  return -lnChoose(n + stages - 1, stages - 1);
}
