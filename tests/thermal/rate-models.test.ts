// What holds for every rate model, whatever its parameters.
import fc from 'fast-check';
import integrate from 'integrate-adaptive-simpson';
import {describe, expect, it} from 'vitest';
import {doseBetween} from '../../src/thermal/dose.ts';
import {faultOf, landmarksOf, type RateModelSpec, rateModel} from '../../src/thermal/rate-model.ts';

/** One of each, with parameters in the range of published ones. */
const specs: readonly RateModelSpec[] = [
  {kind: 'degree-day', lower: 9, upper: 31, cutoff: 'intermediate', degreeDays: 180},
  {
    kind: 'table',
    points: [
      {temperature: 15, days: 40},
      {temperature: 22, days: 17},
      {temperature: 30, days: 12},
    ],
    lower: 8,
    upper: 36,
  },
  {kind: 'briere-1', a: 7.86e-5, lower: 11.36, upper: 39.17},
  {kind: 'briere-1', a: 3e-5, lower: -4, upper: 33},
  {kind: 'briere-2', a: 5e-5, lower: 7.5, upper: 36.2, m: 4.3},
  {kind: 'briere-2', a: 2e-5, lower: 10, upper: 41, m: 0.8},
  {kind: 'lactin-1', rho: 0.1512, upper: 38.4, delta: 6.611},
  {kind: 'lactin-1', rho: 0.12, upper: 30, delta: 5.2, base: 6},
  {kind: 'lactin-2', rho: 0.0059, upper: 40.2, delta: 1.9, lambda: -1.052},
  {kind: 'lactin-2', rho: 0.159, upper: 37.3, delta: 6.286, lambda: -0.0391},
  {kind: 'lactin-2', rho: 0.14, upper: 35, delta: 7.1, lambda: 0.004},
  {kind: 'logan-6', psi: 0.031, rho: 0.14, upper: 35.1, delta: 4.2},
  {kind: 'logan-6', psi: 0.02, rho: 0.13, upper: 28, delta: 3, base: 8},
  {kind: 'schoolfield', rho25: 0.2088, ha: 26018, th: 304.6, hh: 55990, refK: 298},
  {kind: 'schoolfield', rho25: 0.11, ha: 14500, tl: 285.2, hl: -52000, th: 306.9, hh: 92000},
  {kind: 'schoolfield', rho25: 0.11, ha: 14500, tl: 283, hl: -400000, th: 307, hh: 900000},
];
const each = specs.map(spec => ({spec, name: JSON.stringify(spec)}));
const anySpec = fc.constantFrom(...specs);
const temperature = fc.double({min: -15, max: 50, noNaN: true});

/** Temperatures at which a rate has a corner or a jump. */
function cornersOf(spec: RateModelSpec): number[] {
  const {lowerC, optimumC, upperC} = landmarksOf(spec);
  const base = 'base' in spec ? (spec.base ?? 0) : 0;
  const knots = spec.kind === 'table' ? spec.points.map(point => point.temperature) : [];
  const end = spec.kind === 'degree-day' && upperC !== null ? [2 * upperC - spec.lower] : [];
  return [0, base, ...knots, ...end, ...[lowerC, optimumC, upperC].filter(at => at !== null)];
}

/**
 * ∫ rate by a general-purpose library, cut at corners. With x = right − w·s⁶ the steep end of a curve is smooth in s,
 * and no value at a corner itself is asked for.
 */
function byLibrary(spec: RateModelSpec, from: number, to: number): number {
  const {ratePerDay} = rateModel(spec);
  const cuts = [from, ...cornersOf(spec).filter(at => at > from && at < to), to].sort((a, b) => a - b);
  return cuts.slice(1).reduce((sum, right, i) => {
    const width = right - cuts[i]!;
    const along = (s: number) => 6 * s ** 5 * width * ratePerDay(right - width * Math.min(s, 1 - 1e-15) ** 6);
    return sum + integrate(along, 0, 1, 1e-13, 40);
  }, 0);
}

