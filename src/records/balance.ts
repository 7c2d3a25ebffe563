// The balance of a lot: what came in = what is alive + what went out.

import {materialInWords} from './plain-words.ts';
import {type StageCounts, total} from './stage.ts';
import type {Lot, Tally} from './state.ts';

/** As `teneral balance` answers it. */
export interface Balance extends Tally {
  readonly lot: string;
  readonly alive: StageCounts;
  /** False where numbers are estimates or animals are hidden: the sum is then a lower bound. */
  readonly exact: boolean;
  readonly counted: Lot['counted'];
  /** How far off an estimated start may be, either way; null where nobody said. */
  readonly within: number | null;
}

export function balanceOf({code, tally, alive, exact, counted, within}: Lot): Balance {
  const {started, hatched, mergedIn, found, ...out} = tally;
  const sum = {lot: code, started, hatched, mergedIn, found, alive, ...out, exact};
  return {...sum, counted, within: within ?? null};
}

type Summed = Pick<Lot, 'tally' | 'alive'> & Partial<Pick<Lot, 'counted' | 'within'>>;

/**
 * The sum in words: "30 started = 23 alive + 5 emerged + 2 lost"; of an estimate "about 120 (± 30) started = about 115
 * alive + 8 emerged", where animals beyond it show as found.
 */
export function balanceInWords({tally, alive, counted, within}: Summed): string {
  const isEstimate = counted === 'estimated';
  const about = isEstimate ? 'about ' : '';
  const give = within === undefined ? '' : ` (± ${within})`;
  const came = [
    `${about}${tally.started}${give} started`,
    ...others([
      [tally.hatched, 'hatched'],
      [tally.mergedIn, 'merged in'],
      [tally.found, isEstimate ? 'found beyond the estimate' : 'found'],
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
  return `${came.join(' + ')} = ${[`${about}${total(alive)} alive`, ...went].join(' + ')}`;
}

/** What is to be said after the sum of a lot whose animals were not all counted. */
export function exactness({exact, counted, material}: Pick<Lot, 'exact' | 'counted' | 'material'>): string {
  if (exact) return '';
  if (material !== undefined)
    return `  (of those seen: nobody knows how many more live in its ${materialInWords(material)})`;
  return counted === 'estimated'
    ? '  (estimated: what is alive may be more or fewer)'
    : '  (a lower bound: not all were counted)';
}

const CAUSES: Readonly<Record<string, string>> = {given: 'given away', other: 'for other reasons'};

/** By cause, how many of a lot were lost. */
export function lossesOf({entries, code}: Lot): Readonly<Record<string, number>> {
  const losses: Record<string, number> = {};
  for (const {record} of entries)
    if (record.record === 'loss' && record.lot === code)
      losses[record.cause] = (losses[record.cause] ?? 0) + record.count;
  return losses;
}

/** "; lost: 6 dead, 1 escaped"; nothing where none is. */
export function lostInWords(lot: Lot): string {
  const words = Object.entries(lossesOf(lot)).map(([cause, count]) => `${count} ${CAUSES[cause] ?? cause}`);
  return words.length === 0 ? '' : `; lost: ${words.join(', ')}`;
}

function others(accounts: readonly (readonly [number, string])[]): string[] {
  return accounts.filter(([count]) => count > 0).map(([count, name]) => `${count} ${name}`);
}
