// Looks for adults: as few as keep every pause within the hold time, against an exhaustive search on small cases.
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {openTimeOf} from '../../src/care/calendar.ts';
import {momentWithin} from '../../src/care/looks.ts';
import {startChecking} from '../../src/development/checks.ts';
import {MS_PER_DAY, MS_PER_HOUR} from '../../src/records/entry.ts';
import {at, civil} from './care-of.ts';

const everyDay = Object.fromEntries(
  ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map(day => [day, ['08:00-17:00']]),
);
const open = openTimeOf({open: everyDay}, civil);

/** The fewest of the moments that leave no pause longer than `hold`, tried one number after the other. */
function fewest(moments: readonly number[], from: number, until: number, hold: number): number {
  const reach = (last: number, left: number): boolean =>
    last + hold >= until ||
    (left > 0 && moments.some(next => next > last && next <= last + hold && reach(next, left - 1)));
  let looks = 0;
  while (!reach(from, looks)) looks++;
  return looks;
}

describe('momentWithin(last, hold, open)', () => {
  it('makes as few looks as an exhaustive search over rounds and last moments, or one more', () => {
    fc.assert(
      fc.property(fc.integer({min: 16, max: 80}), fc.integer({min: 2, max: 5}), (hours, days) => {
        const from = at('2031-05-19T08:00');
        const until = from + days * MS_PER_DAY;
        const hold = hours * MS_PER_HOUR;
        let looks = 0;
        for (let last = from; last + hold < until; looks++) {
          const next = momentWithin(last, hold, open);
          expect(next > last && next - last <= hold).toBe(true);
          last = next;
        }
        const moments = Array.from({length: days + 1}, (_, n) => civil.addDays('2031-05-19', n)).flatMap(
          day => [civil.at(day, '08:00'), civil.at(day, '16:30')],
        );
        expect(looks).toBeLessThanOrEqual(fewest(moments, from, until, hold) + 1);
      }),
      {numRuns: 60},
    );
  });
});

describe('the first look', () => {
  it('of band larvae is on Tuesday the 18th, and on Monday the 17th once it is warmer', () => {
    const weekdays = openTimeOf({open: {...everyDay, sat: [], sun: []}}, civil);
    const rounds = weekdays
      .roundsBetween(at('2031-03-03T12:00'), at('2031-04-03T12:00'))
      .map(each => each / MS_PER_DAY);
    const first = (p05: string) =>
      civil.iso(startChecking(at(p05) / MS_PER_DAY, rounds)! * MS_PER_DAY).slice(0, 10);
    expect(first('2031-03-21T14:12')).toBe('2031-03-18');
    expect(first('2031-03-19T23:21')).toBe('2031-03-17');
  });
});
