// Every rate model under a forecast: at a constant temperature the middle animal emerges after 1 / rate days.
import {describe, expect, it} from 'vitest';
import {doseAt} from '../../src/development/dose-course.ts';
import {chainOfTaxon} from '../../src/development/stage-chain.ts';
import {parseRecord, type TaxonProfile} from '../../src/records/schema/index.ts';
import {type RateModelSpec, rateModel} from '../../src/thermal/rate-model.ts';

const specs: readonly RateModelSpec[] = [
  {kind: 'briere-1', a: 7.86e-5, lower: 11.36, upper: 39.17},
  {kind: 'briere-2', a: 5e-5, lower: 7.5, upper: 36.2, m: 4.3},
  {kind: 'lactin-1', rho: 0.1512, upper: 38.4, delta: 6.611},
  {kind: 'lactin-2', rho: 0.159, upper: 37.3, delta: 6.286, lambda: -0.0391},
  {kind: 'logan-6', psi: 0.031, rho: 0.14, upper: 35.1, delta: 4.2},
  {kind: 'schoolfield', rho25: 0.11, ha: 14500, tl: 285.2, hl: -52000, th: 306.9, hh: 92000},
];

function profileWith(rate: RateModelSpec): TaxonProfile {
  const profile = parseRecord(
    {
      record: 'profile',
      profile: 'x',
      name: 'x',
      rank: 'species',
      stages: [{stage: 'pupa', rate}],
      sources: [],
    },
    '',
  );
  if (profile.record !== 'profile' || 'variation' in profile || 'undated' in profile)
    throw new Error('no taxon');
  return profile;
}

describe('a stage with a nonlinear rate', () => {
  it.each(specs.map(spec => ({spec})))('gathers its dose of 1 in 1 / rate days: $spec.kind', ({spec}) => {
    const days = 1 / rateModel(spec).ratePerDay(23);
    const course = {atDays: Float64Array.of(100, 500), temperatureC: Float64Array.of(23, 23)};
    const {stages} = chainOfTaxon(profileWith(spec), course);
    expect(stages[0]!.required).toBe(1);
    expect(doseAt(stages[0]!.course, 100 + days)).toBeCloseTo(1, 6);
  });
});
