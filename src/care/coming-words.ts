// Visits and returns as they are said: what for, and what they cost.
import type {Civil} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';
import {counted} from '../records/plain-words.ts';
import {grouped} from './grouped.ts';
import type {Job} from './job.ts';
import {minutesOf} from './time-needed.ts';
import type {Visit} from './visits.ts';
import {compareNaturally} from './walking-order.ts';
import {dateWords, dayDateWords, minuteWords, timeWords} from './when-words.ts';

/** Every unit: "A3, A5". */
export function unitsOf(jobs: readonly Job[]): string {
  return codesOf(jobs).sort(compareNaturally).join(', ');
}

/** More than these are only counted: who comes has the list. */
const MOST_NAMED = 12;

/** "A3, A5", "142 units". */
export function unitWords(jobs: readonly Job[]): string {
  const codes = codesOf(jobs);
  return codes.length > MOST_NAMED ? counted(codes.length, 'unit') : unitsOf(jobs);
}

/** "feed A3, A5; check air T2". */
export function errandWords(jobs: readonly Job[]): string {
  return [...grouped(jobs, ({rule}) => rule.task)]
    .map(([task, alike]) => `${task.replaceAll('-', ' ')} ${unitWords(alike)}`)
    .join('; ');
}

function codesOf(jobs: readonly Job[]): string[] {
  return [...new Set(jobs.map(({unit}) => unit.code))];
}

/** "cost: 1 visit, 2 units, about 6 min"; work that is done twice counts twice. */
export function costWords(comings: readonly Visit[], what: 'visit' | 'return'): string {
  const jobs = comings.flatMap(coming => coming.jobs);
  const units = codesOf(jobs).length;
  const minutes = jobs.reduce((sum, job) => sum + minutesOf(job), 0);
  return `cost: ${counted(comings.length, what)}, ${counted(units, 'unit')}, about ${minuteWords(Math.ceil(minutes))}`;
}

/** "between Sat 24 May 16:30 and Mon 26 May 16:30 (feed A3, A5)". */
export function visitWords({from, to, jobs}: Visit, civil: Civil): string {
  return `${spanOf(from, to, civil)} (${errandWords(jobs)})`;
}

function spanOf(from: Instant, to: Instant, civil: Civil): string {
  const day = civil.dayOf(to);
  const wholeDay = from <= civil.at(day, '00:00') && civil.dayOf(to + 1) !== day;
  if (wholeDay) return `on ${dayDateWords(day, civil)}`;
  if (civil.dayOf(from) === day)
    return `on ${dayDateWords(day, civil)}, ${timeWords(from, civil)} to ${timeWords(to, civil)}`;
  return `between ${dateWords(from, civil)} and ${dateWords(to, civil)}`;
}
