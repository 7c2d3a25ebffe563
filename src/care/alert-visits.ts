// Closed days that force a visit, said loudly and beforehand.
import type {Civil} from '../records/civil.ts';
import type {Alert} from './alert.ts';
import type {OpenTime} from './calendar.ts';
import {grouped} from './grouped.ts';
import type {Visit} from './visits.ts';
import {compareNaturally} from './walking-order.ts';
import {dateWords} from './when-words.ts';

/** One alert for each visit. Its day is that of its last moment. */
export function visitAlerts(visits: readonly Visit[], open: OpenTime, civil: Civil): Alert[] {
  return visits.map(({from, to, jobs}) => {
    const day = civil.dayOf(to);
    const why = open.closedBecause(day);
    const span = `${dateWords(from, civil)} and ${dateWords(to, civil)}`;
    return {
      id: `visit:${day}`,
      what: `the room is closed${why === undefined ? '' : ` (${why})`}, yet somebody has to come between ${span}: ${errands(jobs)}`,
      where: unitsOf(jobs).join(', '),
      since: from,
      mend: `One visit at any time between them covers all of it. Or write the day as open in the calendar, or feed more before it and keep it cooler, where the animals and their water bear that.`,
    };
  });
}

/** "feed in A3, A5; look in C2". */
function errands(jobs: Visit['jobs']): string {
  const byTask = grouped(jobs, ({rule}) => rule.task);
  return [...byTask]
    .map(([task, alike]) => `${task.replaceAll('-', ' ')} in ${unitsOf(alike).join(', ')}`)
    .join('; ');
}

function unitsOf(jobs: Visit['jobs']): string[] {
  return [...new Set(jobs.map(({unit}) => unit.code))].sort(compareNaturally);
}
