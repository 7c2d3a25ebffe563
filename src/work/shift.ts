// Moving records in time: every day and local instant in them, by whole civil days.
import type {Civil} from '../records/civil.ts';

const LOCAL = /^(\d{4}-\d{2}-\d{2})(T\d{2}:\d{2}(?::\d{2})?)?$/;

/** The value with every day (yyyy-mm-dd) and local instant inside it moved; the time of day stays. */
export function shifted(value: unknown, days: number, civil: Civil): unknown {
  if (typeof value === 'string') {
    const [, day, time = ''] = LOCAL.exec(value) ?? [];
    return day === undefined ? value : civil.addDays(day, days) + time;
  }
  if (Array.isArray(value)) return value.map(inner => shifted(inner, days, civil));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, shifted(inner, days, civil)]));
}
