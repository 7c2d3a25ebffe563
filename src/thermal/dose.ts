// The dose that a trace gives: the exact integral of a rate along straight lines.
import type {RateModel} from './rate.ts';
import {firstPieceEndingAfter, longestPauseDays, type TemperatureTrace, temperatureWithin} from './trace.ts';

export interface Dose {
  /** 1 completes a stage; under a thermal constant of 1, degree-days. */
  readonly dose: number;
  /** Days for which the temperature is known. */
  readonly coveredDays: number;
  /** Days between readings that lie too far apart. Time before the first and after the last reading is neither. */
  readonly gapDays: number;
}

/** Doses of successive spans, as columns. */
export interface Doses {
  readonly dose: Float64Array;
  readonly coveredDays: Float64Array;
  readonly gapDays: Float64Array;
}

/** The dose from one instant to another. */
export function doseBetween(
  trace: TemperatureTrace,
  model: RateModel,
  fromDays: number,
  toDays: number,
): Dose {
  const {dose, coveredDays, gapDays} = dosesBetween(trace, model, Float64Array.of(fromDays, toDays));
  return {dose: dose[0]!, coveredDays: coveredDays[0]!, gapDays: gapDays[0]!};
}

/** The dose from the first reading up to each node. Nodes are in order of time; before the first reading it is 0. */
export function doseCourse(trace: TemperatureTrace, model: RateModel, nodesDays: Float64Array): Float64Array {
  const start = Math.min(trace.atDays[0] ?? 0, nodesDays[0] ?? 0);
  const bounds = new Float64Array(nodesDays.length + 1);
  bounds[0] = start;
  bounds.set(nodesDays, 1);
  const {dose} = dosesBetween(trace, model, bounds);
  for (let k = 1; k < dose.length; k++) dose[k] = dose[k - 1]! + dose[k]!;
  return dose;
}

/**
 * The doses of the spans between successive bounds, in order of time: over a straight piece from a to b in Δt
 * (R(b) − R(a)) / (b − a) · Δt, with R the antiderivative of the rate. One walk along readings and bounds; nothing
 * is allocated on the way.
 */
export function dosesBetween(trace: TemperatureTrace, model: RateModel, boundsDays: Float64Array): Doses {
  const {atDays, temperatureC} = trace;
  const longest = longestPauseDays(trace);
  const spans = Math.max(0, boundsDays.length - 1);
  const dose = new Float64Array(spans);
  const coveredDays = new Float64Array(spans);
  const gapDays = new Float64Array(spans);
  const pieces = atDays.length - 1;

  let piece = firstPieceEndingAfter(trace, boundsDays[0] ?? 0);
  // Where the last step ended; the next one mostly begins there, so each reading asks for its antiderivative once.
  let a = Number.NaN;
  let areaA = Number.NaN;

  for (let span = 0; span < spans; span++) {
    const from = boundsDays[span]!;
    const to = boundsDays[span + 1]!;
    let sum = 0;
    let covered = 0;
    let gap = 0;
    while (piece < pieces) {
      const start = atDays[piece]!;
      const end = atDays[piece + 1]!;
      const begin = Math.max(start, from);
      const until = Math.min(end, to);
      if (until > begin) {
        const first = temperatureC[piece]!;
        const last = temperatureC[piece + 1]!;
        if (end - start > longest || Number.isNaN(first + last)) gap += until - begin;
        else {
          const left = begin === start ? first : temperatureWithin(trace, piece, begin);
          const b = until === end ? last : temperatureWithin(trace, piece, until);
          if (left !== a) {
            a = left;
            areaA = model.antiderivative(a);
          }
          const areaB = model.antiderivative(b);
          sum += meanRate(model, a, b, areaA, areaB) * (until - begin);
          covered += until - begin;
          a = b;
          areaA = areaB;
        }
      }
      if (end > to) break;
      piece++;
    }
    dose[span] = sum;
    coveredDays[span] = covered;
    gapDays[span] = gap;
  }
  return {dose, coveredDays, gapDays};
}

/** Closer temperatures than this would leave few true digits in R(b) − R(a). */
const NARROW = 1e-5;
/** Unless R itself is small too, as just above the lower threshold, where it begins at 0. */
const FEW_DIGITS = 1e-5;

/** The mean of the rate between two temperatures, from the antiderivative, or by Simpson's rule where they nearly agree. */
function meanRate(model: RateModel, a: number, b: number, areaA: number, areaB: number): number {
  const width = b - a;
  const area = areaB - areaA;
  const wide = Math.abs(width) > NARROW || Math.abs(area) > FEW_DIGITS * Math.max(areaA, areaB);
  if (wide && width !== 0) return area / width;
  return (model.ratePerDay(a) + 4 * model.ratePerDay((a + b) / 2) + model.ratePerDay(b)) / 6;
}
