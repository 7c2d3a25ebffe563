import {describe, expect, it} from 'vitest';
import {degreeDaysByDay, extremesByDay} from '../../src/thermal/degree-days.ts';

const bounds = Float64Array.of(100, 101, 102, 103);

describe('extremesByDay', () => {
  it('takes the readings stamped within each day; midnight belongs to the day it begins', () => {
    const trace = {
      atDays: Float64Array.of(99.9, 100, 100.5, 101, 101.2, 103),
      temperatureC: Float64Array.of(50, 12, 20, 9, 11, -5),
    };
    expect(extremesByDay(trace, bounds)).toEqual({
      minimum: Float64Array.of(12, 9, Number.NaN),
      maximum: Float64Array.of(20, 11, Number.NaN),
    });
  });

  it('passes over readings without a temperature', () => {
    const trace = {
      atDays: Float64Array.of(100.1, 100.2, 101.5),
      temperatureC: Float64Array.of(Number.NaN, 14, Number.NaN),
    };
    expect(extremesByDay(trace, bounds).minimum).toEqual(Float64Array.of(14, Number.NaN, Number.NaN));
  });

  it('follows days of 23 and 25 hours', () => {
    const trace = {
      atDays: Float64Array.of(100.97, 101.98),
      temperatureC: Float64Array.of(15, 18),
    };
    const changes = Float64Array.of(100, 100 + 23 / 24, 100 + 48 / 24, 100 + 73 / 24);
    expect(extremesByDay(trace, changes).maximum).toEqual(Float64Array.of(Number.NaN, 18, Number.NaN));
  });
});

describe('degreeDaysByDay', () => {
  it('falls to the next minimum by the double methods, and to the own one before a missing day and at the end', () => {
    const extremes = {
      minimum: Float64Array.of(4, 8, Number.NaN, 6),
      maximum: Float64Array.of(20, 22, Number.NaN, 24),
    };
    const days = degreeDaysByDay('double-triangle', extremes, {lower: 10});
    const triangle = (low: number, high: number) => (high - 10) ** 2 / (2 * (high - low));
    expect(days[0]).toBeCloseTo((triangle(4, 20) + triangle(8, 20)) / 2, 12);
    expect(days[1]).toBeCloseTo(triangle(8, 22), 12);
    expect(days[2]).toBeNaN();
    expect(days[3]).toBeCloseTo(triangle(6, 24), 12);
  });

  it('of no days is empty', () => {
    const none = {minimum: new Float64Array(0), maximum: new Float64Array(0)};
    expect(degreeDaysByDay('sine', none, {lower: 10})).toHaveLength(0);
  });
});
