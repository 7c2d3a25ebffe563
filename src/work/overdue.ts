// A lot that is long past its time: by how much, and what speaks for each thing that those left may be.
import type {Course} from '../climate/course.ts';
import {dayLengthHours} from '../climate/day-length.ts';
import type {LotForecast} from '../development/answer.ts';
import {forecastLot} from '../development/forecast.ts';
import type {ForecastRequest} from '../development/request.ts';
import {heaviestFirst} from '../records/candidates.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {type Lot, valueAt} from '../records/state.ts';
import {doseBetween} from '../thermal/dose.ts';
import {rateModel} from '../thermal/rate-model.ts';
import type {Desk} from './desk.ts';

export interface Overdue {
  /** When nineteen in twenty were to be out, as was expected before anybody looked; null where no date could be given. */
  readonly dueDays: number | null;
  /** Degree-days since then; null where the heaviest candidate does not count in them. */
  readonly degreeDaysPast: number | null;
  /** Since the lot began, where all of it began in the last stage, against what that stage needs. */
  readonly sum: {readonly degreeDays: number; readonly required: number} | null;
  /** Adults that came out, the last when, and the degree-days since. */
  readonly out: {
    readonly count: number;
    readonly lastDays: number;
    readonly inTime: boolean;
    readonly degreeDaysSince: number | null;
  } | null;
  /** Of its life the share without readings. */
  readonly unread: number;
  readonly light: Light | null;
}

/** The light of a day that the animals had, from a lamp or from the sun where and when they were collected. */
export interface Light {
  readonly hours: number;
  readonly from: 'lamp' | 'sun';
  readonly unit: string;
  /** The day they were collected, in days; null of a lamp. */
  readonly onDays: number | null;
}

/** Of a lot that is late; null of any other. */
export function overdueOf(
  lot: Lot,
  {
    request,
    course,
    unit,
  }: {readonly request: ForecastRequest; readonly course: Course; readonly unit: string},
  forecast: LotForecast,
  coverage: number,
  desk: Desk,
): Overdue | null {
  if (forecast.status !== 'late') return null;
  const {nowDays} = request;
  const asExpected = forecastLot({
    ...request,
    sightings: [],
    looksDays: [],
    roundsDays: [],
    dayBoundsDays: [],
  });
  const {p05, p95: dueDays} = asExpected.animal;
  const last = lastStage(forecast, request);
  const since = (fromDays: number | null) =>
    last === null || fromDays === null || fromDays > nowDays
      ? null
      : last.required * doseBetween(course, last.model, fromDays, nowDays).dose;
  const came = request.sightings.flatMap(seen => (seen.kind === 'emergence' ? [seen] : []));
  const lastDays = Math.max(...came.map(({atDays}) => atDays));
  const sum = last === null || !allBegan(request, last.stage) ? null : since(beganOf(request));
  return {
    dueDays,
    degreeDaysPast: since(dueDays),
    sum: sum === null || last === null ? null : {degreeDays: sum, required: last.required},
    out:
      came.length === 0
        ? null
        : {
            count: came.reduce((all, {count}) => all + count, 0),
            lastDays,
            inTime:
              p05 !== null &&
              dueDays !== null &&
              came.every(({sinceDays, atDays}) => atDays >= p05 && sinceDays <= dueDays),
            degreeDaysSince: since(lastDays),
          },
    unread: 1 - coverage,
    light: lightOf(lot, unit, desk),
  };
}

/** The last stage of the heaviest candidate, where it counts in degree-days. */
function lastStage({candidates: weighed}: LotForecast, {candidates}: ForecastRequest) {
  const heaviest = heaviestFirst(weighed)[0]?.profile;
  const profile = candidates.find(each => each.profile.profile === heaviest)?.profile;
  const last = profile !== undefined && 'stages' in profile ? profile.stages?.at(-1) : undefined;
  if (last === undefined || !('rate' in last) || last.rate.kind !== 'degree-day') return null;
  return {stage: last.stage, model: rateModel(last.rate), required: last.rate.degreeDays};
}

function allBegan({cohorts}: ForecastRequest, stage: string): boolean {
  return cohorts.every(({stages, progress}) => {
    return Object.keys(stages).every(one => one === stage) && progress[1] === 0;
  });
}

const beganOf = ({cohorts}: ForecastRequest): number => Math.min(...cohorts.map(({atDays}) => atDays));

function lightOf({sample, startedAt}: Lot, unit: string, {state, civil}: Desk): Light | null {
  const history = state.units.get(unit);
  const lamp = history === undefined ? undefined : valueAt(history, startedAt).light;
  if (lamp !== undefined) return {hours: hoursOf(lamp), from: 'lamp', unit, onDays: null};
  const {place, collected} = state.samples.get(sample) ?? {};
  if (place?.latitude === undefined || collected === undefined) return null;
  const onDays = civil.at(collected.from.slice(0, 10), '12:00') / MS_PER_DAY;
  return {hours: dayLengthHours(place.latitude, onDays), from: 'sun', unit, onDays};
}

function hoursOf({on, off}: {readonly on: string; readonly off: string}): number {
  const [from, to] = [on, off].map(clock => Number(clock.slice(0, 2)) + Number(clock.slice(3, 5)) / 60);
  return (to! - from! + 24) % 24;
}
