import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {table} from '../../src/thermal/table.ts';
import {meanOver} from './quadrature.ts';

const points = [
  {temperature: 15, days: 40},
  {temperature: 20, days: 21.5},
  {temperature: 25, days: 13.2},
  {temperature: 30, days: 12.1},
];
const model = table({kind: 'table', points, lower: 8, upper: 34});

describe('table', () => {
  it('gives the published days at the published temperatures', () => {
    for (const {temperature, days} of points) expect(1 / model.ratePerDay(temperature)).toBeCloseTo(days, 10);
  });

  it('is 0 at the limits and beyond', () => {
    expect([-20, 8, 34, 60].map(model.ratePerDay)).toEqual([0, 0, 0, 0]);
  });

  // Computed with PchipInterpolator and its antiderivative of SciPy 1.17.1, through the same points and limits.
  it.each([
    [9, 0.00321511469746763, 0.00159601043274474],
    [12.5, 0.0154632860738366, 0.0338615716291993],
    [17, 0.0330169928707245, 0.142268078077547],
    [22.5, 0.062839701568271, 0.396583725117871],
    [24, 0.0720822254730381, 0.498156985135036],
    [27, 0.0797872340425532, 0.72801887494811],
    [29.5, 0.0825521291249048, 0.931646806320994],
    [31, 0.0754419191919192, 1.05314072462367],
    [33, 0.0300447658402204, 1.16370342230758],
  ])('agrees with a general monotone cubic at %f °C', (at, rate, area) => {
    expect(model.ratePerDay(at)).toBeCloseTo(rate, 13);
    expect(model.antiderivative(at)).toBeCloseTo(area, 12);
  });

  it('has an antiderivative that agrees with quadrature of its rate', () => {
    const knots = [8, 15, 20, 25, 30, 34];
    for (let i = 1; i < knots.length; i++) {
      const [from, to] = [knots[i - 1]!, knots[i]!];
      const area = model.antiderivative(to) - model.antiderivative(from);
      expect(area).toBeCloseTo(meanOver(model.ratePerDay, from, to, 1) * (to - from), 13);
    }
    expect(model.antiderivative(60)).toBe(model.antiderivative(34));
  });

  it('stays between the rates of neighbouring points, and never below 0', () => {
    const anyTable = fc
      .array(
        fc.tuple(fc.double({min: 0.5, max: 8, noNaN: true}), fc.double({min: 1, max: 200, noNaN: true})),
        {
          minLength: 2,
          maxLength: 8,
        },
      )
      .map(steps => {
        let temperature = 5;
        const rising = steps.map(([step, days]) => {
          temperature += step;
          return {temperature, days};
        });
        return {kind: 'table', points: rising, lower: 5, upper: temperature + 3} as const;
      });
    fc.assert(
      fc.property(anyTable, fc.double({min: 0, max: 1, noNaN: true}), (spec, share) => {
        const {ratePerDay} = table(spec);
        const at = [spec.lower, ...spec.points.map(point => point.temperature), spec.upper];
        const rates = at.map(ratePerDay);
        for (let i = 1; i < at.length; i++) {
          const between = ratePerDay(at[i - 1]! + share * (at[i]! - at[i - 1]!));
          expect(between).toBeGreaterThanOrEqual(Math.min(rates[i - 1]!, rates[i]!) - 1e-12);
          expect(between).toBeLessThanOrEqual(Math.max(rates[i - 1]!, rates[i]!) + 1e-12);
        }
      }),
    );
  });

  it('refuses no points, days not above 0, and temperatures that do not rise between the limits', () => {
    const spec = {kind: 'table', points, lower: 8, upper: 34} as const;
    expect(() => table({...spec, points: []})).toThrow(RangeError);
    expect(() => table({...spec, points: [{temperature: 20, days: 0}]})).toThrow(RangeError);
    expect(() => table({...spec, points: points.toReversed()})).toThrow(RangeError);
    expect(() => table({...spec, upper: 30})).toThrow(RangeError);
    expect(() => table({...spec, lower: 15})).toThrow(RangeError);
  });
});
