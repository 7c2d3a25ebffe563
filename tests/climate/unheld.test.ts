import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import type {Series} from '../../src/climate/series.ts';
import {unheld} from '../../src/climate/unheld.ts';

const MS = 86_400_000;
const seriesAt = (instants: readonly number[]): Series => ({
  atDays: Float64Array.from(instants, ms => ms / MS),
  temperatureC: Float64Array.from(instants, (_, row) => row),
  rhPercent: Float64Array.from(instants, () => Number.NaN),
});
const instants = fc
  .uniqueArray(fc.integer({min: 1_700_000_000_000, max: 1_700_000_000_400}))
  .map(list => list.sort((a, b) => a - b));

describe('unheld(fresh, held)', () => {
  it('keeps exactly the instants that are not held, each with its own values', () => {
    fc.assert(
      fc.property(instants, instants, (fresh, held) => {
        const left = unheld(seriesAt(fresh), seriesAt(held)).series;
        const expected = fresh.filter(ms => !held.includes(ms));
        expect(Array.from(left.atDays, days => Math.round(days * MS))).toEqual(expected);
        expect([...left.temperatureC]).toEqual(expected.map(ms => fresh.indexOf(ms)));
      }),
    );
  });

  it('tells how many instants are held with another temperature, beyond rounding', () => {
    const held = {...seriesAt([1, 2, 3]), temperatureC: Float64Array.of(0.05, 1, 5)};
    expect(unheld(seriesAt([1, 2, 3]), held).conflicts).toBe(1);
  });

  it('is empty when the same file comes again', () => {
    const series = seriesAt([1, 2, 3]);
    expect(unheld(series, series).series.atDays).toHaveLength(0);
  });
});
