import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {type DailyMethod, type DayExtremes, dailyMethods, degreeDaysOfDay} from '../../src/thermal/daily.ts';
import type {Cutoff} from '../../src/thermal/degree-day.ts';
import {degreeDay} from '../../src/thermal/degree-day.ts';
import {doseBetween} from '../../src/thermal/dose.ts';
import {meanOver} from './quadrature.ts';

const cutoffs = ['horizontal', 'intermediate', 'vertical'] as const satisfies readonly Cutoff[];
const drawn = dailyMethods.filter(method => method !== 'average');

/** Hundredths of a degree, as read: from frost to above every threshold. */
const degrees = fc.integer({min: -2000, max: 5500}).map(hundredths => hundredths / 100);
const anyDay = fc
  .tuple(degrees, degrees, degrees)
  .map(([a, b, next]) => ({minimum: Math.min(a, b), maximum: Math.max(a, b), nextMinimum: next}));

const thresholds = (cutoff: Cutoff, upper: number | undefined = 30) => ({lower: 10, upper, cutoff});

/** Share of the height between the extremes, by share of the half-day. */
const shape: Record<'triangle' | 'sine', (half: number) => number> = {
  triangle: half => half,
  sine: half => (1 - Math.cos(Math.PI * half)) / 2,
};

/** The same by the definition: the mean of effective degrees along the curve, rising and then falling. */
function byQuadrature(
  method: DailyMethod,
  {minimum, maximum, nextMinimum}: DayExtremes,
  cutoff: Cutoff,
): number {
  const {ratePerDay} = degreeDay({kind: 'degree-day', ...thresholds(cutoff), degreeDays: 1});
  const curve = shape[method.endsWith('sine') ? 'sine' : 'triangle'];
  const half = (low: number) => meanOver(at => ratePerDay(low + (maximum - low) * curve(at)), 0, 1, 4000);
  return (half(minimum) + half(method.startsWith('double') ? nextMinimum! : minimum)) / 2;
}

