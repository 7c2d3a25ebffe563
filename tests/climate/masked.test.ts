import {describe, expect, it} from 'vitest';
import {masked} from '../../src/climate/masked.ts';
import type {Mask} from '../../src/records/state.ts';

const HOUR = 3_600_000;
const series = {
  atDays: Float64Array.of(0, 1 / 24, 2 / 24, 3 / 24),
  temperatureC: Float64Array.of(20, 35, 36, 20),
  rhPercent: Float64Array.of(50, 51, 52, Number.NaN),
};
const mask = (from: number, to: number, lift = false): Mask => ({
  logger: 'L1',
  from: from * HOUR,
  to: to * HOUR,
  why: 'in the sun',
  lift,
});

describe('masked', () => {
  it('leaves out the rows of a masked span, its ends included', () => {
    expect(masked(series, [mask(1, 2)])).toEqual({
      atDays: Float64Array.of(0, 3 / 24),
      temperatureC: Float64Array.of(20, 20),
      rhPercent: Float64Array.of(50, Number.NaN),
    });
  });

  it('takes the last word on an instant: a lifted span is trusted again, and can be masked again', () => {
    expect(masked(series, [mask(1, 2), mask(2, 2, true)]).temperatureC).toEqual(Float64Array.of(20, 36, 20));
    expect(masked(series, [mask(1, 2), mask(0, 3, true)])).toBe(series);
    expect(masked(series, [mask(1, 2), mask(0, 3, true), mask(0, 0)]).temperatureC).toEqual(
      Float64Array.of(35, 36, 20),
    );
  });

  it('is the series itself where nothing is masked, and leaves the given one alone', () => {
    expect(masked(series, [])).toBe(series);
    expect(masked(series, [mask(5, 9)])).toBe(series);
    const before = structuredClone(series);
    masked(series, [mask(1, 2)]);
    expect(series).toEqual(before);
  });
});
