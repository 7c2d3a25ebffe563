// Adults for a class: at what to hold pupae, and what the units of the room would give. Everything is invented; the expected
// instants are K × (1 ± 1.645 CV) ÷ (T − T0).
import {describe, expect, it} from 'vitest';
import {newRoom} from '../commands/program.ts';
import {applied, daysLater, forecastOf, hoursAfter, kind, pupae, said, sample, Z95} from './story-room.ts';

const NOW = '2031-05-05T10:00';
const stories = [
  {lower: 8, degreeDays: 120, cv: 0.08, by: '2031-05-20', holdC: 16, late: 15, early: 18},
  {lower: 10, degreeDays: 150, cv: 0.05, by: '2031-05-20', holdC: 19.9, late: 19, early: 23},
];

describe.each(stories)('$degreeDays degree-days above $lower °C, half out by $by', story => {
  const {lower, degreeDays, cv, by, holdC, late, early} = story;
  const room = newRoom();
  const cage = (atC: number) => ({
    ...{record: 'unit', code: `C${atC}`, type: 'cage', place: `rack A/${atC}`, setPoints: {constant: atC}},
  });
  applied(room, NOW, [
    sample('S1', '2031-04-30'),
    kind({lower, degreeDays, cv}, {limits: {temperature: {low: 12, high: 28}}}),
    ...[late, early, 25].map(cage),
    pupae('P1', 'S1', `C${late}`, NOW, 20),
  ]);
  const answer = () =>
    room.ask<{holdC: number; units: {unit: string; p50: string}[]}>(NOW, 'plan', 'P1', '--adults-by', by);

  it('says at what to hold them, within the limits of the kind', () => {
    const words = said(room, NOW, 'plan', 'P1', '--adults-by', by);
    expect(words).toContain(`hold ${holdC} °C from now on`);
    expect(words).toContain('limits 12 to 28 °C');
    expect(words).toMatch(new RegExp(`C${late} .*too late`));
  });

  it('says of each unit when half would be out there, those in time first', () => {
    const {units} = answer();
    expect(units.map(({unit}) => unit)).toEqual([`C${early}`, 'C25', `C${late}`]);
    for (const {unit, p50} of units) {
      const half = daysLater(NOW, degreeDays / (Number(unit.slice(1)) - lower));
      expect(Math.abs(hoursAfter(p50, half))).toBeLessThan(3);
    }
  });

  it('says how far apart the first and the last would be at that temperature', () => {
    const {p05, p50, p95} = forecastOf(room, NOW, 'P1', '--hold', String(holdC)).adults.animal;
    const out = (share: number) => daysLater(NOW, (degreeDays * (1 + share * cv)) / (holdC - lower));
    expect(Math.abs(hoursAfter(p05, out(-Z95)))).toBeLessThan(2);
    expect(Math.abs(hoursAfter(p50, out(0)))).toBeLessThan(2);
    expect(Math.abs(hoursAfter(p95, out(Z95)))).toBeLessThan(2);
  });
});
