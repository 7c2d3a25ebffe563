import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {majorAxis, rateLine} from '../../../src/thermal/fit/line.ts';
import {outsideLinearRange} from '../../../src/thermal/fit/linear-range.ts';
import {productWeights, rateWeights} from '../../../src/thermal/fit/observed.ts';

const rowsBy = (lower: number, degreeDays: number, temperatures: readonly number[]) =>
  temperatures.map(temperature => ({temperature, days: degreeDays / (temperature - lower)}));

const anyLine = fc.record({
  lower: fc.double({min: 2, max: 14, noNaN: true}),
  degreeDays: fc.double({min: 30, max: 900, noNaN: true}),
});

/** Computed with linregress of SciPy 1.17.1 on the rates of the rows below. */
const LINREGRESS = {
  lower: 9.780795536139319,
  degreeDays: 227.64074833249825,
  degreeDaysSe: 2.9597442679946333,
  r2: 0.9996620195694192,
};

describe('rateLine and majorAxis', () => {
  it('find threshold and constant again in rows without error', () => {
    fc.assert(
      fc.property(anyLine, ({lower, degreeDays}) => {
        const rows = rowsBy(lower, degreeDays, [16, 19, 22, 25, 28]);
        for (const fit of [rateLine(rows), majorAxis(rows)]) {
          expect(fit.lowerC).toBeCloseTo(lower, 7);
          expect(fit.degreeDays / degreeDays).toBeCloseTo(1, 7);
          expect(fit.r2).toBeCloseTo(1, 9);
        }
      }),
    );
  });

  it('agree with a general-purpose regression', () => {
    const rows = [
      [15, 43.5],
      [20, 22.5],
      [25, 14.8],
      [30, 11.3],
    ].map(([temperature, days]) => ({temperature: temperature!, days: days!}));
    const fit = rateLine(rows);
    expect(fit.lowerC).toBeCloseTo(LINREGRESS.lower, 10);
    expect(fit.degreeDays).toBeCloseTo(LINREGRESS.degreeDays, 8);
    expect(fit.degreeDaysSe).toBeCloseTo(LINREGRESS.degreeDaysSe, 8);
    expect(fit.r2).toBeCloseTo(LINREGRESS.r2, 12);
  });

  it('are the same in Fahrenheit: thresholds turned, constants and errors times 9/5', () => {
    const rows = [15, 18, 21, 24].map((temperature, i) => ({temperature, days: [41, 27.5, 21, 16.2][i]!}));
    const celsius = rateLine(rows);
    const fahrenheit = rateLine(rows.map(row => ({...row, temperature: row.temperature * 1.8 + 32})));
    expect(fahrenheit.lowerC).toBeCloseTo(celsius.lowerC * 1.8 + 32, 8);
    expect(fahrenheit.lowerSe).toBeCloseTo(celsius.lowerSe! * 1.8, 8);
    expect(fahrenheit.degreeDays).toBeCloseTo(celsius.degreeDays * 1.8, 7);
    expect(fahrenheit.degreeDaysSe).toBeCloseTo(celsius.degreeDaysSe! * 1.8, 7);
  });

  it('count a row with weight as often as it stands there', () => {
    const rows = [15, 18, 21, 24].map((temperature, i) => ({
      temperature,
      days: [41, 27.5, 21, 16.2][i]!,
      n: i + 1,
    }));
    const repeated = rows.flatMap(row => Array.from({length: row.n}, () => ({...row, n: 1})));
    expect(rateLine(rows, rateWeights(rows)).lowerC).toBeCloseTo(rateLine(repeated).lowerC, 9);
    expect(majorAxis(rows, productWeights(rows)).lowerC).toBeCloseTo(majorAxis(repeated).lowerC, 9);
  });

  it('leave standard errors open with two rows', () => {
    const rows = rowsBy(9, 200, [15, 25]);
    expect(rateLine(rows)).toMatchObject({lowerSe: null, degreeDaysSe: null});
    expect(majorAxis(rows)).toMatchObject({lowerSe: null, degreeDaysSe: null});
  });
});

describe('outsideLinearRange', () => {
  it('takes nothing off a straight line, however it scatters by a per cent', () => {
    const rows = rowsBy(10, 250, [14, 17, 20, 23, 26, 29]);
    const scattered = rows.map((row, i) => ({...row, days: row.days * (1 + 0.01 * (i % 2 === 0 ? 1 : -1))}));
    expect(outsideLinearRange(rows)).toEqual([]);
    expect(outsideLinearRange(scattered)).toEqual([]);
  });

  it('takes off what is slowed by heat, and what is faster in the cold than the line allows', () => {
    const rows = rowsBy(10, 250, [14, 17, 20, 23, 26, 29]);
    const hot = {temperature: 33, days: 14};
    const cold = {temperature: 11, days: 120};
    expect(outsideLinearRange([hot, ...rows])).toEqual([hot]);
    expect(outsideLinearRange([...rows, cold])).toEqual([cold]);
  });

  it('keeps at least three rows', () => {
    const rows = [30, 20, 12, 14, 19].map((days, i) => ({temperature: 15 + 5 * i, days}));
    expect(outsideLinearRange(rows).length).toBeLessThanOrEqual(2);
  });
});
