// What no round of the day is in time for, said beforehand: when somebody has to come back to the open room.
import type {Civil} from '../records/civil.ts';
import type {Alert} from './alert.ts';
import type {OpenTime} from './calendar.ts';
import {costWords, errandWords, unitsOf} from './coming-words.ts';
import {grouped} from './grouped.ts';
import type {CareInput} from './task.ts';
import type {Visit} from './visits.ts';
import {dayDateWords, timeWords, whenWords} from './when-words.ts';

/** One alert a day: the returns of today, and those before the next round. Those after it are for its list to say. */
export function returnAlerts(returns: readonly Visit[], open: OpenTime, {now, civil}: CareInput): Alert[] {
  const next = open.nextRound(now + 1);
  const today = civil.dayOf(now);
  const near = returns.filter(({from}) => civil.dayOf(from) === today || (next !== null && from < next));
  return [...grouped(near, ({from}) => civil.dayOf(from))].map(([day, made]) => ({
    id: `return:${day}`,
    what: `come back ${timesWords(made.length)}${day === today ? 'today' : `on ${dayDateWords(day, civil)}`} ${made.map(each => returnWords(each, civil)).join(', ')}; ${costWords(made, 'return')}`,
    where: unitsOf(made.flatMap(({jobs}) => jobs)),
    since: open.previousRound(made[0]!.from) ?? made[0]!.from,
    foreseen: true,
    mend: `${tooLate(made, open, now, civil)}Where this is wanted every day, write the hour as a round in the calendar, or name somebody who is there then.`,
  }));
}

function timesWords(count: number): string {
  return count === 1 ? '' : count === 2 ? 'twice ' : `${count} times `;
}

/** "between 15:00 and 16:30 (feed A3, A5)". */
function returnWords({from, to, jobs}: Visit, civil: Civil): string {
  const [early, late] = [timeWords(from, civil), timeWords(to, civil)];
  return `${early === late ? `at ${late}` : `between ${early} and ${late}`} (${errandWords(jobs)})`;
}

/** "The next round, tomorrow 09:00, is too late. " */
function tooLate(made: readonly Visit[], open: OpenTime, now: number, civil: Civil): string {
  const round = open.nextRound(Math.max(...made.map(({to}) => to)));
  return round === null ? '' : `The next round, ${whenWords(round, now, civil)}, is too late. `;
}
