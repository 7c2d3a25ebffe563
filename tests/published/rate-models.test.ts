// Nonlinear rate models at published parameters. None of the sources prints a daily rate: what is expected was computed
// from the published parameters with a general-purpose program, apart from this one.
import {describe, expect, it} from 'vitest';
import {landmarksOf, type RateModelSpec, rateModel} from '../../src/thermal/rate-model.ts';

const AEDES_BRIERE =
  'Mordecai and others 2017, PLoS Neglected Tropical Diseases 11:e0005568, Aedes aegypti larva (parameters seen in public model code)';
const AEDES_ENZYME =
  'Focks and others 1993, Journal of Medical Entomology 30:1003–1017, Aedes aegypti, daily form as in Otero, Solari & Schweigmann 2006 (parameters seen in public model code); reference 298 K';

describe('rates at published parameters', () => {
  it.each<{source: string; spec: RateModelSpec; rates: Readonly<Record<number, number>>}>([
    {
      source: AEDES_BRIERE,
      spec: {kind: 'briere-1', a: 7.86e-5, lower: 11.36, upper: 39.17},
      rates: {15: 0.0211, 20: 0.05947, 25: 0.10089, 30: 0.1331, 35: 0.1328},
    },
    {
      source: `${AEDES_ENZYME}, larva`,
      spec: {kind: 'schoolfield', rho25: 0.2088, ha: 26018, th: 304.6, hh: 55990, refK: 298},
      rates: {15: 0.04473, 20: 0.09668, 25: 0.18814, 30: 0.27281, 35: 0.2352},
    },
  ])('$spec.kind, $source', ({spec, rates}) => {
    const {ratePerDay} = rateModel(spec);
    for (const [at, rate] of Object.entries(rates)) {
      expect(Math.abs(ratePerDay(Number(at)) - rate)).toBeLessThanOrEqual(0.5e-5);
      expect(1 / ratePerDay(Number(at))).toBeCloseTo(1 / rate, 1);
    }
  });

  it(`is fastest at 32.711 °C, ${AEDES_BRIERE}`, () => {
    const {optimumC} = landmarksOf({kind: 'briere-1', a: 7.86e-5, lower: 11.36, upper: 39.17});
    expect(optimumC).toBeCloseTo(32.711, 3);
  });

  it.each<{stage: string; spec: RateModelSpec; rate: number}>([
    {
      stage: 'egg',
      spec: {kind: 'schoolfield', rho25: 0.24, ha: 10798, th: 14184, hh: 100000, refK: 298},
      rate: 0.24,
    },
    {
      stage: 'pupa',
      spec: {kind: 'schoolfield', rho25: 0.384, ha: 14931, th: 148, hh: -472379, refK: 298},
      rate: 0.384,
    },
    {
      stage: 'gonotrophic cycle',
      spec: {kind: 'schoolfield', rho25: 0.372, ha: 15725, th: 447.2, hh: 1756481, refK: 298},
      rate: 0.372,
    },
  ])(
    `is the first coefficient at 298 K where heat does not bite yet: $stage, ${AEDES_ENZYME}`,
    ({spec, rate}) => {
      expect(rateModel(spec).ratePerDay(298 - 273.15)).toBeCloseTo(rate, 10);
    },
  );

  // Kaufmann effect, computed with the parameters of Mordecai and others 2017: the mean rate over a sine day against the
  // rate at its mean.
  it.each([
    [15, 8, 50.79],
    [20, 8, 2.99],
    [25, 8, -6.32],
    [30, 6, -8.89],
    [33, 5, -11.83],
  ])(
    'a sine day of mean %d and amplitude %d °C differs from its mean by %f %%',
    (mean, amplitude, percent) => {
      const {ratePerDay} = rateModel({kind: 'briere-1', a: 7.86e-5, lower: 11.36, upper: 39.17});
      const steps = 20_000;
      let sum = 0;
      for (let i = 0; i < steps; i++)
        sum += ratePerDay(mean + amplitude * Math.sin((2 * Math.PI * (i + 0.5)) / steps));
      expect(100 * (sum / steps / ratePerDay(mean) - 1)).toBeCloseTo(percent, 2);
    },
  );
});
