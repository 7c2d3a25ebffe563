// Lots to try forecasts on: profiles, courses and requests written short.
import type {ForecastRequest} from '../../src/development/request.ts';
import type {TaxonProfile} from '../../src/records/schema/index.ts';
import type {SimulatedCohort, SimulatedCourse, SimulatedStage} from './simulated.ts';

export const START = 20_600;

export function profileOf(
  stages: readonly SimulatedStage[],
  {paceSd = 0.1, code = 'invented', survival}: {paceSd?: number; code?: string; survival?: number} = {},
): TaxonProfile {
  return {
    record: 'profile',
    profile: code,
    name: code,
    rank: 'species',
    classification: {},
    rearing: [],
    stages: stages.map(({name, lower, degreeDays, cv, family = 'lognormal'}) => ({
      stage: name,
      rate: {kind: 'degree-day', lower, degreeDays, cutoff: 'horizontal'},
      cv,
      family,
      source: 'a',
    })),
    paceSd,
    ...(survival === undefined ? {} : {survival}),
    adult: {},
    limits: {},
    diapause: [],
    cautions: [],
    sources: [{id: 'a', citation: 'invented for the test', provenance: 'computed'}],
  };
}

/** A daily wave about a mean that drifts, in 10-minute readings up to now and hourly steps after it. */
export function wave(
  meanC: number,
  amplitudeC: number,
  {driftPerDay = 0, days = 460}: {driftPerDay?: number; days?: number} = {},
): SimulatedCourse {
  const atDays = Float64Array.from({length: days * 24 + 1}, (_, i) => START + i / 24);
  const temperatureC = atDays.map(
    at => meanC + driftPerDay * (at - START) + amplitudeC * Math.sin(2 * Math.PI * (at - 0.4)),
  );
  return {atDays, temperatureC};
}

export function requestOf(
  cohorts: readonly SimulatedCohort[],
  course: SimulatedCourse,
  profile: TaxonProfile,
  more: Partial<ForecastRequest> = {},
): ForecastRequest {
  const alive = cohorts.flatMap(({stages}) => Object.values(stages)).reduce((sum, n) => sum + n, 0);
  return {
    cohorts,
    candidates: [{profile, weight: 1}],
    course,
    nowDays: START + 2,
    alive,
    closed: false,
    sightings: [],
    looksDays: [],
    survival: null,
    roundsDays: Array.from({length: 400}, (_, day) => START + day + 0.375),
    holdHours: 24,
    dayBoundsDays: Array.from({length: 403}, (_, day) => START + day),
    sharesAtDays: [],
    ...more,
  };
}
