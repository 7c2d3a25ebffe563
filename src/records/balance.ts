// The balance of a lot: what came in = what is alive + what went out.

import {type StageCounts, total} from './stage.ts';
import type {Lot, Tally} from './state.ts';

/** As `teneral balance` answers it. */
export interface Balance extends Tally {
  readonly lot: string;
  readonly alive: StageCounts;
  /** False where numbers are estimates or animals are hidden: the sum is then a lower bound. */
  readonly exact: boolean;
}

export function balanceOf({code, tally, alive, exact}: Lot): Balance {
  const {started, hatched, mergedIn, found, ...out} = tally;
  return {lot: code, started, hatched, mergedIn, found, alive, ...out, exact};
}

/** The sum in words: "30 started = 23 alive + 5 emerged + 2 lost". */
export function balanceInWords({tally, alive}: Pick<Lot, 'tally' | 'alive'>): string {
  const came = [
    `${tally.started} started`,
    ...others([
      [tally.hatched, 'hatched'],
      [tally.mergedIn, 'merged in'],
      [tally.found, 'found'],
    ]),
  ];
  const went = others([
    [tally.emerged, 'emerged'],
    [tally.parasitised, 'parasitised'],
    [tally.lost, 'lost'],
    [tally.preserved, 'preserved'],
    [tally.splitOff, 'split off'],
    [tally.mergedOut, 'merged out'],
  ]);
  return `${came.join(' + ')} = ${[`${total(alive)} alive`, ...went].join(' + ')}`;
}

function others(accounts: readonly (readonly [number, string])[]): string[] {
  return accounts.filter(([count]) => count > 0).map(([count, name]) => `${count} ${name}`);
}
