import {describe, expect, it} from 'vitest';
import {regimeOf, regimesOf, sameClimate, sameLogger, unchanged} from '../../src/climate/regime.ts';
import type {Unit} from '../../src/records/state.ts';

const DAY = 86_400_000;
const cage: Unit = {code: 'C1', type: 'cage', place: 'rack A', logger: 'L1', setPoints: {constant: 20}};
const history = [
  {from: Number.NEGATIVE_INFINITY, value: cage},
  {from: 10 * DAY, value: {...cage, offsetC: 1}},
  {from: 20 * DAY, value: {...cage, setPoints: {constant: 25}}},
  {from: 30 * DAY, value: {...cage, setPoints: {constant: 25}, logger: 'L2'}},
];

describe('regimesOf', () => {
  it('makes one of records that are the same to the question', () => {
    const starts = (same: typeof unchanged) => regimesOf(history, same).map(({fromDays}) => fromDays);
    expect(starts(unchanged)).toEqual([-Infinity, 10, 20, 30]);
    expect(starts(sameClimate)).toEqual([-Infinity, 20, 30]);
    expect(starts(sameLogger)).toEqual([-Infinity, 30]);
  });

  it('reaches on without end, and touches', () => {
    expect(regimesOf(history, sameLogger).map(({toDays}) => toDays)).toEqual([30, Infinity]);
  });
});

describe('regimeOf', () => {
  it('is the regime of the instant; of a change at that instant, what comes after', () => {
    const units = new Map([['C1', history]]);
    const standing = {code: 'C1', unit: cage, fromDays: 20, toDays: 25};
    expect(regimeOf(units, standing, sameClimate)).toMatchObject({fromDays: 20, toDays: 30});
    expect(regimeOf(units, {...standing, fromDays: 19}, sameClimate)).toMatchObject({toDays: 20});
  });
});
