// Closed days that force visits, said loudly and beforehand.
import type {Civil, Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';
import type {Alert} from './alert.ts';
import type {OpenTime} from './calendar.ts';
import {costWords, unitsOf, unitWords, visitWords} from './coming-words.ts';
import {grouped} from './grouped.ts';
import type {Visit} from './visits.ts';
import {dayDateWords} from './when-words.ts';

/**
 * One alert for each closed spell. The nearest names its visits and what would cure them; those after it only say
 * that they come. The day of an alert is the first of its spell; a night belongs to the day on whose evening it begins.
 */
export function visitAlerts(visits: readonly Visit[], open: OpenTime, civil: Civil): Alert[] {
  const bySpell = grouped(visits, ({to}) => spellOf(to, open, civil));
  return [...bySpell].map(([first, made], i) => {
    const why = open.closedBecause(first);
    const needed = made.length === 1 ? 'a visit is needed' : `${made.length} visits are needed`;
    const closed = `${closedWords(first, open, civil)}${why === undefined ? '' : ` (${why})`}, and ${needed}`;
    const jobs = made.flatMap(visit => visit.jobs);
    return {
      id: `visit:${first}`,
      what: `${closed}: ${i === 0 ? made.map(visit => visitWords(visit, civil)).join('; ') : unitWords(jobs)}; ${costWords(made, 'visit')}`,
      where: unitsOf(jobs),
      since: made[0]!.from,
      foreseen: true,
      mend:
        i === 0
          ? `Write the ${open.isOpen(first) ? 'hours' : 'day'} as open in the calendar; or feed more beforehand and keep it cooler, where the animals and their water bear that.`
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

/** The first day of the closed spell that an instant lies in. */
function spellOf(at: Instant, open: OpenTime, civil: Civil): Day {
  const day = civil.dayOf(at);
  const [first] = open.openings(day);
  const isBefore = first !== undefined && at <= first.from;
  return endOfSpell(isBefore ? open.neighbour(day, -1) : day, open, -1);
}

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
