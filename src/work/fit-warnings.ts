// What a fit cannot tell, or tells although it cannot be: sentences without their stop.
import type {LineFit} from '../thermal/fit/line.ts';
import {outsideLinearRange} from '../thermal/fit/linear-range.ts';
import type {Observed} from '../thermal/fit/observed.ts';
import {landmarksOf, type RateModelSpec} from '../thermal/rate-model.ts';

/** Fewer temperatures leave a line loose. Common practice, no source. */
const ENOUGH_FOR_A_LINE = 4;
/** Over so few degrees scatter outweighs warmth. Common practice, no source. */
const NARROW_C = 6;
/** Below this no insect is known to have its threshold; common practice, no source. */
const LOWEST_C = -5;
/** A threshold so far below the coldest row is a guess. */
const FAR_BELOW_C = 10;
/** A limit so far above the warmest row is a guess. */
const FAR_ABOVE_C = 8;

export function lineWarnings(rows: readonly Observed[], fit: LineFit, weighted: boolean): string[] {
  const coldest = rows[0]!.temperature;
  const outside = outsideLinearRange(rows);
  return [
    ...fewTemperatures(rows, ENOUGH_FOR_A_LINE, 'a line'),
    ...narrow(rows),
    ...(fit.lowerSe === null ? ['two rows leave no way to tell how sure the threshold is'] : []),
    ...(outside.length === 0
      ? []
      : [
          `${outside.map(({temperature}) => `${temperature} °C`).join(', ')} ${outside.length === 1 ? 'lies' : 'lie'} outside the linear range and bends the line`,
        ]),
    ...(fit.lowerC >= coldest
      ? [`the threshold of ${said(fit.lowerC)} °C is impossible: development was seen at ${coldest} °C`]
      : []),
    ...(fit.lowerC < LOWEST_C
      ? [`a threshold of ${said(fit.lowerC)} °C is impossible for an insect or arachnid`]
      : []),
    ...(coldest - fit.lowerC > FAR_BELOW_C
      ? [
          `the threshold lies ${said(coldest - fit.lowerC)} °C below the coldest row: it is drawn out, not seen`,
        ]
      : []),
    ...(fit.lowerSe !== null && fit.lowerSe > 3
      ? [`the threshold is known to ${said(fit.lowerSe)} °C only (one standard error)`]
      : []),
    ...weightWarnings(rows, weighted),
  ];
}

export function curveWarnings(
  rows: readonly Observed[],
  model: RateModelSpec,
  parameters: number,
  weighted: boolean,
): string[] {
  const {lowerC, optimumC, upperC} = landmarksOf(model);
  const [coldest, warmest] = [rows[0]!.temperature, rows.at(-1)!.temperature];
  const fastest = rows.reduce((best, row) => (row.days < best.days ? row : best)).temperature;
  return [
    ...fewTemperatures(rows, parameters + 2, `${parameters} parameters`),
    ...(fastest === warmest
      ? ['no row is warm enough to be slower than a cooler one: optimum and upper limit are guesses']
      : []),
    ...(fastest !== warmest && upperC !== null && upperC - warmest > FAR_ABOVE_C
      ? [`the upper limit lies ${said(upperC - warmest)} °C above the warmest row: it is drawn out, not seen`]
      : []),
    ...(optimumC !== null && optimumC > warmest + FAR_ABOVE_C && fastest !== warmest
      ? ['the optimum lies far above the rows']
      : []),
    ...(lowerC !== null && coldest - lowerC > FAR_BELOW_C
      ? [
          `the lower threshold lies ${said(coldest - lowerC)} °C below the coldest row: it is drawn out, not seen`,
        ]
      : []),
    ...(lowerC === null ? [`${model.kind} has no lower threshold: in the cold it runs on slowly`] : []),
    ...weightWarnings(rows, weighted),
  ];
}

function fewTemperatures(rows: readonly Observed[], enough: number, what: string): string[] {
  const count = new Set(rows.map(({temperature}) => temperature)).size;
  return count < enough
    ? [`${count} temperatures are few for ${what}; ${enough} or more tell how good it is`]
    : [];
}

function narrow(rows: readonly Observed[]): string[] {
  const span = rows.at(-1)!.temperature - rows[0]!.temperature;
  return span < NARROW_C ? [`the rows span only ${said(span)} °C`] : [];
}

function weightWarnings(rows: readonly Observed[], weighted: boolean): string[] {
  if (!weighted) return [];
  const without = rows.filter(({sd, n}) => sd === undefined && n === undefined);
  if (without.length > 0)
    return [
      `${without.map(({temperature}) => `${temperature} °C`).join(', ')} has neither sd nor n and counts as one animal`,
    ];
  const mixed = rows.some(({sd}) => sd === undefined) && rows.some(({sd}) => sd !== undefined);
  return mixed ? ['some rows have an sd and some have none: their weights do not compare'] : [];
}

function said(value: number): string {
  return value.toFixed(1);
}
