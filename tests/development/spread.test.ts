import fc from 'fast-check';
import {expect, test} from 'vitest';
import {remainingOf} from '../../src/development/founding.ts';
import {kernelOf} from '../../src/development/kernel.ts';
import {type Measure, massUpTo, wholeOf} from '../../src/development/measure.ts';
import {distributionOf, type Spread} from '../../src/development/spread.ts';

const families = ['lognormal', 'gamma', 'weibull', 'normal'] as const;

function momentsOf({step, first, length, cells, mass}: Measure): {mean: number; variance: number} {
  let mean = 0;
  let square = 0;
  for (let i = 0; i < length; i++) {
    const cell = cells[mass + i]!;
    const dose = (first + i) * step;
    mean += cell * dose;
    square += cell * (dose * dose + (step * step) / 12);
  }
  return {mean, variance: square - mean * mean};
}

test.each(families)('distributionOf a %s dose has mean 1 and the stated coefficient of variation', family => {
  for (const cv of [0.02, 0.1, 0.3]) {
    const share = distributionOf({family, cv});
    const step = cv / 200;
    let mean = 0;
    let square = 0;
    for (let w = step / 2; w < 1 + 9 * cv; w += step) {
      const mass = share(w + step / 2) - share(w - step / 2);
      mean += mass * w;
      square += mass * w * w;
    }
    expect(mean).toBeCloseTo(1, 2.5);
    expect(Math.sqrt(square - mean * mean)).toBeCloseTo(cv, 2.5);
  }
});

test('distributionOf a dose without spread is a step at 1', () => {
  const share = distributionOf({family: 'lognormal', cv: 0});
  expect([share(0.999), share(1)]).toEqual([0, 1]);
});

test('kernelOf keeps the mean, and takes off the variance that the grid will add', () => {
  for (const family of families)
    for (const cv of [0.01, 0.06, 0.12, 0.29]) {
      const kernel = kernelOf({family, cv});
      const {mean, variance} = momentsOf(kernel);
      expect(mean).toBeCloseTo(1, 3);
      // What laying entries into cells adds, a sixth of a step squared, is still to come.
      expect(Math.abs(Math.sqrt(variance + kernel.step ** 2 / 6) / cv - 1)).toBeLessThan(0.005);
    }
});

test('remainingOf founders holds one animal, and its mean is what is left of the stage', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...families),
      fc.double({min: 0, max: 0.3, noNaN: true}),
      fc.double({min: 0, max: 1, noNaN: true}),
      fc.double({min: 0, max: 1, noNaN: true}),
      (family, cv, a, b) => {
        const spread: Spread = {family, cv};
        const progress = [Math.min(a, b), Math.max(a, b)] as const;
        const remaining = remainingOf({spread, progress});
        expect(wholeOf(remaining)).toBeCloseTo(1, 9);
        expect(massUpTo(remaining, 0)).toBeCloseTo(0, 9);
        expect(momentsOf(remaining).mean).toBeCloseTo(1 - (a + b) / 2, 2);
      },
    ),
    {seed: 1, numRuns: 60},
  );
});
