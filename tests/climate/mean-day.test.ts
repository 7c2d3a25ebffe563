import {describe, expect, it} from 'vitest';
import {meanDay, repeated, spreadOfDays} from '../../src/climate/mean-day.ts';
import type {Series} from '../../src/climate/series.ts';
import {civil, days} from './fake-civil.ts';
import {series, spells} from './room.ts';

const span = (from: string, to: string) => ({fromDays: days(from), toDays: days(to)});
const record = (...parts: readonly Series[]) => ({...spells(...parts), maxGapDays: 3 / 24});
/** Hours since local midnight, in the part of the year without summer time. */
const clock = (at: number) => (((at + 1 / 24) % 1) + 1) % 1;

describe('meanDay', () => {
  it('is the mean of each hour over the days of a record', () => {
    const warm = series('2031-02-01 00:00', '2031-02-02 00:00', 10, at => 20 + 24 * clock(at));
    const cold = series('2031-02-03 00:00', '2031-02-04 00:00', 10, () => 10);
    const day = meanDay(record(warm, cold), civil, span('2031-02-01 00:00', '2031-02-05 00:00'))!;
    expect(day).toHaveLength(24);
    for (let hour = 0; hour < 23; hour++) expect(day[hour]).toBeCloseTo((20 + hour + 0.5 + 10) / 2, 6);
  });

  it('weighs by time, not by readings', () => {
    const dense = series('2031-02-01 00:00', '2031-02-02 00:00', 1, () => 20);
    const sparse = series('2031-02-05 00:00', '2031-02-06 00:00', 60, () => 10);
    const day = meanDay(record(dense, sparse), civil, span('2031-02-01 00:00', '2031-02-07 00:00'))!;
    for (const mean of day) expect(mean).toBeCloseTo(15, 6);
  });

  it('is not known where some hour of the day was never read', () => {
    const part = series('2031-02-01 00:00', '2031-02-01 22:30', 10, () => 20);
    expect(meanDay(record(part), civil, span('2031-02-01 00:00', '2031-02-03 00:00'))).toBeUndefined();
    expect(meanDay(record(), civil, span('2031-02-01 00:00', '2031-02-03 00:00'))).toBeUndefined();
  });

  it('puts a lamp at its hour on the clock, before and after the clocks change', () => {
    // On at 08:00, off at 20:00 local time, read every minute across the change of 30 March.
    const lamp = (at: number) => {
      const day = civil.dayOf(Math.round(at * 86_400_000));
      const [on, off] = [civil.at(day, '08:00'), civil.at(day, '20:00')].map(instant => instant / 86_400_000);
      return at >= on! && at < off! ? 30 : 20;
    };
    const readings = series('2031-03-28 00:00', '2031-04-02 00:00', 1, lamp);
    // The day of the change itself counts hours from midnight and is left out.
    const before = meanDay(record(readings), civil, span('2031-03-28 00:00', '2031-03-30 00:00'))!;
    const after = meanDay(record(readings), civil, span('2031-03-31 00:00', '2031-04-02 00:00'))!;
    for (const day of [before, after]) {
      expect(day[7]).toBeLessThan(20.2);
      expect(day[8]).toBeGreaterThan(29.8);
      expect(day[19]).toBeGreaterThan(29.8);
      expect(day[20]).toBeLessThan(20.2);
    }
  });
});

describe('repeated', () => {
  const day = Array.from({length: 24}, (_, hour) => hour);

  it('fills exactly the span, each hour with its mean at its middle', () => {
    const [part] = repeated(day, civil, {basis: 'mean-day'})(span('2031-02-01 10:30', '2031-02-03 12:30'));
    expect(part!.fromDays).toBe(days('2031-02-01 10:30'));
    expect(part!.toDays).toBe(days('2031-02-03 12:30'));
    expect(part!.temperatureC[0]).toBeCloseTo(10, 6);
    expect(part!.temperatureC.at(-1)).toBeCloseTo(12, 6);
    expect(part!.atDays.length).toBeLessThanOrEqual(52);
  });

  it('goes through days of 23 and 25 hours in order of time', () => {
    for (const [from, to] of [
      ['2031-03-29 10:00', '2031-04-01 10:00'],
      ['2031-10-25 10:00', '2031-10-28 10:00'],
    ] as const) {
      const [part] = repeated(day, civil, {basis: 'mean-day'})(span(from, to));
      expect(part!.atDays.every((at, i) => i === 0 || at > part!.atDays[i - 1]!)).toBe(true);
      expect(part!.temperatureC[0]).toBeCloseTo(9.5, 6);
      expect(part!.temperatureC.at(-1)).toBeCloseTo(9.5, 6);
    }
  });
});

describe('spreadOfDays', () => {
  it('is the standard deviation of the means of whole days', () => {
    const level = (day: number, celsius: number) =>
      series(`2031-02-0${day} 00:00`, `2031-02-0${day} 23:50`, 10, () => celsius);
    const days = [level(1, 20), level(2, 21), level(3, 25)];
    const part = series('2031-02-04 00:00', '2031-02-04 12:00', 10, () => 40);
    const all = span('2031-02-01 00:00', '2031-02-06 00:00');
    // Mean 22; squares 4, 1 and 9, over two.
    expect(spreadOfDays(record(...days, part), civil, all)).toBeCloseTo(Math.sqrt(7), 1);
    expect(spreadOfDays(record(level(1, 20)), civil, all)).toBeUndefined();
  });
});
