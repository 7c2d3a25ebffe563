// Animals shared out among units; the expected shares are found by trying every set of units.
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {type Space, sharedOut} from '../../src/care/shared-out.ts';

const space = (unit: string, holds: number, empty = true): Space => ({unit, holds, empty});

/** Every set of some of the spaces. */
function setsOf(spaces: readonly Space[]): Space[][] {
  const [first, ...others] = spaces;
  if (first === undefined) return [[]];
  const without = setsOf(others);
  return [...without, ...without.map(set => [first, ...set])];
}

const sum = (set: readonly {readonly holds: number}[]) => set.reduce((all, {holds}) => all + holds, 0);

describe('animals that no unit holds alone', () => {
  it('go into the empty one first, the rest beside others', () => {
    const shares = sharedOut(20, [space('B4', 18, false), space('B2', 12)]);
    expect(shares).toEqual([
      {unit: 'B2', animals: 12},
      {unit: 'B4', animals: 8},
    ]);
  });

  it('are not scattered over small empty units where two shared ones do', () => {
    const small = ['C1', 'C2', 'C3'].map(unit => space(unit, 2));
    const shares = sharedOut(20, [...small, space('D1', 19, false), space('D2', 19, false)]);
    expect(shares).toEqual([
      {unit: 'C1', animals: 2},
      {unit: 'D1', animals: 18},
    ]);
  });

  it('go nowhere where all units together have no room', () => {
    expect(sharedOut(31, [space('B2', 12), space('B4', 18, false)])).toBeUndefined();
  });

  it('take the fewest units that hold them, of those as many empty ones as can be, none over its room', () => {
    const spaces = fc.uniqueArray(
      fc.record({
        unit: fc.constantFrom('A', 'B', 'C', 'D', 'E', 'F'),
        holds: fc.integer({min: 0, max: 9}),
        empty: fc.boolean(),
      }),
      {selector: ({unit}) => unit, maxLength: 6},
    );
    fc.assert(
      fc.property(fc.integer({min: 1, max: 30}), spaces, (animals, all) => {
        const enough = setsOf(all).filter(set => sum(set) >= animals && set.every(({holds}) => holds > 0));
        const shares = sharedOut(animals, all);
        if (enough.length === 0) {
          expect(shares).toBeUndefined();
          return;
        }
        const fewest = Math.min(...enough.map(set => set.length));
        const empties = enough
          .filter(set => set.length === fewest)
          .map(set => set.filter(({empty}) => empty).length);
        const of = new Map<string, Space>(all.map(one => [one.unit, one]));
        expect(shares).toHaveLength(fewest);
        expect(shares?.filter(({unit}) => of.get(unit)?.empty)).toHaveLength(Math.max(...empties));
        expect(shares?.reduce((total, share) => total + share.animals, 0)).toBe(animals);
        for (const {unit, animals: here} of shares ?? [])
          expect(here).toBeLessThanOrEqual(of.get(unit)?.holds ?? 0);
      }),
    );
  });
});
