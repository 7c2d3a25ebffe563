import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {grownStages} from '../../src/care/grown-stages.ts';

describe('grownStages(alive, shares)', () => {
  it('shares out those alive over the stages of the forecast', () => {
    expect(grownStages({'larva-2': 80}, {'larva-2': 0.25, 'larva-3': 0.75})).toEqual({
      'larva-2': 20,
      'larva-3': 60,
    });
    expect(grownStages({'larva-4': 12, pupa: 20}, {'larva-4': 0.125, pupa: 0.75, adult: 0.125})).toEqual({
      'larva-4': 4,
      pupa: 24,
      adult: 4,
    });
  });

  it('keeps instars as they were counted where the forecast does not tell them apart', () => {
    expect(grownStages({'larva-1': 3, 'larva-3': 1}, {larva: 0.5, pupa: 0.5})).toEqual({
      'larva-1': 1.5,
      'larva-3': 0.5,
      pupa: 2,
    });
    expect(grownStages({larva: 4}, {larva: 1})).toEqual({larva: 4});
  });

  it('loses nobody', () => {
    const count = fc.integer({min: 0, max: 500});
    fc.assert(
      fc.property(
        fc.record({'larva-1': count, 'larva-2': count, larva: count, pupa: count}),
        fc.double({min: 0, max: 1, noNaN: true}),
        (alive, share) => {
          const all = Object.values(alive).reduce((sum, one) => sum + one, 0);
          const grown = Object.values(grownStages(alive, {larva: share, pupa: 1 - share}));
          expect(grown.reduce((sum, one) => sum + one, 0)).toBeCloseTo(all, 6);
        },
      ),
    );
  });
});
