// Closed days that force visits, said loudly and beforehand.
import type {Civil, Day} from '../records/civil.ts';
import type {Alert} from './alert.ts';
import type {OpenTime} from './calendar.ts';
import {grouped} from './grouped.ts';
import type {Job} from './job.ts';
import type {Visit} from './visits.ts';
import {compareNaturally} from './walking-order.ts';
import {dateWords, dayDateWords, timeWords} from './when-words.ts';

/**
 * One alert for each closed spell. The nearest names its visits and what would cure them; those after it only say
 * that they come. The day of an alert is the first of its spell.
 */
export function visitAlerts(visits: readonly Visit[], open: OpenTime, civil: Civil): Alert[] {
  const bySpell = grouped(visits, ({to}) => endOfSpell(civil.dayOf(to), open, -1));
  return [...bySpell].map(([first, made], i) => {
    const why = open.closedBecause(civil.dayOf(made[0]!.to));
    const needed = made.length === 1 ? 'a visit is needed' : `${made.length} visits are needed`;
    const closed = `${closedWords(first, open, civil)}${why === undefined ? '' : ` (${why})`}, and ${needed}`;
    const units = unitsOf(made.flatMap(({jobs}) => jobs));
    return {
      id: `visit:${first}`,
      what: `${closed}: ${i === 0 ? made.map(visit => visitWords(visit, civil)).join('; ') : units}`,
      where: units,
      since: made[0]!.from,
      mend:
        i === 0
          ? 'Write the day as open in the calendar; or feed more beforehand and keep it cooler, where the animals and their water bear that.'
          : 'teneral ahead shows what for.',
    };
  });
}

/** "closed Sat 24 May to Mon 26 May"; a day that is open is closed before and after its hours. */
function closedWords(first: Day, open: OpenTime, civil: Civil): string {
  const last = endOfSpell(first, open, 1);
  if (open.isOpen(first)) return `outside opening hours on ${dayDateWords(first, civil)}`;
  return first === last
    ? `closed ${dayDateWords(first, civil)}`
    : `closed ${dayDateWords(first, civil)} to ${dayDateWords(last, civil)}`;
}

/** How far a closed spell is followed. */
const LONGEST_SPELL_DAYS = 60;

/** An open day is a spell of its own: it is closed in the evening. */
function endOfSpell(day: Day, open: OpenTime, step: 1 | -1): Day {
  let end = day;
  for (let days = 0; days < LONGEST_SPELL_DAYS && !open.isOpen(end); days++) {
    const next = open.neighbour(end, step);
    if (open.isOpen(next)) break;
    end = next;
  }
  return end;
}

/** "between Sat 24 May 16:30 and Mon 26 May 16:30 (feed A3, A5)". */
function visitWords({from, to, jobs}: Visit, civil: Civil): string {
  const errands = [...grouped(jobs, ({rule}) => rule.task)].map(
    ([task, alike]) => `${task.replaceAll('-', ' ')} ${unitsOf(alike)}`,
  );
  return `${spanOf(from, to, civil)} (${errands.join('; ')})`;
}

function spanOf(from: number, to: number, civil: Civil): string {
  const day = civil.dayOf(to);
  const wholeDay = from <= civil.at(day, '00:00') && civil.dayOf(to + 1) !== day;
  if (wholeDay) return `on ${dayDateWords(day, civil)}`;
  if (civil.dayOf(from) === day)
    return `on ${dayDateWords(day, civil)}, ${timeWords(from, civil)} to ${timeWords(to, civil)}`;
  return `between ${dateWords(from, civil)} and ${dateWords(to, civil)}`;
}

function unitsOf(jobs: readonly Job[]): string {
  return [...new Set(jobs.map(({unit}) => unit.code))].sort(compareNaturally).join(', ');
}
