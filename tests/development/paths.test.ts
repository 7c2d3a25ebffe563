import fc from 'fast-check';
import {expect, test} from 'vitest';
import {type Path, pairCounted, pairEmerged, pairRemoved, portions} from '../../src/development/paths.ts';

const path = (label: string, count: number, sinceDays = 0): Path => ({
  label,
  count,
  sinceDays,
  notOutDays: 0,
});

test('pairCounted pairs the furthest animals with the furthest stages', () => {
  const paths = [path('larva-4', 5), path('larva-5', 3)];
  const branches = pairCounted(paths, [
    {stage: 'larva-4', count: 2},
    {stage: 'larva-5', count: 4},
    {stage: 'pupa', count: 2},
  ]);
  expect(branches).toEqual([
    {from: 1, count: 2, label: 'pupa'},
    {from: 1, count: 1, label: 'larva-5'},
    {from: 0, count: 3, label: 'larva-5'},
    {from: 0, count: 2, label: 'larva-4'},
  ]);
});

test('pairCounted lets those that entered a stage first leave it first', () => {
  const paths = [path('larva-5', 2, 7), path('larva-5', 2, 3)];
  expect(
    pairCounted(paths, [
      {stage: 'larva-5', count: 2},
      {stage: 'pupa', count: 2},
    ]),
  ).toEqual([
    {from: 1, count: 2, label: 'pupa'},
    {from: 0, count: 2, label: 'larva-5'},
  ]);
});

test('pairCounted leaves those that were not looked at on every path alike', () => {
  const branches = pairCounted([path('larva-4', 6), path('larva-5', 2)], [{stage: 'larva-5', count: 4}]);
  expect(branches.filter(({label}) => label === undefined)).toEqual([
    {from: 0, count: 3, label: undefined},
    {from: 1, count: 1, label: undefined},
  ]);
});

test('pairEmerged takes adults from the latest stage, longest in it', () => {
  const paths = [path('pupa', 1, 9), path('larva-5', 4), path('pupa', 2, 4)];
  expect(pairEmerged(paths, [{sinceDays: 10, count: 3}])).toEqual([
    {from: 2, count: 2, sinceDays: 10},
    {from: 0, count: 1, sinceDays: 10},
  ]);
});

test('pairRemoved takes from the stage named first, and from others only when that is empty', () => {
  const paths = [path('larva-5', 1), path('pupa', 2)];
  expect(pairRemoved(paths, {stage: 'larva-5', count: 2})).toEqual([
    {from: 0, count: 1},
    {from: 1, count: 1},
  ]);
});

test('no pairing loses or makes an animal', () => {
  const numbers = fc.array(fc.integer({min: 0, max: 9}), {minLength: 1, maxLength: 4});
  fc.assert(
    fc.property(numbers, numbers, (alive, seen) => {
      const paths = alive.map((count, i) => path(`larva-${i + 1}`, count));
      const branches = pairCounted(
        paths,
        seen.map((count, i) => ({stage: `larva-${i + 1}`, count})),
      );
      alive.forEach((count, from) => {
        const taken = branches.filter(branch => branch.from === from).reduce((sum, b) => sum + b.count, 0);
        expect(taken).toBe(count);
      });
    }),
    {seed: 3},
  );
});

test('portions(of, whole) divides a whole number in whole numbers that sum to it', () => {
  expect(portions([1, 1, 1], 2)).toEqual([1, 1, 0]);
  expect(portions([0, 0], 3)).toEqual([0, 0]);
});
