// Thresholds and constants fitted to published tables, against those that the same sources print.
import {describe, expect, it} from 'vitest';
import {majorAxis, rateLine} from '../../src/thermal/fit/line.ts';

interface Case {
  readonly source: string;
  readonly temperatureC: readonly number[];
  readonly days: readonly number[];
  readonly lower: number;
  readonly degreeDays: number;
  /** How far the printed figures may lie off: rounding alone, else what rows the authors took is not known. */
  readonly within: readonly [lower: number, degreeDays: number];
}

const rowsOf = ({temperatureC, days}: Case) =>
  temperatureC.map((temperature, i) => ({temperature, days: days[i]!}));

const cases: readonly Case[] = [
  {
    source:
      'Honek, Jarosik and others 2003, European Journal of Entomology 100:295–300, abstract: Gastrophysa viridula (seen)',
    temperatureC: [18, 21.5, 25, 28],
    days: [28.2, 21.6, 16.1, 15],
    lower: 7.1,
    degreeDays: 304.6,
    within: [0.05, 0.05],
  },
  {
    source:
      'Rismayani, Ullah, Chi & Gotoh 2021: Tetranychus pacificus, egg to adult, 12.5 to 32.5 °C (seen in a data file)',
    temperatureC: [12.5, 15, 17.5, 20, 22.5, 25, 27.5, 30, 32.5],
    days: [85.9, 49.7, 30.7, 27.3, 16.6, 12.4, 11.9, 11, 10.4],
    lower: 10.24,
    degreeDays: 215.1,
    within: [0.01, 0.1],
  },
  {
    source:
      'Bayu, Ullah, Takano & Gotoh 2017, Experimental and Applied Acarology 72:205–227: Tetranychus urticae (seen in a data file)',
    temperatureC: [12.5, 15, 17.5, 20, 22.5, 25, 27.5, 30, 32, 35],
    days: [61.5, 35.9, 25, 16.2, 12.2, 10.4, 8.4, 6.4, 6.1, 5.5],
    lower: 11.63,
    degreeDays: 127.81,
    within: [0.05, 0.5],
  },
  {
    source: 'Loetti, Schweigmann & Burroni 2011: Culex pipiens, larva to adult, 10 to 30 °C (seen)',
    temperatureC: [10, 15, 20, 25, 30],
    days: [39.8, 21.6, 13.3, 10.2, 8],
    lower: 5.5,
    degreeDays: 199.5,
    within: [0.25, 1],
  },
  {
    source: 'Grassberger & Frank 2003: Nasonia vitripennis, egg to adult (seen)',
    temperatureC: [15, 20, 25, 30],
    days: [43.5, 22.5, 14.8, 11.3],
    lower: 9.8,
    degreeDays: 224.3,
    within: [0.05, 4],
  },
  {
    source: 'Messenger & Flitters 1958: Zeugodacus cucurbitae, egg, 11.4 to 26.7 °C (seen in a compilation)',
    temperatureC: [11.4, 11.67, 12.2, 12.8, 13.3, 13.9, 14.4, 15.6, 16.9, 18.3, 19.7, 21.1, 23.9, 26.7],
    days: [10, 9.021, 7.354, 6.158, 5.475, 4.85, 4.15, 3.5, 2.725, 2.242, 1.838, 1.571, 1.213, 0.996],
    lower: 10.2,
    degreeDays: 16.9,
    within: [0.05, 0.1],
  },
];

describe('the line of the rates', () => {
  it.each(cases)('$lower °C and $degreeDays degree-days: $source', one => {
    const fit = rateLine(rowsOf(one));
    expect(Math.abs(fit.lowerC - one.lower)).toBeLessThanOrEqual(one.within[0]);
    expect(Math.abs(fit.degreeDays - one.degreeDays)).toBeLessThanOrEqual(one.within[1]);
  });

  it('has the slope printed for larvae of Anopheles gambiae (Teklehaimanot and others 2004, Malaria Journal 3:41, table 1; coefficient from memory)', () => {
    const days = [47, 37, 31, 23, 18, 10, 7.9, 6.7, 6.5];
    const rows = [16, 17, 18, 20, 22, 30, 35, 39, 40].map((temperature, i) => ({
      temperature,
      days: days[i]!,
    }));
    expect(1 / rateLine(rows).degreeDays).toBeCloseTo(0.00554, 4);
  });

  // No printed standard error was found in a readable source; these were computed from the same four means, apart from
  // this program.
  it('has the standard errors of Campbell and others 1974, Gastrophysa viridula', () => {
    const fit = rateLine(rowsOf(cases[0]!));
    expect(fit.lowerSe).toBeCloseTo(1.89, 2);
    expect(fit.degreeDaysSe).toBeCloseTo(35.06, 1);
  });
});

describe('the reduced major axis', () => {
  it('gives 7.796 °C and 290.95 degree-days for Gastrophysa viridula (computed from the printed means apart from this program)', () => {
    const fit = majorAxis(rowsOf(cases[0]!));
    expect(fit.lowerC).toBeCloseTo(7.796, 3);
    expect(fit.degreeDays).toBeCloseTo(290.95, 2);
  });
});
