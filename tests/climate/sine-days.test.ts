import {describe, expect, it} from 'vitest';
import {sineDays} from '../../src/climate/sine-days.ts';
import {degreeDaysOfDay} from '../../src/thermal/daily.ts';
import {degreeDay} from '../../src/thermal/degree-day.ts';
import {doseBetween} from '../../src/thermal/dose.ts';
import {civil, days} from './fake-civil.ts';

const drawn = (from: string, to: string, minimum: number, maximum: number) =>
  sineDays(civil, {fromDays: days(from), toDays: days(to)}, minimum, maximum);

const at = ({atDays, temperatureC}: ReturnType<typeof drawn>, local: string) =>
  temperatureC[atDays.findIndex(instant => Math.abs(instant - days(local)) < 1e-9)];

describe('sineDays', () => {
  it('is coolest at 06:00 and warmest at 15:00 local time, and half way between in the middle', () => {
    const course = drawn('2031-05-01 08:00', '2031-05-03 08:00', 14, 24);
    expect(Math.max(...course.temperatureC)).toBe(24);
    expect(Math.min(...course.temperatureC)).toBe(14);
    expect(at(course, '2031-05-01 15:00')).toBe(24);
    expect(at(course, '2031-05-02 06:00')).toBe(14);
    expect(at(course, '2031-05-02 15:00')).toBe(24);
    const morning = drawn('2031-05-02 06:00', '2031-05-02 10:30', 14, 24);
    expect(morning.temperatureC.at(-1)).toBeCloseTo(19, 10);
  });

  it('follows the clock when it goes forward', () => {
    const course = drawn('2031-03-29 12:00', '2031-03-31 12:00', 10, 20);
    expect(at(course, '2031-03-29 15:00')).toBe(20);
    expect(at(course, '2031-03-30 06:00')).toBe(10);
    expect(at(course, '2031-03-30 15:00')).toBe(20);
  });

  it('begins and ends with the span and rises in time', () => {
    const {atDays} = drawn('2031-05-01 08:07', '2031-05-02 07:51', 14, 24);
    expect(atDays[0]).toBe(days('2031-05-01 08:07'));
    expect(atDays.at(-1)).toBe(days('2031-05-02 07:51'));
    expect(atDays.every((instant, i) => i === 0 || instant > atDays[i - 1]!)).toBe(true);
  });

  it('gives the degree-days of the sine method, half-waves being of any length', () => {
    const {atDays, temperatureC} = drawn('2031-05-01 06:00', '2031-05-02 06:00', 6, 26);
    const trace = {atDays: Float64Array.from(atDays), temperatureC: Float64Array.from(temperatureC)};
    const model = degreeDay({kind: 'degree-day', lower: 10, upper: 24, degreeDays: 1});
    const {dose} = doseBetween(trace, model, atDays[0]!, atDays.at(-1)!);
    const sine = degreeDaysOfDay('sine', {minimum: 6, maximum: 26}, {lower: 10, upper: 24});
    expect(Math.abs(dose - sine)).toBeLessThan(0.02);
  });
});
