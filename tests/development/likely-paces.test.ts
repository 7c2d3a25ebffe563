import {expect, it} from 'vitest';
import {laidWhereLikely, spreadOf} from '../../src/development/likely-paces.ts';

const laid = (lnWeight: (z: number) => number) => {
  let asked = 0;
  let best = Number.NEGATIVE_INFINITY;
  const found = laidWhereLikely(
    {centre: 0, step: 1, reach: 2},
    {
      pointAt: z => {
        asked++;
        best = Math.max(best, lnWeight(z));
        return {z, lnWeight: lnWeight(z)};
      },
      least: () => best - 8,
      closest: 1,
    },
  );
  return {found, asked};
};

it.each([
  [0.3, 0.8],
  [-2.6, 0.05],
  [1.9, 0.02],
])('a likely range about %d with a standard deviation of %d is found and resolved', (mean, sd) => {
  const {found} = laid(z => -(((z - mean) / sd) ** 2) / 2);
  expect(found!.step).toBeLessThanOrEqual(1.5 * sd);
  const told = spreadOf(found!.points);
  expect(told.mean).toBeCloseTo(mean, 3);
  expect(told.sd / sd).toBeCloseTo(1, 2);
});

it('where the weight leaps, as where a count is worthless on one side only, paces stay countable', () => {
  const {found, asked} = laid(z => (z < 0.3217 ? -2 : 0) - (z * z) / 2);
  expect(found).not.toBeNull();
  expect(asked).toBeLessThan(2000);
});
