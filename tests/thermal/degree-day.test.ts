import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import type {Cutoff} from '../../src/thermal/degree-day.ts';
import {degreeDay} from '../../src/thermal/degree-day.ts';
import {meanOver} from './quadrature.ts';

const model = (cutoff: Cutoff, upper: number | undefined = 30) =>
  degreeDay({kind: 'degree-day', lower: 10, upper, cutoff, degreeDays: 100});

const temperature = fc.double({min: -40, max: 80, noNaN: true});
const cutoffs: Cutoff[] = ['horizontal', 'intermediate', 'vertical'];

describe('degreeDay', () => {
  it.each([
    ['horizontal', [0, 0, 0.1, 0.2, 0.2, 0.2]],
    ['intermediate', [0, 0, 0.1, 0.2, 0.1, 0]],
    ['vertical', [0, 0, 0.1, 0.2, 0, 0]],
  ] as const)('rates at 5, 10, 20, 30, 40 and 55 °C between 10 and 30 °C, %s', (cutoff, rates) => {
    expect([5, 10, 20, 30, 40, 55].map(model(cutoff).ratePerDay)).toEqual(rates);
  });

  it('rises without end where there is no upper threshold', () => {
    const open = degreeDay({kind: 'degree-day', lower: 10, degreeDays: 100});
    expect(open.ratePerDay(70)).toBeCloseTo(0.6, 12);
    expect(open.antiderivative(70)).toBeCloseTo(60 ** 2 / 2 / 100, 12);
  });

  it.each(cutoffs)('has an antiderivative that agrees with quadrature of its rate, %s', cutoff => {
    const {ratePerDay, antiderivative} = model(cutoff);
    for (const [from, to] of [
      [0, 20],
      [12, 28],
      [20, 40],
      [0, 60],
      [30, 50],
    ] as const)
      expect(antiderivative(to) - antiderivative(from)).toBeCloseTo(
        meanOver(ratePerDay, from, to, (to - from) * 2) * (to - from),
        12,
      );
  });

  it('orders the cutoffs: vertical ≤ intermediate ≤ horizontal, none below 0', () => {
    fc.assert(
      fc.property(temperature, at => {
        const [horizontal, intermediate, vertical] = cutoffs.map(cutoff => model(cutoff).ratePerDay(at));
        expect(vertical!).toBeGreaterThanOrEqual(0);
        expect(intermediate!).toBeGreaterThanOrEqual(vertical!);
        expect(horizontal!).toBeGreaterThanOrEqual(intermediate!);
      }),
    );
  });

  it('refuses thresholds that do not rise and a constant that is not above 0', () => {
    const spec = {kind: 'degree-day', lower: 10, degreeDays: 100} as const;
    expect(() => degreeDay({...spec, upper: 10})).toThrow(RangeError);
    expect(() => degreeDay({...spec, lower: Number.NaN})).toThrow(RangeError);
    expect(() => degreeDay({...spec, degreeDays: 0})).toThrow(RangeError);
  });
});
