import {levenbergMarquardt} from 'ml-levenberg-marquardt';
import {describe, expect, it} from 'vitest';
import {aicc, fitCurve, rssOf} from '../../../src/thermal/fit/curve-fit.ts';
import type {CurveKind} from '../../../src/thermal/fit/curves.ts';
import {type Observed, rateWeights} from '../../../src/thermal/fit/observed.ts';
import {type RateModelSpec, rateModel} from '../../../src/thermal/rate-model.ts';

const truths: readonly RateModelSpec[] = [
  {kind: 'briere-1', a: 7.86e-5, lower: 11.36, upper: 39.17},
  {kind: 'briere-2', a: 5e-5, lower: 7.5, upper: 36.2, m: 4.3},
  {kind: 'lactin-1', rho: 0.1512, upper: 38.4, delta: 6.611},
  {kind: 'lactin-2', rho: 0.0059, upper: 40.2, delta: 1.9, lambda: -1.052},
  {kind: 'logan-6', psi: 0.031, rho: 0.14, upper: 35.1, delta: 4.2},
  {kind: 'schoolfield', rho25: 0.11, ha: 14500, tl: 285.2, hl: -52000, th: 306.9, hh: 92000},
];

/** Days by a model, where it develops. */
function rowsBy(model: RateModelSpec, temperatures: readonly number[]): Observed[] {
  const {ratePerDay} = rateModel(model);
  return temperatures
    .filter(at => ratePerDay(at) > 0)
    .map(temperature => ({temperature, days: 1 / ratePerDay(temperature)}));
}

const table = (temperatures: readonly number[], days: readonly number[]): Observed[] =>
  temperatures.map((temperature, i) => ({temperature, days: days[i]!}));

// von Schmalensee and others 2023, Nature Communications 14:3663 (Pieris rapae, pupa); Messenger & Flitters 1958
// (Ceratitis capitata, egg), both as seen in open data.
const pieris = table(
  [10.09, 14.94, 19.26, 24.51, 28.07, 31.45, 35.1],
  [53.18, 20.21, 11.3, 7.14, 5.86, 5.57, 6.89],
);
const ceratitis = table(
  [
    11.6, 12.2, 12.8, 13.3, 13.9, 14.4, 15.6, 16.9, 18.3, 19.7, 21.1, 23.9, 26.7, 29.4, 30.8, 32.2, 33.6, 35,
    35.6,
  ],
  [
    21.5, 17.625, 15.125, 12.904, 10.471, 9.908, 7.721, 5.946, 4.704, 3.871, 3.196, 2.4, 1.867, 1.6, 1.508,
    1.446, 1.558, 1.817, 1.967,
  ],
);

describe('fitCurve', () => {
  it.each(truths.map(truth => ({truth})))('finds $truth.kind again in rows without error', ({truth}) => {
    const fit = fitCurve(truth.kind as CurveKind, rowsBy(truth, [12, 15, 18, 20, 22, 25, 28, 30, 32, 34]))!;
    expect(fit.rss).toBeLessThan(1e-16);
    for (const [name, value] of Object.entries(truth))
      if (typeof value === 'number')
        expect(Object.entries(fit.model).find(([each]) => each === name)?.[1]).toBeCloseTo(value, 4);
  });

  // The least of 60 random beginnings each, computed with least_squares of SciPy 1.17.1 on the plain formulas.
  it.each<[string, readonly Observed[], Readonly<Partial<Record<CurveKind, number>>>]>([
    [
      'Pieris rapae, pupa',
      pieris,
      {
        'briere-1': 6.061417e-5,
        'briere-2': 1.4155216e-5,
        'lactin-1': 2.7654306e-4,
        'lactin-2': 4.4858724e-6,
        schoolfield: 2.648364e-8,
      },
    ],
    [
      'Ceratitis capitata, egg',
      ceratitis,
      {
        'briere-1': 0.010693631,
        'briere-2': 0.0028910409,
        'lactin-1': 0.0081056326,
        'lactin-2': 6.6270412e-4,
        'logan-6': 0.0081056,
        schoolfield: 3.7828154e-4,
      },
    ],
  ])('leaves no more over than a general-purpose program does: %s', (_, rows, expected) => {
    for (const [kind, rss] of Object.entries(expected)) {
      const fit = fitCurve(kind as CurveKind, rows)!;
      expect(fit.rss / rss, kind).toBeLessThan(1 + 1e-5);
      expect(fit.rss / rss, kind).toBeGreaterThan(1 - 1e-5);
      expect(rssOf(fit.model, rows)).toBeCloseTo(fit.rss, 15);
    }
  });

  it('is not bettered by a general-purpose Levenberg–Marquardt that begins where it ended', () => {
    const {model, rss} = fitCurve('briere-1', pieris)!;
    if (model.kind !== 'briere-1') throw new Error('this is another curve');
    const scale = [1e5, 1, 1];
    const better = levenbergMarquardt(
      {x: pieris.map(row => row.temperature), y: pieris.map(row => 1 / row.days)},
      parameters => {
        const [a = 0, lower = 0, upper = 0] = parameters.map((value, i) => value / scale[i]!);
        return (t: number) => a * t * (t - lower) * Math.sqrt(Math.max(0, upper - t));
      },
      {
        initialValues: [model.a * 1e5 * 1.05, model.lower - 0.3, model.upper + 0.4],
        gradientDifference: 1e-5,
        centralDifference: true,
        maxIterations: 500,
        errorTolerance: 1e-14,
        damping: 1e-4,
      },
    );
    expect(better.parameterError / rss).toBeGreaterThan(1 - 1e-7);
    expect(better.parameterValues[1]).toBeCloseTo(model.lower, 3);
    expect(better.parameterValues[2]).toBeCloseTo(model.upper, 3);
  });

  it('goes nearer to the rows that weigh more', () => {
    const rows = pieris.map((row, i) => ({...row, sd: i === 6 ? 0.05 : 1.5, n: 20}));
    const miss = (fit: ReturnType<typeof fitCurve>) =>
      Math.abs(rateModel(fit!.model).ratePerDay(35.1) - 1 / 6.89);
    expect(miss(fitCurve('briere-1', rows, rateWeights(rows)))).toBeLessThan(
      miss(fitCurve('briere-1', rows)) / 2,
    );
  });

  it('makes no curve of fewer rows than it has parameters', () => {
    expect(fitCurve('briere-1', pieris.slice(0, 2))).toBeUndefined();
    expect(fitCurve('lactin-2', pieris.slice(0, 3))).toBeUndefined();
  });

  it('works a pupa’s seven rows into every curve', () => {
    for (const {kind} of truths) expect(fitCurve(kind as CurveKind, pieris)).toBeDefined();
  });
});

describe('aicc', () => {
  it('is Akaike’s criterion with its correction for few rows, none where rows are too few', () => {
    expect(aicc(0.5, 10, 2)).toBeCloseTo(10 * Math.log(0.05) + 6 + 24 / 6, 12);
    expect(aicc(0.5, 4, 2)).toBeNull();
    expect(aicc(0, 10, 2)).toBeNull();
  });
});
