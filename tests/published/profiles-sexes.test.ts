// Which sex comes first and by how much, what waits for a second winter, and a spider: against what sources print.
import {describe, expect, it} from 'vitest';
import type {LotForecast} from '../../src/development/answer.ts';
import {forecastLot} from '../../src/development/forecast.ts';
import {requestOf, START} from '../development/lots.ts';
import {bundled, daysAt, taxon} from '../profiles/bundled.ts';

/** Days of a stage or stages at a constant temperature, as one sex takes them. */
function daysOf(
  code: string,
  sex: 'female' | 'male',
  temperatureC: number,
  stages: readonly string[],
): number {
  const days = stages.reduce((sum, stage) => sum + daysAt(code, stage, temperatureC), 0);
  return days * taxon(code).sexes![sex];
}

const whole = ['larva', 'pupa'];
const mite = ['egg', 'larva', 'nymph-1', 'nymph-2'];

describe('either sex takes as long as is printed for it', () => {
  it.each([
    // Loetti and others 2011, J. Nat. Hist. 45:2203-2213, abstract: thresholds and constants of the sexes (seen).
    ['culex-pipiens', 'female', 20, whole, 199.5 / (20 - 5.5), 0.05],
    ['culex-pipiens', 'male', 20, whole, 186.5 / (20 - 5.2), 0.05],
    ['culex-pipiens', 'female', 25, whole, 199.5 / (25 - 5.5), 0.05],
    ['culex-pipiens', 'male', 25, whole, 186.5 / (25 - 5.2), 0.05],
    // Bayu and others 2017, Exp. Appl. Acarol. 72:205-227, egg to adult of males (seen in a data file).
    ['tetranychus-urticae', 'male', 15, mite, 34.3, 0.04],
    ['tetranychus-urticae', 'male', 20, mite, 15.7, 0.04],
    ['tetranychus-urticae', 'male', 25, mite, 10.0, 0.04],
    ['tetranychus-urticae', 'male', 32, mite, 5.9, 0.04],
  ] as const)('%s, %s at %i °C', (code, sex, temperatureC, stages, days, within) => {
    expect(Math.abs(daysOf(code, sex, temperatureC, stages) / days - 1)).toBeLessThan(within);
  });

  it('the sexes of Drosophila melanogaster are as far apart as another study saw in the pupa', () => {
    // Ludwig & Cable 1933, Physiol. Zool. 6:493-508: 4.26 and 4.02 d at 25 °C, 6.78 and 6.45 d at 20 °C (seen in a data file).
    const {female, male} = taxon('drosophila-melanogaster').sexes!;
    for (const published of [4.26 / 4.02, 6.78 / 6.45])
      expect(Math.abs(male / female - published)).toBeLessThan(0.025);
  });

  it('a male mosquito is forecast before a female, a female vinegar fly before a male', () => {
    const at20 = {atDays: Float64Array.of(START, START + 120), temperatureC: Float64Array.of(20, 20)};
    const sexes = (code: string) =>
      forecastLot(
        requestOf(
          [{atDays: START, stages: {pupa: 10}, progress: [0, 0.2], ages: 'mixed'}],
          at20,
          taxon(code),
        ),
      ).sexes!;
    const first = (of: NonNullable<LotForecast['sexes']>) =>
      of.male.p50! < of.female.p50! ? 'male' : 'female';
    expect(first(sexes('culex-pipiens'))).toBe('male');
    expect(first(sexes('drosophila-melanogaster'))).toBe('female');
  });
});

describe('Rhagoletis cerasi', () => {
  const {degreeDays, lower} = taxon('rhagoletis-cerasi').stages[0]!.rate as {
    degreeDays: number;
    lower: number;
  };

  it('has a tenth of its animals out between the sums of four populations', () => {
    // Entomol. Exp. Appl. 23:1-13 (1978), abstract: 319 to 359 degree-days above 6.8 °C to a tenth of the females (seen).
    const sd = Math.sqrt(Math.log(1 + 0.12 ** 2));
    const tenth = degreeDays * Math.exp(-1.2816 * sd - sd ** 2 / 2);
    expect(lower).toBe(6.8);
    expect(tenth).toBeGreaterThan(319);
    expect(tenth).toBeLessThan(359);
  });

  it('agrees with pupae that another study saw become pharate adults within 20 d at 25 °C', () => {
    // J. Insect Sci. 14:156 (2014), abstract (seen). The adult is soon to follow.
    expect(degreeDays / (25 - lower)).toBeGreaterThan(20);
    expect(degreeDays / (25 - lower)).toBeLessThan(24);
  });
});

it('a spider has its dates: Pirata subpiraticus 62.7 d at 25 °C, as its source prints', () => {
  expect(daysAt('pirata-subpiraticus', 'nymph', 25)).toBeCloseTo(62.7, 0);
});

it.each([
  // Wu & Abe 2025, Entomol. Sci., abstract: 332 adults in the first year, 213 in the second (seen).
  ['cynipidae', 213 / (332 + 213)],
  // J. Insect Sci. 14:156 (2014), abstract: about 30 % stood still after the cold (seen).
  ['rhagoletis-cerasi', 0.3],
])('%s: the share that waits for a second winter is as counted, and its source is listed', (code, share) => {
  const entries = bundled(code).diapause.filter(({secondYear}) => secondYear !== undefined);
  expect(entries.length).toBeGreaterThan(0);
  for (const {secondYear, secondYearSource} of entries) {
    expect(secondYear).toBeCloseTo(share, 2);
    expect(bundled(code).sources.find(({id}) => id === secondYearSource)?.provenance).toBe('seen');
  }
});