describe('every rate model', () => {
  it.each(each)('has an antiderivative within 1e-8 of a general-purpose quadrature: $name', ({spec}) => {
    const {antiderivative} = rateModel(spec);
    for (let from = -10; from < 45; from += 2.5)
      for (const width of [0.5, 2.5, 11]) {
        const area = byLibrary(spec, from, from + width);
        const exact = antiderivative(from + width) - antiderivative(from);
        expect(Math.abs(exact - area), `from ${from} over ${width}`).toBeLessThanOrEqual(
          1e-8 * Math.abs(area) + 1e-12,
        );
      }
  });

  it.each(each)('keeps its digits just above where it begins: $name', ({spec}) => {
    const {antiderivative, ratePerDay} = rateModel(spec);
    const {lowerC} = landmarksOf(spec);
    if (lowerC === null) return;
    for (const width of [1e-3, 1e-2, 0.1, 1]) {
      const area = integrate(ratePerDay, lowerC, lowerC + width, 1e-14, 30);
      expect(Math.abs(antiderivative(lowerC + width) / area - 1)).toBeLessThan(1e-8);
    }
  });

  it('is never below 0, nor is what it adds up to ever less when more is added', () => {
    fc.assert(
      fc.property(anySpec, temperature, temperature, (spec, a, b) => {
        const {ratePerDay, antiderivative} = rateModel(spec);
        expect(ratePerDay(a)).toBeGreaterThanOrEqual(0);
        expect(antiderivative(Math.max(a, b))).toBeGreaterThanOrEqual(antiderivative(Math.min(a, b)) - 1e-13);
      }),
      {numRuns: 2000},
    );
  });

  it('rises up to its optimum, and falls or stays from there', () => {
    fc.assert(
      fc.property(anySpec, temperature, temperature, (spec, a, b) => {
        const {ratePerDay} = rateModel(spec);
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const optimum = landmarksOf(spec).optimumC!;
        if (high <= optimum) expect(ratePerDay(low)).toBeLessThanOrEqual(ratePerDay(high) + 1e-12);
        if (low >= optimum) expect(ratePerDay(low)).toBeGreaterThanOrEqual(ratePerDay(high) - 1e-12);
      }),
      {numRuns: 2000},
    );
  });

  it('adds the same dose over an interval as over its parts', () => {
    const readings = fc.array(fc.integer({min: -500, max: 4500}), {minLength: 3, maxLength: 40});
    fc.assert(
      fc.property(anySpec, readings, fc.double({min: 0, max: 1, noNaN: true}), (spec, hundredths, share) => {
        const trace = {
          atDays: Float64Array.from(hundredths, (_, i) => i / 24),
          temperatureC: Float64Array.from(hundredths, at => at / 100),
        };
        const model = rateModel(spec);
        const end = (hundredths.length - 1) / 24;
        const whole = doseBetween(trace, model, 0, end).dose;
        const parts =
          doseBetween(trace, model, 0, share * end).dose + doseBetween(trace, model, share * end, end).dose;
        expect(Math.abs(parts - whole)).toBeLessThanOrEqual(1e-9 * whole + 1e-13);
      }),
      {numRuns: 500},
    );
  });

  it.each(each)('has its landmarks where its rate says so: $name', ({spec}) => {
    const {ratePerDay} = rateModel(spec);
    const {lowerC, optimumC, upperC} = landmarksOf(spec);
    if (lowerC !== null) {
      expect(ratePerDay(lowerC)).toBe(0);
      expect(ratePerDay(lowerC + 0.01)).toBeGreaterThan(0);
    }
    if (upperC !== null && spec.kind !== 'degree-day') {
      expect(ratePerDay(upperC)).toBe(0);
      expect(ratePerDay(upperC - 0.01)).toBeGreaterThan(0);
    }
    const near = [-0.02, 0.02].map(step => ratePerDay(optimumC! + step));
    expect(Math.max(...near)).toBeLessThanOrEqual(ratePerDay(optimumC!));
  });

  it.each<[string, RateModelSpec]>([
    ['a', {kind: 'briere-1', a: -1e-5, lower: 10, upper: 35}],
    ['upper', {kind: 'briere-1', a: 1e-5, lower: 35, upper: 10}],
    ['upper', {kind: 'briere-2', a: 1e-5, lower: -5, upper: -1, m: 2}],
    ['m', {kind: 'briere-2', a: 1e-5, lower: 10, upper: 35, m: 0}],
    ['rho', {kind: 'lactin-1', rho: -0.1, upper: 35, delta: 5}],
    ['delta', {kind: 'lactin-1', rho: 0.2, upper: 35, delta: 5}],
    ['delta', {kind: 'lactin-2', rho: 0.2, upper: 35, delta: -1, lambda: -0.1}],
    ['lambda', {kind: 'lactin-2', rho: 0.12, upper: 35, delta: 8, lambda: -50}],
    ['psi', {kind: 'logan-6', psi: 0, rho: 0.12, upper: 35, delta: 5}],
    ['upper', {kind: 'logan-6', psi: 0.1, rho: 0.12, upper: -3, delta: 5}],
    ['rho25', {kind: 'schoolfield', rho25: -1, ha: 10000}],
    ['ha', {kind: 'schoolfield', rho25: 0.1, ha: -10000}],
    ['hl', {kind: 'schoolfield', rho25: 0.1, ha: 10000, tl: 283}],
    ['hl', {kind: 'schoolfield', rho25: 0.1, ha: 10000, tl: 283, hl: 40000}],
    ['hh', {kind: 'schoolfield', rho25: 0.1, ha: 10000, th: 306, hh: -40000}],
    ['th', {kind: 'schoolfield', rho25: 0.1, ha: 10000, tl: 306, hl: -40000, th: 284, hh: 40000}],
    ['lower', {kind: 'table', points: [{temperature: 20, days: 9}], lower: 20, upper: 30}],
  ])('names the parameter outside its domain, and makes no model of it: %s of %j', (field, spec) => {
    expect(faultOf(spec)?.field).toBe(field);
    expect(() => rateModel(spec)).toThrow(RangeError);
  });
});
