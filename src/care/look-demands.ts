// Closed days on which adults may come out and would wait too long.
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import type {OpenTime} from './calendar.ts';
import type {Demand} from './demand.ts';
import {holdHoursBy} from './hold-time.ts';
import type {Job} from './job.ts';
import type {CareInput} from './task.ts';

/** How far ahead closed days are announced. */
const AHEAD_DAYS = 21;
/** Rounds of neighbouring days need not begin at the same hour. */
const SLACK_MS = 6 * MS_PER_HOUR;

/**
 * One look on each closed day that keeps the pauses between looks within the hold time, as long as nine in ten
 * animals emerge: from the forecast's 5 to its 95 per cent.
 */
export function lookDemands(
  job: Job,
  open: OpenTime,
  {civil, now, emergence, profiles}: CareInput,
): Demand[] {
  const {lot} = job;
  const outlook = lot === undefined ? undefined : emergence.get(lot.code);
  if (lot === undefined || outlook === undefined || outlook.p05 === null) return [];
  const hold = holdHoursBy(job.rule, lot, outlook, profiles) * MS_PER_HOUR;
  const until = Math.min(outlook.p95 ?? Number.POSITIVE_INFINITY, now + AHEAD_DAYS * MS_PER_DAY);
  const demands: Demand[] = [];
  let looked: Instant = open.previousRound(Math.max(now, outlook.p05)) ?? now;
  while (looked < until) {
    const next = open.nextRound(looked + 1) ?? Number.POSITIVE_INFINITY;
    if (next - looked <= hold + SLACK_MS) {
      looked = next;
      continue;
    }
    looked += hold;
    const day = civil.dayOf(looked);
    const from = Math.max(now, civil.at(day, '00:00'));
    const to = civil.at(civil.addDays(day, 1), '00:00') - 1;
    if (!open.isOpen(day) && to > Math.max(outlook.p05, now) && from < until) demands.push({from, to, job});
  }
  return demands;
}
