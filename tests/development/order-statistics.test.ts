import fc from 'fast-check';
import {expect, test} from 'vitest';
import {chanceOfAtLeast} from '../../src/development/order-statistics.ts';

/** Every animal one after the other: the distribution of how many are out. */
function counted(counts: readonly number[], out: readonly number[]): number[] {
  let chances = [1];
  counts.forEach((count, c) => {
    for (let i = 0; i < count; i++)
      chances = Array.from(
        {length: chances.length + 1},
        (_, n) => (chances[n] ?? 0) * (1 - out[c]!) + (chances[n - 1] ?? 0) * out[c]!,
      );
  });
  return chances;
}

const classes = fc.array(fc.tuple(fc.integer({min: 0, max: 30}), fc.double({min: 0, max: 1, noNaN: true})), {
  minLength: 1,
  maxLength: 4,
});

test('chanceOfAtLeast(k) agrees with counting every animal: exactly near either end, to 0.005 between', () => {
  fc.assert(
    fc.property(classes, fc.double({min: 0, max: 1, noNaN: true}), (made, share) => {
      const counts = made.map(([count]) => count);
      const out = made.map(([, chance]) => chance);
      const all = counts.reduce((a, b) => a + b, 0);
      const k = Math.round(share * all);
      const truth = counted(counts, out)
        .slice(k)
        .reduce((a, b) => a + b, 0);
      const exact = all - k <= 12 || k <= 13;
      // Between, a curve stands for whole numbers: where hardly any animal is undecided it is coarser.
      const undecided = counts.reduce((sum, n, c) => sum + n * out[c]! * (1 - out[c]!), 0);
      const near = exact ? 1e-9 : undecided > 2 ? 0.005 : 0.05;
      expect(Math.abs(chanceOfAtLeast(k, counts, out) - truth)).toBeLessThan(near);
    }),
    {seed: 2, numRuns: 400},
  );
});

test('chanceOfAtLeast(k) is certain for none and impossible for more than there are', () => {
  expect(chanceOfAtLeast(0, [3], [0.2])).toBe(1);
  expect(chanceOfAtLeast(4, [3], [1])).toBe(0);
  expect(chanceOfAtLeast(3, [3], [1])).toBe(1);
});
