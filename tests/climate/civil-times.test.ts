import {describe, expect, it} from 'vitest';
import {timesOfDay} from '../../src/climate/civil-times.ts';
import {civil, days} from './fake-civil.ts';

const span = (from: string, to: string) => ({fromDays: days(from), toDays: days(to)});
const near = (times: readonly number[]) => times.map(at => Math.round(at * 1440));

describe('timesOfDay', () => {
  it('runs from the last one not after the beginning to the first one not before the end', () => {
    expect(near(timesOfDay(civil, '06:00', span('2031-05-02 07:00', '2031-05-04 05:00')))).toEqual(
      near([days('2031-05-02 06:00'), days('2031-05-03 06:00'), days('2031-05-04 06:00')]),
    );
    expect(near(timesOfDay(civil, '06:00', span('2031-05-02 06:00', '2031-05-03 06:00')))).toEqual(
      near([days('2031-05-02 06:00'), days('2031-05-03 06:00')]),
    );
  });

  it('gives one instant a day, the time on the clock kept, when the clocks go forward and back', () => {
    for (const [from, to] of [
      ['2031-03-20 00:00', '2031-04-10 00:00'],
      ['2031-10-15 00:00', '2031-11-05 00:00'],
    ] as const) {
      const times = timesOfDay(civil, '06:30', span(from, to));
      expect(times.length).toBe(civilDaysBetween(from, to) + 2);
      for (const at of times) expect(near([at])).toEqual(near([civil.at(dayOf(at), '06:30') / 86_400_000]));
    }
  });

  it('puts a time that the clocks skip at the instant they go forward', () => {
    const times = timesOfDay(civil, '02:30', span('2031-03-28 12:00', '2031-04-01 12:00'));
    expect(times).toContainEqual(Date.parse('2031-03-30T01:00Z') / 86_400_000);
    expect(new Set(times).size).toBe(times.length);
  });

  it('gives the one nearest instant for a span without length', () => {
    expect(timesOfDay(civil, '06:00', span('2031-05-02 06:00', '2031-05-02 06:00'))).toHaveLength(1);
  });
});

function dayOf(atDays: number): string {
  return civil.dayOf(Math.round(atDays * 86_400_000));
}

function civilDaysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to.slice(0, 10)) - Date.parse(from.slice(0, 10))) / 86_400_000);
}
