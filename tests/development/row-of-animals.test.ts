import fc from 'fast-check';
import {expect, test} from 'vitest';
import {rowOfAnimals} from '../../src/development/row-of-animals.ts';

test('rowOfAnimals leaves whole numbers as they are', () => {
  expect(rowOfAnimals([2, 3])).toEqual([
    {count: 2, of: [{place: 0, share: 1}]},
    {count: 3, of: [{place: 1, share: 1}]},
  ]);
});

test('rowOfAnimals makes one animal of the parts that lie across a border', () => {
  expect(rowOfAnimals([1.25, 0.5, 1.25])).toEqual([
    {count: 1, of: [{place: 0, share: 1}]},
    {
      count: 1,
      of: [
        {place: 0, share: expect.closeTo(0.25)},
        {place: 1, share: expect.closeTo(0.5)},
        {place: 2, share: expect.closeTo(0.25)},
      ],
    },
    {count: 1, of: [{place: 2, share: 1}]},
  ]);
});

test('rowOfAnimals loses no part of a class', () => {
  const parts = fc.array(fc.double({min: 0.001, max: 5, noNaN: true}), {minLength: 1, maxLength: 6});
  fc.assert(
    fc.property(parts, counts => {
      const all = counts.reduce((a, b) => a + b, 0);
      const whole = counts.map(count => (count * Math.ceil(all)) / all);
      const row = rowOfAnimals(whole);
      whole.forEach((count, place) => {
        const found = row.flatMap(({count: n, of}) =>
          of.filter(part => part.place === place).map(({share}) => n * share),
        );
        expect(found.reduce((a, b) => a + b, 0)).toBeCloseTo(count, 4);
      });
      for (const {of} of row) expect(of.reduce((sum, {share}) => sum + share, 0)).toBeCloseTo(1, 4);
    }),
    {seed: 5},
  );
});
