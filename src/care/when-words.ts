// Instants and intervals as people say them beside a task.
import type {Civil, Day} from '../records/civil.ts';
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {counted} from '../records/plain-words.ts';

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'June', 'July', 'Aug', 'Sept', 'Oct', 'Nov', 'Dec'];

/** "today 16:30", "yesterday 09:00", "Tue 16:30" within six days, else "2 June". */
export function whenWords(at: Instant, now: Instant, civil: Civil): string {
  const iso = civil.iso(at);
  const day = iso.slice(0, 10);
  const time = iso.slice(11, 16);
  const today = civil.dayOf(now);
  if (day === today) return `today ${time}`;
  if (day === civil.addDays(today, -1)) return `yesterday ${time}`;
  if (day === civil.addDays(today, 1)) return `tomorrow ${time}`;
  if (Math.abs(at - now) < 6 * MS_PER_DAY) return `${weekdayWord(day, civil)} ${time}`;
  const [year, month, dayOfMonth] = day.split('-');
  const date = `${Number(dayOfMonth)} ${months[Number(month) - 1]}`;
  return today.startsWith(year!) ? date : `${date} ${year}`;
}

/** "Sun 25 May 16:30". */
export function dateWords(at: Instant, civil: Civil): string {
  return `${dayDateWords(civil.dayOf(at), civil)} ${timeWords(at, civil)}`;
}

/** "16:30". */
export function timeWords(at: Instant, civil: Civil): string {
  return civil.iso(at).slice(11, 16);
}

/** "Sun 25 May". */
export function dayDateWords(day: Day, civil: Civil): string {
  const [, month, dayOfMonth] = day.split('-');
  return `${weekdayWord(day, civil)} ${Number(dayOfMonth)} ${months[Number(month) - 1]}`;
}

/** "every day", "every 2 days", "every 12 hours". */
export function everyWords(days: number): string {
  if (days === 1) return 'every day';
  return `every ${spanWords(days)}`;
}

/** "3 days", "36 hours": whole days where they are, hours up to three days. */
export function spanWords(days: number): string {
  if (days >= 3 || Number.isInteger(days)) return counted(Math.round(days * 10) / 10, 'day');
  return counted(Math.round((days * MS_PER_DAY) / MS_PER_HOUR), 'hour');
}

/** "37 min", "2 h 05". */
export function minuteWords(minutes: number): string {
  const whole = Math.round(minutes);
  if (whole < 60) return `${whole} min`;
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')}`;
}

function weekdayWord(day: Day, civil: Civil): string {
  const weekday = civil.weekdayOf(day);
  return `${weekday[0]!.toUpperCase()}${weekday.slice(1)}`;
}
