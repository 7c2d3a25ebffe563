import {expect, test} from 'vitest';
import {ANY_STAGE, placesOf} from '../../src/development/places.ts';
import {chainOfTaxon} from '../../src/development/stage-chain.ts';
import {profileOf, wave} from './lots.ts';

const instars = ['larva-1', 'larva-2', 'larva-3', 'pupa'].map((name, i) => ({
  name,
  lower: 10,
  degreeDays: [20, 30, 50, 100][i]!,
  cv: 0.1,
}));
const course = wave(20, 2, {days: 5});
const chain = chainOfTaxon(profileOf(instars), course);
const whole = chainOfTaxon(
  profileOf([
    {name: 'pupa', lower: 10, degreeDays: 100, cv: 0.1},
    {name: 'larva', lower: 10, degreeDays: 100, cv: 0.1},
  ]),
  course,
);

test('placesOf a stage of the chain is that stage', () => {
  expect(placesOf(chain, 'larva-2', [0.2, 0.4])).toEqual([{index: 1, weight: 1, progress: [0.2, 0.4]}]);
});

test('placesOf a larva not told apart is every instar by the time it takes', () => {
  expect(placesOf(chain, 'larva', [0, 1])).toEqual([
    {index: 0, weight: expect.closeTo(0.2), progress: [0, expect.closeTo(1)]},
    {index: 1, weight: expect.closeTo(0.3), progress: [0, expect.closeTo(1)]},
    {index: 2, weight: expect.closeTo(0.5), progress: [0, expect.closeTo(1)]},
  ]);
});

test('placesOf a larva in a part of its time is the instars in that part', () => {
  expect(placesOf(chain, 'larva', [0.35, 0.75])).toEqual([
    {index: 1, weight: expect.closeTo(0.375), progress: [expect.closeTo(0.5), 1]},
    {index: 2, weight: expect.closeTo(0.625), progress: [0, expect.closeTo(0.5)]},
  ]);
  expect(placesOf(chain, 'larva', [1, 1])).toEqual([{index: 2, weight: 1, progress: [1, 1]}]);
});

test('placesOf an instar is the larva where none are told apart; stages stand in order of development', () => {
  expect(whole.stages.map(({name}) => name)).toEqual(['larva', 'pupa']);
  expect(placesOf(whole, 'larva-4', [0, 1])).toEqual([{index: 0, weight: 1, progress: [0, 1]}]);
});

test('placesOf any stage covers the chain, and of an unknown one there are none', () => {
  expect(placesOf(chain, ANY_STAGE, [0, 1]).map(({weight}) => weight)).toEqual([
    expect.closeTo(0.1),
    expect.closeTo(0.15),
    expect.closeTo(0.25),
    expect.closeTo(0.5),
  ]);
  expect(placesOf(chain, 'prepupa', [0, 1])).toEqual([]);
  expect(placesOf(chain, 'larva-4', [0, 1])).toEqual([]);
});
