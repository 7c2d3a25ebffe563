import {describe, expect, it} from 'vitest';
import {composeCourse} from '../../src/climate/compose-course.ts';
import type {Futures} from '../../src/climate/futures.ts';
import {days} from './fake-civil.ts';
import {courseInput, type RoomSketch, series, spells} from './room.ts';

const automatic = {kind: 'automatic', maxGapHours: 3} as const;
const cage = {type: 'cage', place: 'rack A/1', logger: 'L1'} as const;
/** One level a day, so that a day of the record is known by its temperature. */
const byDay = (from: string) => (at: number) => 15 + Math.floor(at - days(from) + 1e-6);

const set: RoomSketch = {
  from: '2031-05-01 00:00',
  now: '2031-05-15 00:00',
  to: '2031-06-14 00:00',
  units: {C1: [['always', {...cage, setPoints: {constant: 22}}]]},
  loggers: {L1: automatic},
  readings: {L1: series('2031-05-01 00:00', '2031-05-15 00:00', 60, byDay('2031-05-01 00:00'))},
  futures: 50,
};
const futuresOf = (sketch: RoomSketch) => composeCourse(courseInput(sketch)).futures;
const noons = ({days: library, orders}: Futures, ahead: number) =>
  orders.map(order => library[order[ahead]!]!.temperatureC[12]!);
const mean = (numbers: readonly number[]) => numbers.reduce((a, b) => a + b, 0) / numbers.length;

describe('futures of a unit', () => {
  it('are as many as asked, as long as the course, of days that were read, and the same every time', () => {
    const futures = futuresOf(set)!;
    expect(futures.orders.length).toBe(50);
    expect(futures.orders.every(order => order.length === 30)).toBe(true);
    expect(new Set([2, 3, 4].flatMap(ahead => noons(futures, ahead)))).toEqual(
      new Set(Array.from({length: 14}, (_, day) => 15 + day)),
    );
    expect(futuresOf(set)).toEqual(futures);
  });

  it('have the mean of the record, and levels of their own that last', () => {
    const futures = futuresOf(set)!;
    const levels = futures.orders.map(order =>
      mean(Array.from(order, day => futures.days[day]!.temperatureC[12]!)),
    );
    expect(mean(levels)).toBeCloseTo(21.5, 0);
    // Sums of thirty independent days would differ by 4.03 / √30 = 0.74 °C; here five days stand for a fortnight.
    const sd = Math.sqrt(mean(levels.map(level => (level - mean(levels)) ** 2)));
    expect(sd).toBeGreaterThan(1.2);
    expect(sd).toBeLessThan(2.6);
  });

  it('are none where a temperature is held, where none are asked for, and where less than three days were read', () => {
    expect(futuresOf({...set, holdC: 20})).toBeUndefined();
    expect(futuresOf({...set, futures: 0})).toBeUndefined();
    const twoDays = series('2031-05-13 00:00', '2031-05-15 00:00', 60, () => 20);
    expect(futuresOf({...set, readings: {L1: twoDays}})).toBeUndefined();
  });

  it('leave out days that were not read from beginning to end', () => {
    const readings = spells(
      series('2031-05-01 00:00', '2031-05-06 12:00', 60, byDay('2031-05-01 00:00')),
      series('2031-05-08 12:00', '2031-05-15 00:00', 60, byDay('2031-05-01 00:00')),
    );
    expect(futuresOf({...set, readings: {L1: readings}})!.days.length).toBe(11);
  });

  it('drift to the same dates of earlier years at the temperature of the surroundings, and only there', () => {
    const readings = spells(
      series('2030-05-01 00:00', '2030-08-01 00:00', 60, () => 30),
      series('2031-05-01 00:00', '2031-05-15 00:00', 60, () => 18),
    );
    const ambient: RoomSketch = {
      ...set,
      units: {C1: [['always', {...cage, setPoints: {ambient: true}}]]},
      readings: {L1: readings},
    };
    const futures = futuresOf(ambient)!;
    expect(futures.ofEarlierYears).toBeGreaterThan(60);
    const earlier = (ahead: number) => mean(noons(futures, ahead).map(noon => (noon > 25 ? 1 : 0)));
    expect(earlier(2)).toBeLessThan(0.55);
    expect(earlier(27)).toBeGreaterThan(0.85);
    expect(new Set(noons(futuresOf({...set, readings: {L1: readings}})!, 27))).toEqual(new Set([18]));
  });
});
