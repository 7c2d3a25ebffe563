import {describe, expect, it} from 'vitest';
import {openTimeOf} from '../../src/care/calendar.ts';
import {at, civil, wall} from './care-of.ts';

const week = openTimeOf(
  {
    open: {mon: ['08:00-12:00'], tue: ['08:00-12:00'], fri: ['16:30-17:30', '08:00-12:00'], sat: []},
    closed: [{from: '2031-06-02', to: '2031-06-02', why: 'holiday'}],
  },
  civil,
);

describe('openTimeOf(calendar)', () => {
  it('walks one round a day at 09:00 where there is no calendar', () => {
    const always = openTimeOf(undefined, civil);
    expect(always.roundsBetween(at('2031-05-30T09:00'), at('2031-06-01T08:59')).map(wall)).toEqual([
      '2031-05-30T09:00',
      '2031-05-31T09:00',
    ]);
    expect(always.isOpen('2031-06-01')).toBe(true);
  });

  it('walks a round when each stretch of opening hours begins, in order of time', () => {
    expect(week.roundsBetween(at('2031-05-30T00:00'), at('2031-06-03T23:00')).map(wall)).toEqual([
      '2031-05-30T08:00',
      '2031-05-30T16:30',
      '2031-06-03T08:00',
    ]);
  });

  it('closes days without hours, days not named, and closed spans', () => {
    expect(['2031-05-31', '2031-06-01', '2031-06-02', '2031-06-03'].map(day => week.isOpen(day))).toEqual([
      false,
      false,
      false,
      true,
    ]);
    expect(week.closedBecause('2031-06-02')).toBe('holiday');
  });

  it('closes spans also where no hours are given', () => {
    const holidays = openTimeOf({closed: [{from: '2031-12-24', to: '2031-12-31'}]}, civil);
    expect(wall(holidays.nextRound(at('2031-12-23T10:00')))).toBe('2032-01-01T09:00');
  });

  it('nextRound(at) and previousRound(at) include the instant itself', () => {
    const round = at('2031-05-30T16:30');
    expect(week.nextRound(round)).toBe(round);
    expect(week.previousRound(round)).toBe(round);
    expect(wall(week.nextRound(round + 1))).toBe('2031-06-03T08:00');
    expect(wall(week.previousRound(round - 1))).toBe('2031-05-30T08:00');
  });

  it('has no next round where the room never opens', () => {
    expect(openTimeOf({open: {}}, civil).nextRound(at('2031-05-30T09:00'))).toBeNull();
  });

  it('knows that it is open within its hours, also past midnight', () => {
    const nights = openTimeOf({open: {fri: ['22:00-02:00']}}, civil);
    expect(
      ['2031-05-30T21:59', '2031-05-30T22:00', '2031-05-31T01:59', '2031-05-31T02:00'].map(t =>
        nights.isOpenAt(at(t)),
      ),
    ).toEqual([false, true, true, false]);
  });
});
