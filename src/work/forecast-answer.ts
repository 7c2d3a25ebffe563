// A lot's outlook as `teneral forecast` answers it: every instant as ISO text in the room's zone.
import type {LotForecast, Quantiles, Window} from '../development/answer.ts';
import type {NotOut} from '../development/not-out.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import type {Desk} from './desk.ts';
import type {Experience} from './experience.ts';
import type {Outlook} from './outlook.ts';
import {actionsFor, type Explanation, explanationsOf, testsFor} from './rest-words.ts';

type Told<Points> = {readonly [Point in keyof Points]: string | null};

export interface ForecastAnswer {
  readonly lot: string;
  readonly asOf: string;
  readonly unit: string;
  readonly alive: number | null;
  readonly stagesNow: LotForecast['stagesNow'];
  readonly degreeDays:
    | (NonNullable<LotForecast['degreeDays']> & {readonly estimated: Outlook['estimated']})
    | null;
  readonly adults: {
    readonly expected: number | null;
    readonly animal: Told<Quantiles>;
    readonly first: Told<Window> | null;
    readonly half: Told<Window> | null;
    readonly last: Told<Window> | null;
    /** One animal of each sex; null where no likely profile tells them apart. */
    readonly sexes: {readonly female: Told<Window> | null; readonly male: Told<Window> | null} | null;
    readonly perDay: readonly {
      readonly day: string;
      readonly expected: number | null;
      readonly probability: number;
    }[];
  };
  readonly startChecking: string | null;
  readonly nextCheck: string | null;
  readonly pace: LotForecast['pace'];
  readonly candidates: LotForecast['candidates'];
  readonly readings: Outlook['readings'];
  /** What measurements of the water taught, and when half would be out by what is not gone by. */
  readonly water:
    | (Pick<NonNullable<Outlook['water']>, 'offsetC' | 'sdC' | 'n' | 'used'> & {
        readonly otherwise: string | null;
      })
    | null;
  readonly status: LotForecast['status'];
  readonly rest: {
    /** As they were found, before anything was seen of them here. */
    readonly atFirst: number;
    readonly chance: number;
    readonly chill:
      | (Omit<NonNullable<LotForecast['rest']['chill']>, 'completeDays'> & {readonly complete: string | null})
      | null;
    readonly secondYear: number | null;
  };
  /** Of a lot that is late: chances for one that is left, and what would tell them apart. */
  readonly notOut:
    | (NotOut & {
        /** The likeliest first, each with what speaks for it and against it. */
        readonly ranked: readonly Explanation[];
        readonly tellApart: readonly string[];
        readonly actions: readonly string[];
        /** When 95 % were to be out, as first expected, and how far past that it is. */
        readonly due: string | null;
        readonly degreeDaysPast: number | null;
        readonly sum: NonNullable<Outlook['overdue']>['sum'];
      })
    | null;
  /** What the room's own finished lots taught and the forecast begins from. */
  readonly experience: readonly {
    readonly profile: string;
    readonly pace: {readonly p50: number; readonly lots: number} | null;
    readonly survival: Experience['survival'];
  }[];
  readonly assumptions: readonly string[];
}

export function forecastAnswer(outlook: Outlook, desk: Desk): ForecastAnswer {
  const {lot, unit, forecast, readings, estimated, water, experience} = outlook;
  const {civil, now} = desk;
  const iso = (days: number | null) => (days === null ? null : civil.iso(days * MS_PER_DAY));
  const window = (times: Window | null) =>
    times === null ? null : {p10: iso(times.p10), p50: iso(times.p50), p90: iso(times.p90)};
  const {p05, p10, p25, p50, p75, p90, p95} = forecast.animal;
  return {
    lot: lot.code,
    asOf: civil.iso(now),
    unit,
    alive: forecast.alive,
    stagesNow: forecast.stagesNow,
    degreeDays: forecast.degreeDays === null ? null : {...forecast.degreeDays, estimated},
    adults: {
      expected: forecast.expected,
      animal: {
        p05: iso(p05),
        p10: iso(p10),
        p25: iso(p25),
        p50: iso(p50),
        p75: iso(p75),
        p90: iso(p90),
        p95: iso(p95),
      },
      first: window(forecast.first),
      half: window(forecast.half),
      last: window(forecast.last),
      sexes:
        forecast.sexes === null
          ? null
          : {female: window(forecast.sexes.female), male: window(forecast.sexes.male)},
      perDay: forecast.perDay.map(({fromDays, expected, probability}) => ({
        day: civil.dayOf(fromDays * MS_PER_DAY),
        expected,
        probability,
      })),
    },
    startChecking: iso(forecast.startCheckingDays),
    nextCheck: iso(forecast.nextCheckDays),
    pace: forecast.pace,
    candidates: forecast.candidates,
    readings,
    water: water === null ? null : waterAnswer(water, iso),
    status: forecast.status,
    rest: restAnswer(forecast.rest, iso),
    notOut: notOutAnswer(outlook, desk, iso),
    experience: experience
      .filter(({pace, survival}) => pace !== null || survival !== null)
      .map(({profile, pace, survival}) => ({
        profile,
        pace: pace === null ? null : {p50: Math.exp(pace.lnMean), lots: pace.lots},
        survival,
      })),
    assumptions: forecast.assumptions,
  };
}

function waterAnswer(
  {offsetC, sdC, n, used, otherwiseDays}: NonNullable<Outlook['water']>,
  iso: (days: number | null) => string | null,
): ForecastAnswer['water'] {
  return {offsetC, sdC, n, used, otherwise: iso(otherwiseDays)};
}

function notOutAnswer(
  outlook: Outlook,
  desk: Desk,
  iso: (days: number | null) => string | null,
): ForecastAnswer['notOut'] {
  const {forecast, overdue} = outlook;
  if (forecast.notOut === null) return null;
  return {
    ...forecast.notOut,
    ranked: explanationsOf(outlook, desk),
    tellApart: testsFor(forecast.alive),
    actions: actionsFor(forecast.alive),
    due: iso(overdue?.dueDays ?? null),
    degreeDaysPast: overdue?.degreeDaysPast ?? null,
    sum: overdue?.sum ?? null,
  };
}

function restAnswer(
  {atFirst, chance, chill, secondYear}: LotForecast['rest'],
  iso: (days: number | null) => string | null,
): ForecastAnswer['rest'] {
  if (chill === null) return {atFirst, chance, chill, secondYear};
  const {completeDays, ...stated} = chill;
  return {atFirst, chance, chill: {...stated, complete: iso(completeDays)}, secondYear};
}
