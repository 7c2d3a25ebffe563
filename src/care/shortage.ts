// More care than a person has minutes for: what falls below the line, and until when that is safe.
import type {Instant} from '../records/entry.ts';
import type {Person} from '../records/state.ts';
import {grouped} from './grouped.ts';
import type {Who} from './people.ts';
import {harmOrder, isOpen, type Standing} from './task.ts';

export interface Shortage {
  readonly who: string;
  /** That this person has on a day. */
  readonly minutes: number;
  /** That the work of the day takes, as the rules estimate it. */
  readonly needed: number;
  /** What falls below the line, the most pressing first. */
  readonly below: readonly Below[];
}

export interface Below {
  readonly id: string;
  /** Left until then it does no harm; null where its limit has passed. */
  readonly safeUntil: Instant | null;
}

/**
 * One shortage for each person whose work does not fit. First comes what passes its limit before the next round, then
 * the rest; of each what does more harm when missed, then what passes its limit sooner. What still fits stays above.
 * @param who whom each task is for
 * @param next the round after this day; null where none comes
 */
export function shortages(
  tasks: readonly Standing[],
  who: (task: Standing) => Who,
  people: Iterable<Person>,
  now: Instant,
  next: Instant | null,
): Shortage[] {
  const toDo = tasks.filter(task => task.skipped === undefined && isOpen(task));
  const byPerson = grouped(toDo, who);
  return [...people].flatMap(({name, minutes}) => {
    const own = byPerson.get(name) ?? [];
    const needed = own.reduce((sum, task) => sum + task.minutes, 0);
    if (minutes === undefined || needed <= minutes) return [];
    return [{who: name, minutes, needed, below: belowTheLine(own, minutes, now, next)}];
  });
}

function belowTheLine(
  tasks: readonly Standing[],
  minutes: number,
  now: Instant,
  next: Instant | null,
): Below[] {
  const canWait = ({latest}: Standing) => Number(next !== null && latest >= next);
  const pressing = tasks.toSorted(
    (a, b) => canWait(a) - canWait(b) || harmOrder[a.harm] - harmOrder[b.harm] || a.latest - b.latest,
  );
  let left = minutes;
  return pressing.flatMap(({id, latest, minutes: takes}) => {
    if (takes > left) return [{id, safeUntil: latest < now ? null : latest}];
    left -= takes;
    return [];
  });
}
