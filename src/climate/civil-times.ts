// The instants of a time of day, day after day, whatever the clocks do.
import type {Civil} from '../records/civil.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import type {Span} from './part.ts';

const WEEK = 7;

/**
 * Every instant of a time of day (hh:mm) around a span, in days since 1970: from the last one not after its
 * beginning to the first one not before its end.
 *
 * A week whose ends lie a whole week apart has no clock change in it and is not asked day by day.
 */
export function timesOfDay(civil: Civil, time: string, {fromDays, toDays}: Span): number[] {
  const times: number[] = [];
  let day = civil.addDays(civil.dayOf(Math.floor(fromDays * MS_PER_DAY)), -1);
  let first = civil.at(day, time) / MS_PER_DAY;
  while (first < toDays) {
    const nextDay = civil.addDays(day, WEEK);
    const next = civil.at(nextDay, time) / MS_PER_DAY;
    const regular = Math.abs(next - first - WEEK) < 1e-9;
    for (let i = 0; i < WEEK; i++)
      times.push(regular ? first + i : civil.at(civil.addDays(day, i), time) / MS_PER_DAY);
    day = nextDay;
    first = next;
  }
  times.push(first);
  const begin = times.findLastIndex(at => at <= fromDays);
  const end = times.findIndex(at => at >= toDays);
  return times.slice(Math.max(0, begin), end + 1);
}
