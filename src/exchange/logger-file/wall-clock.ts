// From what a file's clock showed to instants, cheaply for millions of rows in a row.
import {type Instant, MS_PER_DAY} from '../../records/entry.ts';
import type {Zone} from '../zone.ts';
import type {WrittenTime} from './written-time.ts';

/** The instant of a written time; two where the clocks showed it twice; none where they skipped it. */
export type Meaning =
  | {readonly kind: 'one'; readonly at: Instant}
  | {readonly kind: 'two'; readonly first: Instant; readonly second: Instant}
  | {readonly kind: 'none'};

export function meaningOf({wall, offsetMs}: WrittenTime, zone: Zone): Meaning {
  if (offsetMs !== undefined) return {kind: 'one', at: wall - offsetMs};
  const steady = zone.steadyOffsetMs(Math.floor(wall / MS_PER_DAY));
  if (steady !== undefined) return {kind: 'one', at: wall - steady};
  const [first, second] = zone.instantsOf(wall);
  if (first === undefined) return {kind: 'none'};
  return second === undefined ? {kind: 'one', at: first} : {kind: 'two', first, second};
}

/** A row whose time the clocks showed twice. */
export interface Doubtful {
  readonly index: number;
  readonly first: Instant;
  readonly second: Instant;
}

/**
 * Tells the two passes of a repeated hour apart by the order of the rows: the second pass begins where the clock
 * jumps back; where it never does, at the first time that stands twice. Of a single pass nothing can be told, and it
 * is taken for the first.
 * @param at every row's instant in the order of the file, doubtful ones as in the first pass; mended in place
 */
export function tellPassesApart(at: Float64Array, doubtful: readonly Doubtful[]): void {
  for (let from = 0, to = 0; from < doubtful.length; from = to) {
    to = from + 1;
    while (to < doubtful.length && continues(doubtful[to - 1]!, doubtful[to]!)) to++;
    const run = doubtful.slice(from, to);
    const before = at[run[0]!.index - 1] ?? run[0]!.first;
    const after = at[run.at(-1)!.index + 1] ?? run.at(-1)!.second;
    const newestFirst = after < before;
    const second = newestFirst ? run.slice(0, turn(run, -1)) : run.slice(turn(run, 1));
    for (const row of second) at[row.index] = row.second;
  }
}

const TWO_HOURS = 7_200_000;

function continues(a: Doubtful, b: Doubtful): boolean {
  return b.index === a.index + 1 && Math.abs(b.first - a.first) < TWO_HOURS;
}

/** Where the clock turns against the order of the rows; the run's length where it never does. */
function turn(run: readonly Doubtful[], direction: 1 | -1): number {
  const step = (i: number) => (run[i]!.first - run[i - 1]!.first) * direction;
  const later = run.slice(1).map((_, i) => i + 1);
  const back = later.find(i => step(i) < 0) ?? later.find(i => step(i) === 0);
  if (back !== undefined) return back;
  return direction === 1 ? run.length : 0;
}
