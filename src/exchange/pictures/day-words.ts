// Days as people write them in a narrow column: "13 Jun", "Fri 12 Jun".
import type {Civil, Day} from '../../records/civil.ts';
import {MS_PER_DAY} from '../../records/entry.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** "13 Jun" */
export function dayMonth(day: Day): string {
  return `${Number(day.slice(8, 10))} ${monthOf(day)}`;
}

/** "Jun" */
export function monthOf(day: Day): string {
  return MONTHS[Number(day.slice(5, 7)) - 1]!;
}

/** "Fri 12" */
export function weekdayDay(day: Day, civil: Civil): string {
  const weekday = civil.weekdayOf(day);
  return `${weekday[0]!.toUpperCase()}${weekday.slice(1)} ${Number(day.slice(8, 10))}`;
}

/** The civil day of an instant in days since 1970. */
export function dayOfDays(instantDays: number, civil: Civil): Day {
  return civil.dayOf(instantDays * MS_PER_DAY);
}

/** The instant of a time of day, in days since 1970. */
export function daysAt(day: Day, time: string, civil: Civil): number {
  return civil.at(day, time) / MS_PER_DAY;
}
