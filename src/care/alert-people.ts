// Work that nobody who may do it is there for in time, said beforehand.
import type {Weekday} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {Alert} from './alert.ts';
import type {OpenTime} from './calendar.ts';
import {turnsOf} from './following.ts';
import {grouped} from './grouped.ts';
import type {Job} from './job.ts';
import {momentsOn} from './open-moment.ts';
import {isManned} from './people.ts';
import type {CareInput} from './task.ts';
import {compareNaturally, shelfOf} from './walking-order.ts';
import {dateWords} from './when-words.ts';
import type {Window} from './window.ts';

/** How far ahead it is looked for. */
const AHEAD_DAYS = 14;

interface Unmanned {
  readonly job: Job;
  readonly window: Window;
}

/**
 * One alert for each shelf: the first thing there that falls due while the room is open, but on no day on which
 * somebody works who may do it. A room that names no people shares nothing out. What closed days force is in
 * alert-visits.ts.
 */
export function nobodyInTime(jobs: readonly Job[], open: OpenTime, input: CareInput): Alert[] {
  const people = [...input.state.people.values()];
  if (people.length === 0 || people.some(({days, places = []}) => days === undefined && places.length === 0))
    return [];
  const weekdays = openWeekdays(open, input);
  const units = [...new Set(jobs.map(({unit}) => unit))];
  const lacking = new Set(
    units.filter(({place, code}) => weekdays.some(day => !isManned({place, unit: code}, day, people))),
  );
  const missed = jobs.flatMap(job => (lacking.has(job.unit) ? (firstUnmanned(job, open, input) ?? []) : []));
  return [...grouped(missed, ({job}) => shelfOf(job.unit.place))].map(([shelf, list]) =>
    alertFor(shelf, list, input),
  );
}

/** The weekdays on which the room opens about the time that is looked through. */
function openWeekdays(open: OpenTime, {civil, now}: CareInput): Weekday[] {
  const weekdays = new Set<Weekday>();
  let day = civil.dayOf(now);
  for (let days = 0; days <= 2 * AHEAD_DAYS; days++, day = open.neighbour(day, 1))
    if (open.isOpen(day)) weekdays.add(civil.weekdayOf(day));
  return [...weekdays];
}

function firstUnmanned(job: Job, open: OpenTime, input: CareInput): Unmanned | undefined {
  const horizon = input.now + AHEAD_DAYS * MS_PER_DAY;
  for (const {window, visit} of turnsOf(job, open, input, horizon))
    if (visit === undefined && window.latest >= input.now && !canBeDone(job, window, open, input))
      return {job, window};
  return undefined;
}

/** On some open day of the window somebody is there for it. */
function canBeDone({unit: {place, code}}: Job, window: Window, open: OpenTime, input: CareInput): boolean {
  const {civil, now, state} = input;
  const where = {place, unit: code};
  const last = civil.dayOf(window.latest);
  for (let day = civil.dayOf(Math.max(window.earliest, now)); day <= last; day = open.neighbour(day, 1))
    if (
      momentsOn(day, window, open).length > 0 &&
      isManned(where, civil.weekdayOf(day), state.people.values())
    )
      return true;
  return false;
}

function alertFor(shelf: string, list: readonly Unmanned[], {civil}: CareInput): Alert {
  const [first] = list.toSorted((a, b) => a.window.latest - b.window.latest);
  const {job, window} = first!;
  const units = [...new Set(list.map(each => each.job.unit.code))].sort(compareNaturally);
  const since: Instant = window.since;
  return {
    id: `nobody:${job.unit.code}:${civil.dayOf(window.latest)}`,
    what: `nobody who may do ${shelf} is there in time: ${job.rule.task.replaceAll('-', ' ')} ${job.unit.code} by ${dateWords(window.latest, civil)}`,
    where: units.join(', '),
    since,
    mend: 'Name somebody for the place and a day before then (teneral person NAME --day … --place …), or do it sooner.',
  };
}
