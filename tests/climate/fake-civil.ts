// Civil time of an invented zone, one hour ahead of UTC, two from one spring instant to one autumn instant.
import type {Civil, Weekday} from '../../src/records/civil.ts';
import {MS_PER_DAY, MS_PER_HOUR} from '../../src/records/entry.ts';

/** The clocks go forward at 02:00 on 30 March 2031 and back at 03:00 on 26 October 2031. */
const FORWARD = Date.parse('2031-03-30T01:00Z');
const BACK = Date.parse('2031-10-26T01:00Z');
const WEEKDAYS: readonly Weekday[] = ['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'];

const offsetHours = (at: number) => (at >= FORWARD && at < BACK ? 2 : 1);
const utc = (day: string, time: string) => Date.parse(`${day}T${time}Z`);

export const civil: Civil = {
  zone: 'Invented/Zone',
  dayOf: at => new Date(at + offsetHours(at) * MS_PER_HOUR).toISOString().slice(0, 10),
  at: (day, time) => {
    const found = [2, 1]
      .map(hours => utc(day, time) - hours * MS_PER_HOUR)
      .find((at, i) => offsetHours(at) === 2 - i);
    return found ?? FORWARD;
  },
  addDays: (day, days) => new Date(utc(day, '00:00') + days * MS_PER_DAY).toISOString().slice(0, 10),
  weekdayOf: day => WEEKDAYS[new Date(utc(day, '12:00')).getUTCDay()]!,
  offsetMs: at => offsetHours(at) * MS_PER_HOUR,
  iso: at => new Date(at).toISOString(),
};

/** Days since 1970 of a local date and time, such as 2031-04-11 02:40. */
export function days(local: string): number {
  const [day, time] = local.split(' ');
  return civil.at(day!, time!) / MS_PER_DAY;
}
