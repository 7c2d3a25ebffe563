// Days and instants as people are shown them, seen from today.
import type {Civil, Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** "today 16:30", "tomorrow 09:00", "Thu 12 June 09:00"; with the year where it is another than now's. */
export function instantWords(at: Instant, civil: Civil, now: Instant): string {
  return `${dayWords(civil.dayOf(at), civil, now)} ${civil.iso(at).slice(11, 16)}`;
}

/** "yesterday", "today", "tomorrow", "Thu 12 June"; with the year where it is another than now's. */
export function dayWords(day: Day, civil: Civil, now: Instant): string {
  const today = civil.dayOf(now);
  if (day === today) return 'today';
  if (day === civil.addDays(today, 1)) return 'tomorrow';
  if (day === civil.addDays(today, -1)) return 'yesterday';
  const [year = '', month, dayOfMonth] = day.split('-');
  const weekday = civil.weekdayOf(day);
  const words = `${weekday[0]!.toUpperCase()}${weekday.slice(1)} ${Number(dayOfMonth)} ${months[Number(month) - 1]}`;
  return today.startsWith(year) ? words : `${words} ${year}`;
}
