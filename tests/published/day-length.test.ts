// Day lengths against almanac values for sea level, sunrise to sunset, to the minute: 40° N 15 h 1 min and 9 h 20 min at
// the solstices, 60° N 18 h 53 min and 5 h 52 min; the equator 12 h 7 min all year (almanac figures, from memory).
import {expect, it} from 'vitest';
import {dayLengthHours} from '../../src/climate/day-length.ts';

const days = (day: string) => Date.parse(`${day}T12:00Z`) / 86_400_000;
const MINUTES = 1 / 60;

it.each([
  [40, '2026-06-21', 15 + 1 * MINUTES],
  [40, '2026-12-21', 9 + 20 * MINUTES],
  [60, '2026-06-21', 18 + 53 * MINUTES],
  [60, '2026-12-21', 5 + 52 * MINUTES],
  [0, '2026-04-01', 12 + 7 * MINUTES],
  [-40, '2026-12-21', 15 + 1 * MINUTES],
])('dayLengthHours(%d) on %s is as an almanac says, within four minutes', (latitude, day, hours) => {
  expect(Math.abs(dayLengthHours(latitude, days(day)) - hours)).toBeLessThan(4 * MINUTES);
});

it('dayLengthHours knows the midnight sun and the polar night', () => {
  expect(dayLengthHours(75, days('2026-06-21'))).toBe(24);
  expect(dayLengthHours(75, days('2026-12-21'))).toBe(0);
});
