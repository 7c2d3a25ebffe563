import fc from 'fast-check';
import {expect, test} from 'vitest';
import {allot} from '../../src/development/allotment.ts';
import {lnChoose} from '../../src/development/gamma-function.ts';

/** Every animal one after the other: the chance of each way in which the outcomes may come out, and of the numbers. */
function played(
  counts: readonly number[],
  outcomes: readonly number[],
  chances: readonly (readonly number[])[],
) {
  let ways = new Map<string, number>([[outcomes.map(() => 0).join(), 1]]);
  counts.forEach((count, l) => {
    for (let animal = 0; animal < count; animal++) {
      const next = new Map<string, number>();
      for (const [numbers, chance] of ways)
        outcomes.forEach((_, b) => {
          const more = numbers.split(',').map(Number);
          more[b] = more[b]! + 1;
          if (more[b]! <= outcomes[b]!)
            next.set(more.join(), (next.get(more.join()) ?? 0) + chance * chances[l]![b]!);
        });
      ways = next;
    }
  });
  return ways.get(outcomes.join()) ?? 0;
}

const share = fc.double({min: 0.001, max: 1, noNaN: true});
const allotments = fc
  .tuple(fc.integer({min: 1, max: 3}), fc.integer({min: 1, max: 3}))
  .chain(([classes, width]) =>
    fc.record({
      outcomes: fc.array(fc.integer({min: 1, max: 4}), {minLength: width, maxLength: width}),
      cuts: fc.array(share, {minLength: classes - 1, maxLength: classes - 1}),
      chances: fc.array(fc.array(share, {minLength: width, maxLength: width}), {
        minLength: classes,
        maxLength: classes,
      }),
    }),
  )
  .map(({outcomes, cuts, chances}) => {
    const all = outcomes.reduce((a, b) => a + b, 0);
    const counts = chances.map(() => 0);
    for (let animal = 0; animal < all; animal++) {
      const place = cuts.filter(cut => cut < (animal + 0.5) / all).length;
      counts[place] = counts[place]! + 1;
    }
    const kept = chances.filter((_, l) => counts[l]! > 0);
    const scaled = kept.map(row => row.map(chance => chance / row.reduce((a, b) => a + b, 0)));
    return {counts: counts.filter(count => count > 0), outcomes, chances: scaled};
  });

test('allot(counts, outcomes, chances) gives the chance of playing out every animal, within a fifth', () => {
  fc.assert(
    fc.property(allotments, ({counts, outcomes, chances}) => {
      const {lnChance, flows} = allot(counts, outcomes, chances.flat());
      expect(Math.abs(lnChance - Math.log(played(counts, outcomes, chances)))).toBeLessThan(0.2);
      for (const [b, number] of outcomes.entries())
        expect(counts.reduce((sum, _, l) => sum + flows[l * outcomes.length + b]!, 0)).toBeCloseTo(number, 1);
      for (const [l, count] of counts.entries())
        expect(outcomes.reduce((sum, _, b) => sum + flows[l * outcomes.length + b]!, 0)).toBeCloseTo(
          count,
          5,
        );
    }),
    {seed: 4, numRuns: 300},
  );
});

test('allot of one class is the multinomial chance itself', () => {
  const {lnChance, flows} = allot([9], [2, 3, 4], [0.2, 0.5, 0.3]);
  const ways = lnChoose(9, 2) + lnChoose(7, 3);
  expect(lnChance).toBeCloseTo(ways + 2 * Math.log(0.2) + 3 * Math.log(0.5) + 4 * Math.log(0.3), 9);
  expect(flows).toEqual([expect.closeTo(2), expect.closeTo(3), expect.closeTo(4)]);
});

test('allot knows what cannot be, and what must be', () => {
  expect(allot([2, 3], [4, 1], [1, 0, 0, 1]).lnChance).toBeLessThan(-100);
  expect(allot([2], [1, 1], [1, 0]).lnChance).toBe(Number.NEGATIVE_INFINITY);
  expect(allot([2, 3], [2, 3], [1, 0, 0, 1]).lnChance).toBeCloseTo(0, 9);
});

test('allot takes parts of animals', () => {
  const {lnChance, flows} = allot([1.5, 2.5], [1, 3], [0.4, 0.6, 0.1, 0.9]);
  expect(lnChance).toBeLessThan(0);
  expect(flows[0]! + flows[2]!).toBeCloseTo(1, 5);
  expect(flows[0]! + flows[1]!).toBeCloseTo(1.5, 5);
});

test('of few whole animals it is exact, and every class gives as many as it has', () => {
  fc.assert(
    fc.property(allotments, ({counts, outcomes, chances}) => {
      fc.pre(counts.length > 1 && outcomes.reduce((ways, m) => ways * (m + 1), 1) <= 64);
      const {lnChance, flows} = allot(counts, outcomes, chances.flat());
      expect(lnChance).toBeCloseTo(Math.log(played(counts, outcomes, chances)), 9);
      const width = outcomes.length;
      counts.forEach((count, l) => {
        const given = flows.slice(l * width, (l + 1) * width).reduce((a, b) => a + b, 0);
        expect(given).toBeCloseTo(count, 9);
      });
      for (const [b, number] of outcomes.entries())
        expect(counts.reduce((sum, _, l) => sum + flows[l * width + b]!, 0)).toBeCloseTo(number, 9);
    }),
  );
});
