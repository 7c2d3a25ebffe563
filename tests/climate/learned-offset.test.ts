import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {learnedOffset} from '../../src/climate/learned-offset.ts';

const trace = (points: readonly (readonly [hours: number, temperature: number])[]) => ({
  atDays: Float64Array.from(points, ([hours]) => 20_000 + hours / 24),
  temperatureC: Float64Array.from(points, ([, temperature]) => temperature),
  maxGapDays: 3 / 24,
});

describe('learnedOffset', () => {
  it('is the difference of two loggers that read at different times, as long as both read', () => {
    const own = trace([1, 2, 3, 4].map(hours => [hours, 20.8 + hours] as const));
    const other = trace([0.5, 1.5, 2.5, 3.5].map(hours => [hours, 20 + hours] as const));
    const {offsetC, overlapDays} = learnedOffset(own, other);
    expect(offsetC).toBeCloseTo(0.8, 9);
    expect(overlapDays).toBeCloseTo(2 / 24, 9);
  });

  it('tells how far the differences lie about it', () => {
    const at = [0, 1, 2, 3, 4];
    const own = trace(at.map(hours => [hours, 21 + (hours % 2 === 0 ? 0.4 : -0.4)] as const));
    const {sdC, offsetC} = learnedOffset(own, trace(at.map(hours => [hours, 20] as const)));
    expect(offsetC).toBeCloseTo(1, 9);
    expect(sdC).toBeCloseTo(0.4, 9);
  });

  it('learns nothing in a gap of either', () => {
    const own = trace([0, 1, 2, 10, 11].map(hours => [hours, 25] as const));
    const other = trace([0, 1, 9, 11].map(hours => [hours, hours < 5 ? 24 : 20] as const));
    // Both read from 0 to 1 h (+1 °C) and from 10 to 11 h (+5 °C).
    const {offsetC, overlapDays} = learnedOffset(own, other);
    expect(overlapDays).toBeCloseTo(2 / 24, 9);
    expect(offsetC).toBeCloseTo(3, 9);
  });

  it('is without number where both never read together', () => {
    for (const other of [
      trace([]),
      trace([[5, 20]]),
      trace([
        [8, 20],
        [9, 20],
      ]),
    ]) {
      const {offsetC, overlapDays} = learnedOffset(
        trace([
          [0, 25],
          [1, 25],
        ]),
        other,
      );
      expect(overlapDays).toBe(0);
      expect(offsetC).toBeNaN();
    }
    expect(
      learnedOffset(
        trace([]),
        trace([
          [0, 25],
          [1, 25],
        ]),
      ).overlapDays,
    ).toBe(0);
  });

  it('finds a constant offset whatever the course', () => {
    const course = fc.array(fc.integer({min: -100, max: 400}), {minLength: 3, maxLength: 40});
    fc.assert(
      fc.property(course, fc.integer({min: -50, max: 50}), (tenths, offset) => {
        const other = trace(tenths.map((value, hour) => [hour, value / 10] as const));
        const own = {...other, temperatureC: other.temperatureC.map(value => value + offset / 10)};
        expect(learnedOffset(own, other).offsetC).toBeCloseTo(offset / 10, 9);
      }),
    );
  });
});
