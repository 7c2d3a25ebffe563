// Daily degree-days against figures printed elsewhere, and against quadrature where nothing is printed.
import {describe, expect, it} from 'vitest';
import {type DailyMethod, degreeDaysOfDay} from '../../src/thermal/daily.ts';
import {degreeDay, type Thresholds} from '../../src/thermal/degree-day.ts';

type Day = readonly [minimum: number, maximum: number];

const average = (days: readonly Day[], thresholds: Thresholds) =>
  days.reduce(
    (sum, [minimum, maximum]) => sum + degreeDaysOfDay('average', {minimum, maximum}, thresholds),
    0,
  );

describe('the average of a day, as printed (all sources seen)', () => {
  it.each<{source: string; days: readonly Day[]; thresholds: Thresholds; printed: number}>([
    {
      source:
        'Iowa State University, Agronomy 541 course notes, lesson 2b: most degree-days of any day, 86/50 °F',
      days: [[90, 100]],
      thresholds: {lower: 50, upper: 86},
      printed: 36,
    },
    {
      source: 'Figuring growing degree days, M Dairy Consulting (advisory page), worked example, °F',
      days: [[61, 83]],
      thresholds: {lower: 50},
      printed: 22,
    },
    {
      source:
        'J. Nugent, Calculating Growing Degree Days, Michigan State University leaflet, averaging example 1, °F',
      days: [[40, 65]],
      thresholds: {lower: 50},
      printed: 2.5,
    },
    {
      source: 'the same leaflet, averaging example 2: a negative value is set to zero, °F',
      days: [[35, 60]],
      thresholds: {lower: 50},
      printed: 0,
    },
    {
      source: 'How are accumulated degree days calculated? (popular article, alfalfa weevil, 48 °F), day 1',
      days: [[44, 70]],
      thresholds: {lower: 48},
      printed: 9,
    },
    {
      source: 'the same article, two days',
      days: [
        [44, 70],
        [44, 72],
      ],
      thresholds: {lower: 48},
      printed: 19,
    },
    {
      source:
        'Bessin, Johnson, Townsend & Villanueva, University of Kentucky ENTFACT-123, a day of 49 °F on average',
      days: [[49, 49]],
      thresholds: {lower: 48},
      printed: 1,
    },
    {
      source: 'University of Wisconsin, Atlas of the Biosphere, growing degree days: maize, °C',
      days: [[15, 21]],
      thresholds: {lower: 10, upper: 30},
      printed: 8,
    },
    {
      source:
        'Midwestern Regional Climate Center, growing degree days note: a day of 75 °F on average, base 65',
      days: [[75, 75]],
      thresholds: {lower: 65},
      printed: 10,
    },
    {
      source: 'Canola Council of Canada, Canola Watch, 22 May 2014, base 0 °C',
      days: [[10, 20]],
      thresholds: {lower: 0},
      printed: 15,
    },
  ])('$printed: $source', ({days, thresholds, printed}) => {
    expect(average(days, thresholds)).toBeCloseTo(printed, 10);
  });

  it.each<{source: string; days: readonly Day[]; printed: number}>([
    {source: 'Waushara Argus (Wisconsin), 25 Apr 2018, day 1', days: [[65, 90]], printed: 25.5},
    {source: 'the same, day 2', days: [[46, 72]], printed: 11},
    {
      source: 'the same, three days',
      days: [
        [65, 90],
        [46, 72],
        [42, 63],
      ],
      printed: 43,
    },
    {
      source: 'S. Karhoff, Ohio State University Extension, 12 Jun 2023, worked example',
      days: [[63, 87]],
      printed: 24.5,
    },
  ])(
    '$printed once extremes outside 50–86 °F are replaced by these, the rule of: $source',
    ({days, printed}) => {
      const held = (at: number) => Math.min(86, Math.max(50, at));
      const replaced = days.map(([minimum, maximum]) => [held(minimum), held(maximum)] as const);
      expect(average(replaced, {lower: 50, upper: 86})).toBeCloseTo(printed, 10);
    },
  );

  it('develops twice as fast at 70 °F as at 60 °F, base 50 (Iowa State University ICM newsletter 2006, seen)', () => {
    const {ratePerDay} = degreeDay({kind: 'degree-day', lower: 50, degreeDays: 1});
    expect(ratePerDay(70) / ratePerDay(60)).toBe(2);
  });
});

// No printed daily value of these methods was found in an openly readable source. These were computed with adaptive
// quadrature of the drawn curve, split where it meets a threshold; thresholds 10 and 30 °C.
describe('triangle and sine, computed by quadrature', () => {
  const cutoffs = ['horizontal', 'intermediate', 'vertical'] as const;
  type Row = readonly [string, Day, DailyMethod, readonly [number, number, number]];
  it.each<Row>([
    ['below the lower threshold', [2, 8], 'sine', [0, 0, 0]],
    ['below the lower threshold', [2, 8], 'triangle', [0, 0, 0]],
    ['below the lower threshold', [2, 8], 'double-sine', [0, 0, 0]],
    ['between the thresholds', [12, 28], 'sine', [10, 10, 10]],
    ['between the thresholds', [12, 28], 'triangle', [10, 10, 10]],
    ['across the lower one', [4, 22], 'sine', [4.5255, 4.5255, 4.5255]],
    ['across the lower one', [4, 22], 'triangle', [4, 4, 4]],
    ['across the lower one', [4, 22], 'double-sine', [4.8035, 4.8035, 4.8035]],
    ['across the upper one', [18, 36], 'sine', [15.4745, 13.9491, 7.638]],
    ['across the upper one', [18, 36], 'triangle', [16, 15, 9.3333]],
    ['across the upper one', [18, 36], 'double-sine', [16.1446, 14.5393, 7.8673]],
    ['across both', [4, 36], 'sine', [10, 8.8753, 4.298]],
    ['across both', [4, 36], 'triangle', [10, 9.4375, 6.25]],
    ['across both', [4, 36], 'double-sine', [10.3649, 9.2106, 4.5077]],
    ['above the upper threshold', [32, 41], 'sine', [20, 13.5, 0]],
    ['above the upper threshold', [32, 41], 'triangle', [20, 13.5, 0]],
    ['above the upper threshold', [32, 41], 'double-sine', [20, 12.75, 0]],
  ])('%s: %j by %s', (_, [minimum, maximum], method, expected) => {
    cutoffs.forEach((cutoff, i) => {
      const day = {minimum, maximum, nextMinimum: minimum + 3};
      expect(degreeDaysOfDay(method, day, {lower: 10, upper: 30, cutoff})).toBeCloseTo(expected[i]!, 4);
    });
  });

  it.each([
    [60, [2.54, 3.18, 5, 10]],
    [70, [6.37, 7.54, 10, 15, 20]],
    [80, [10.62, 12.18, 15, 20, 25, 30]],
    [90, [14.93, 16.77, 19.81, 24.78, 29.73, 34.61]],
    [100, [17.53, 19.44, 22.44, 27.12, 31.63, 35.75]],
  ])('single sine, horizontal, 50/88 °F, maximum %d and minima from 30 by tens', (maximum, expected) => {
    const sums = expected.map((_, i) =>
      degreeDaysOfDay('sine', {minimum: 30 + 10 * i, maximum}, {lower: 50, upper: 88}),
    );
    sums.forEach((sum, i) => {
      expect(Math.abs(sum - expected[i]!)).toBeLessThanOrEqual(0.0051);
    });
  });
});
