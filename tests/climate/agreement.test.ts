import {describe, expect, it} from 'vitest';
import {agreementOf} from '../../src/climate/agreement.ts';

const trace = (days: number, temperature: (atDays: number) => number, from = 0) => {
  const atDays = Float64Array.from({length: days * 24}, (_, hour) => from + hour / 24);
  return {atDays, temperatureC: atDays.map(temperature), maxGapDays: 3 / 24};
};
const room = (at: number) => 20 + 3 * Math.sin(at * 6);

describe('agreementOf(one, other)', () => {
  it('finds an offset and a drift where one reads higher day by day', () => {
    const found = agreementOf(
      trace(30, at => room(at) + 0.4 + at / 60),
      trace(30, room),
    )!;
    expect(found.offset).toBeCloseTo(0.65, 1);
    expect(found.drift).toBeCloseTo(0.5, 6);
    expect(found.scatter).toBeLessThan(1e-9);
    expect(found.limits[0]).toBeLessThan(found.offset);
    expect(found.limits[1]).toBeGreaterThan(found.offset);
  });

  it('finds neither where both read the same', () => {
    const found = agreementOf(trace(10, room), trace(10, room))!;
    expect(found.offset).toBeCloseTo(0, 12);
    expect(found.drift).toBeCloseTo(0, 12);
  });

  it('says nothing where they never read together, and of no drift in two days', () => {
    expect(agreementOf(trace(3, room), trace(3, room, 50))).toBeUndefined();
    expect(agreementOf(trace(2, room), trace(2, room))!.drift).toBeNull();
  });
});