describe('degreeDaysOfDay', () => {
  it.each(drawn)('agrees with quadrature of the curve in every position and cutoff: %s', method => {
    const extremes = [2, 8, 12, 22, 28, 36, 41, 52, 60];
    for (const minimum of extremes)
      for (const maximum of extremes.filter(at => at >= minimum))
        for (const cutoff of cutoffs) {
          const day = {minimum, maximum, nextMinimum: minimum + 3};
          const sum = degreeDaysOfDay(method, day, thresholds(cutoff));
          // A jump inside a cell of the quadrature costs it up to 20 degrees in one cell of 4,000.
          expect(Math.abs(sum - byQuadrature(method, day, cutoff))).toBeLessThan(
            cutoff === 'vertical' ? 20 / 4000 : 1e-5,
          );
        }
  });

  it.each(cutoffs)('gives for a triangle what the trace of such a day gives, %s', cutoff => {
    const model = degreeDay({kind: 'degree-day', ...thresholds(cutoff), degreeDays: 1});
    fc.assert(
      fc.property(anyDay, day => {
        const trace = {
          atDays: Float64Array.of(0, 0.5, 1),
          temperatureC: Float64Array.of(day.minimum, day.maximum, day.minimum),
        };
        expect(degreeDaysOfDay('triangle', day, thresholds(cutoff))).toBeCloseTo(
          doseBetween(trace, model, 0, 1).dose,
          10,
        );
      }),
    );
  });

  it('halves a double method between the day and the fall to the next minimum', () => {
    fc.assert(
      fc.property(
        anyDay,
        fc.constantFrom('triangle', 'sine'),
        fc.constantFrom(...cutoffs),
        (day, method, cutoff) => {
          const next = {
            minimum: Math.min(day.nextMinimum, day.maximum),
            maximum: Math.max(day.nextMinimum, day.maximum),
          };
          const single = method === 'sine' ? 'sine' : 'triangle';
          expect(degreeDaysOfDay(`double-${single}`, day, thresholds(cutoff))).toBeCloseTo(
            (degreeDaysOfDay(single, day, thresholds(cutoff)) +
              degreeDaysOfDay(single, next, thresholds(cutoff))) /
              2,
            10,
          );
        },
      ),
    );
  });

  it('takes the own minimum of the day where the next one is not known', () => {
    expect(degreeDaysOfDay('double-sine', {minimum: 4, maximum: 22}, thresholds('horizontal'))).toBe(
      degreeDaysOfDay('sine', {minimum: 4, maximum: 22}, thresholds('horizontal')),
    );
  });

  it('orders the cutoffs: 0 ≤ vertical ≤ intermediate ≤ horizontal', () => {
    fc.assert(
      fc.property(anyDay, fc.constantFrom(...drawn), (day, method) => {
        const [horizontal, intermediate, vertical] = cutoffs.map(cutoff =>
          degreeDaysOfDay(method, day, thresholds(cutoff)),
        );
        expect(vertical!).toBeGreaterThanOrEqual(0);
        expect(intermediate!).toBeGreaterThanOrEqual(vertical! - 1e-12);
        expect(horizontal!).toBeGreaterThanOrEqual(intermediate! - 1e-12);
      }),
    );
  });

  it('never falls when a day is warmer, below the upper threshold', () => {
    fc.assert(
      fc.property(
        anyDay,
        fc.constantFrom(...dailyMethods),
        fc.double({min: 0, max: 9, noNaN: true}),
        (day, method, rise) => {
          const warmer = {
            minimum: day.minimum + rise,
            maximum: day.maximum + rise,
            nextMinimum: day.nextMinimum + rise,
          };
          const open = {lower: 10};
          expect(degreeDaysOfDay(method, warmer, open)).toBeGreaterThanOrEqual(
            degreeDaysOfDay(method, day, open) - 1e-12,
          );
        },
      ),
    );
  });

  it('is the same in Fahrenheit: degree-days are 9/5 of those in Celsius, by every cutoff', () => {
    const fahrenheit = (celsius: number) => (celsius * 9) / 5 + 32;
    const given = fc.constantFrom(
      ...dailyMethods.flatMap(method =>
        cutoffs
          .filter(cutoff => method !== 'average' || cutoff === 'horizontal')
          .map(cutoff => ({method, cutoff})),
      ),
    );
    fc.assert(
      fc.property(anyDay, given, (day, {method, cutoff}) => {
        const inF = degreeDaysOfDay(
          method,
          {
            minimum: fahrenheit(day.minimum),
            maximum: fahrenheit(day.maximum),
            nextMinimum: fahrenheit(day.nextMinimum),
          },
          {lower: 50, upper: 86, cutoff},
        );
        // A flat day just at the upper threshold may fall to either side of it.
        if (day.minimum !== day.maximum && day.maximum !== day.nextMinimum)
          expect(inF).toBeCloseTo((degreeDaysOfDay(method, day, thresholds(cutoff)) * 9) / 5, 9);
      }),
      {numRuns: 500},
    );
  });

  it.each([
    [5, 0, 0, 0],
    [10, 0, 0, 0],
    [24, 14, 14, 14],
    [30, 20, 20, 20],
    [33, 20, 17, 0],
    [55, 20, 0, 0],
  ])(
    'of a flat day at %d °C is the effective temperature itself',
    (at, horizontal, intermediate, vertical) => {
      for (const method of drawn)
        expect(
          cutoffs.map(cutoff => degreeDaysOfDay(method, {minimum: at, maximum: at}, thresholds(cutoff))),
        ).toEqual([horizontal, intermediate, vertical]);
    },
  );

  it('keeps its digits on a nearly flat day across a threshold', () => {
    for (const method of drawn) {
      const day = {minimum: 10 - 1e-9, maximum: 10 + 1e-9};
      const sum = degreeDaysOfDay(method, day, {lower: 10});
      expect(sum).toBeGreaterThan(0);
      expect(sum).toBeLessThan(1e-9);
    }
  });

  it('refuses another cutoff than the horizontal one for the average, a minimum above the maximum, and no numbers', () => {
    const day = {minimum: 10, maximum: 20};
    expect(() => degreeDaysOfDay('average', day, thresholds('vertical'))).toThrow(RangeError);
    expect(() => degreeDaysOfDay('average', day, thresholds('intermediate'))).toThrow(RangeError);
    expect(() => degreeDaysOfDay('sine', {minimum: 21, maximum: 20}, {lower: 10})).toThrow(RangeError);
    expect(() => degreeDaysOfDay('sine', {minimum: Number.NaN, maximum: 20}, {lower: 10})).toThrow(
      RangeError,
    );
    expect(() => degreeDaysOfDay('sine', day, {lower: 30, upper: 10})).toThrow(RangeError);
  });
});
