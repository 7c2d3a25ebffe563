// Days published under temperatures that change within the day, against rates averaged over the day.
import {describe, expect, it} from 'vitest';
import {daysUnder, rateOf} from '../profiles/bundled.ts';

describe('alternating temperatures', () => {
  it.each([
    [25, 15, 15.2],
    [27.5, 17.5, 11.9],
    [30, 20, 9.0],
    [32.5, 22.5, 7.3],
    [35, 25, 6.4],
    [37, 27, 6.3],
  ])(
    'Tetranychus urticae, 12 h %d and 12 h %d °C, %d d, within 0.11: Bayu and others 2017, females (data file, seen)',
    (warm, cool, days) => {
      const halves = (stage: string) =>
        (rateOf('tetranychus-urticae', stage, warm) + rateOf('tetranychus-urticae', stage, cool)) / 2;
      expect(Math.abs(daysUnder('tetranychus-urticae', 'all', halves) / days - 1)).toBeLessThanOrEqual(0.11);
    },
  );

  it('Listronotus oregonensis, 16 h 29.4 and 8 h 18.3 °C, 32.3 d, within 0.01: Simonet & Davenport 1981 (as extracted, seen)', () => {
    const code = 'listronotus-oregonensis';
    const day = (stage: string) => (16 * rateOf(code, stage, 29.4) + 8 * rateOf(code, stage, 18.3)) / 24;
    expect(Math.abs(daysUnder(code, 'all', day) / 32.3 - 1)).toBeLessThanOrEqual(0.01);
  });

  it.each([
    [16, 17.91],
    [21, 11.06],
    [26, 7.33],
    [30, 6.43],
    [34, 7.92],
  ])(
    'Pieris rapae pupae under a daily course of %d ± 5 °C, %d d, within 0.15: Parker and colleagues 2022-2023 (data file, seen; course taken as a sine)',
    (meanC, days) => {
      const sine = (stage: string) => {
        let sum = 0;
        for (let k = 0; k < 96; k++)
          sum += rateOf('pieris-rapae', stage, meanC + 5 * Math.sin((2 * Math.PI * (k + 0.5)) / 96));
        return sum / 96;
      };
      expect(Math.abs(daysUnder('pieris-rapae', 'pupa', sine) / days - 1)).toBeLessThanOrEqual(0.15);
    },
  );
});
