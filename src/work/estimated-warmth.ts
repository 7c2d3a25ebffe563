// How many of the degree-days of a lot were filled in where nothing was read, and how far off they may be.
import type {Course} from '../climate/course.ts';
import {FILLED} from '../climate/course-summary.ts';
import type {LotForecast} from '../development/answer.ts';
import type {ForecastRequest} from '../development/request.ts';
import {heaviestFirst} from '../records/candidates.ts';
import {dosesBetween} from '../thermal/dose.ts';
import type {RateModel} from '../thermal/rate.ts';
import {rateModel} from '../thermal/rate-model.ts';

export interface EstimatedWarmth {
  /** Degree-days of the present stage that were filled in. */
  readonly degreeDays: number;
  /** So many more or fewer they may be: the spread of what fills each gap, throughout it; null where it is not known. */
  readonly within: number | null;
  /** Of all degree-days of the stage up to now. */
  readonly share: number;
  /** So many hours earlier or later that makes the dates. */
  readonly datesHours: number | null;
}

/** Undefined where nothing was filled in since the stage began, or it does not count in degree-days. */
export function estimatedWarmth(
  {stretches, ...course}: Course,
  {degreeDays, candidates: weighed}: Pick<LotForecast, 'degreeDays' | 'candidates'>,
  {candidates, nowDays}: Pick<ForecastRequest, 'candidates' | 'nowDays'>,
  expectedC: number | null,
): EstimatedWarmth | undefined {
  const past = stretches.filter(({fromDays}) => fromDays < nowDays);
  if (degreeDays === null || !past.some(({basis}) => FILLED.has(basis))) return undefined;
  const model = modelOf(degreeDays, heaviestFirst(weighed)[0]?.profile, candidates);
  const bounds = Float64Array.from([...past.map(({fromDays}) => fromDays), nowDays]);
  const doses = dosesBetween(course, model, bounds).dose;
  let left = degreeDays.accumulated;
  let filled = 0;
  let within: number | null = 0;
  for (let i = past.length - 1; i >= 0 && left > 0; i--) {
    const dose = doses[i]!;
    const part = dose > 0 ? Math.min(1, left / dose) : 0;
    left -= dose;
    const {basis, sdC} = past[i]!;
    if (!FILLED.has(basis) || part === 0) continue;
    filled += part * dose;
    if (sdC === undefined) within = null;
    else if (within !== null) {
      const either = [sdC, -sdC].map(
        byC => dosesBetween(course, warmer(model, byC), bounds.subarray(i, i + 2)).dose[0]!,
      );
      within += (part * (either[0]! - either[1]!)) / 2;
    }
  }
  if (filled === 0) return undefined;
  const perDay = expectedC === null ? 0 : model.ratePerDay(expectedC);
  return {
    degreeDays: filled,
    within,
    share: filled / degreeDays.accumulated,
    datesHours: within === null || perDay <= 0 ? null : (24 * within) / perDay,
  };
}

/** The degree-days of the stage as the heaviest candidate counts them. */
function modelOf(
  {stage: name, lower}: NonNullable<LotForecast['degreeDays']>,
  heaviest: string | undefined,
  candidates: ForecastRequest['candidates'],
): RateModel {
  const profile = candidates.find(each => each.profile.profile === heaviest)?.profile;
  const stages = profile !== undefined && 'stages' in profile ? profile.stages : [];
  const own = stages.find(({stage}) => stage === name);
  const rate = own !== undefined && 'rate' in own ? own.rate : undefined;
  return rate?.kind === 'degree-day'
    ? rateModel({...rate, degreeDays: 1})
    : rateModel({kind: 'degree-day', lower, degreeDays: 1});
}

function warmer({ratePerDay, antiderivative}: RateModel, byC: number): RateModel {
  return {
    ratePerDay: temperatureC => ratePerDay(temperatureC + byC),
    antiderivative: temperatureC => antiderivative(temperatureC + byC),
  };
}
