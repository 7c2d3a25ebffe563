// What in a profile looks wrong although it can be computed with: questions to whoever wrote it.
import {landmarksOf, type RateModelSpec} from '../thermal/rate-model.ts';
import {doubtsAboutStages} from './profile-stage-doubts.ts';
import type {Profile, TaxonProfile} from './schema/index.ts';

/** A field, and why it is asked about, as a sentence without its stop. */
export interface Doubt {
  readonly field: string;
  readonly why: string;
}

/** Thresholds of insects and arachnids lie between; beyond them a figure is mostly one in °F, or a slip. Common practice, no source. */
const USUAL_LOWER_C = [-5, 20] as const;
const USUAL_OPTIMUM_C = [15, 42] as const;
const USUAL_UPPER_C = [22, 50] as const;
const USUAL_TESTED_C = [2, 42] as const;
const USUAL_KEEPING_C = [-5, 42] as const;

/** Up to here warmth speeds development in practically every kind. Common practice, no source. */
const STILL_FASTER_C = 25;
/** Scatter of published means that nobody need wonder at: up to there, and between there and the fastest temperature. */
const SCATTER = 1.05;
const WIDE_SCATTER = 1.25;

/** @returns nothing where all looks as in other profiles */
export function profileDoubts(profile: Profile): Doubt[] {
  const keeping = keepingDoubts(profile);
  return 'variation' in profile || 'undated' in profile
    ? keeping
    : [...rateDoubts(profile), ...doubtsAboutStages(profile), ...keeping];
}

function rateDoubts({stages}: TaxonProfile): Doubt[] {
  return stages.flatMap(({rate}, i) => doubtsAboutRate(rate, `stages.${i}.rate`));
}

/** @param field how the model is named to a person */
export function doubtsAboutRate(rate: RateModelSpec, field: string): Doubt[] {
  const {lowerC, optimumC, upperC} = landmarksOf(rate);
  const asked = (name: string, value: number | null, usual: readonly [number, number], what: string) =>
    value !== null && (value < usual[0] || value > usual[1])
      ? [{field: `${field}${name}`, why: `${what} of ${said(value)} °C is unusual${inFahrenheit(value)}`}]
      : [];
  return [
    ...asked('.lower', lowerC, USUAL_LOWER_C, 'a lower threshold'),
    ...(rate.kind === 'degree-day' || rate.kind === 'table'
      ? []
      : asked('', optimumC, USUAL_OPTIMUM_C, 'an optimum')),
    ...asked('.upper', upperC, USUAL_UPPER_C, 'an upper limit'),
    ...(rate.kind === 'table'
      ? rate.points.flatMap(({temperature}, i) =>
          asked(
            `.points.${i}.temperature`,
            temperature,
            USUAL_TESTED_C,
            'development to the end at a constant temperature',
          ),
        )
      : []),
    ...(rate.kind === 'table' ? slowerInWarmth(rate, field) : []),
  ];
}

/** Points at which a warmer temperature takes longer although heat cannot be the reason. */
function slowerInWarmth({points}: Extract<RateModelSpec, {kind: 'table'}>, field: string): Doubt[] {
  const fastest = points.reduce((best, point) => (point.days < best.days ? point : best)).temperature;
  return points.flatMap(({temperature, days}, i) => {
    const before = points[i - 1];
    if (before === undefined) return [];
    const early = temperature <= STILL_FASTER_C && days > SCATTER * before.days;
    const later = temperature < fastest && days > WIDE_SCATTER * before.days;
    return early || later
      ? [
          {
            field: `${field}.points.${i}.days`,
            why: `${said(days)} days at ${temperature} °C are more than ${said(before.days)} at ${before.temperature} °C, where warmth should still speed development`,
          },
        ]
      : [];
  });
}

function keepingDoubts({limits: {temperature}}: Profile): Doubt[] {
  return Object.entries({low: temperature?.low, high: temperature?.high}).flatMap(([end, limit]) =>
    limit !== undefined && (limit < USUAL_KEEPING_C[0] || limit > USUAL_KEEPING_C[1])
      ? [
          {
            field: `limits.temperature.${end}`,
            why: `${said(limit)} °C is unusual to keep animals at${inFahrenheit(limit)}`,
          },
        ]
      : [],
  );
}

/** A figure that would be a usual one, were it °F. */
function inFahrenheit(value: number): string {
  const celsius = (value - 32) / 1.8;
  return value > 32 && value < 110 ? `; were it °F, it is ${said(celsius)} °C` : '';
}

function said(value: number): string {
  return String(Math.round(value * 10) / 10);
}
