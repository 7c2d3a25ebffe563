// What is drawn of a fit: the curve over the temperatures that matter, and the rows it was made of.
import type {RateCurve} from '../exchange/pictures/rate-curve.ts';
import type {Observed} from '../thermal/fit/observed.ts';
import {landmarksOf, type RateModelSpec, rateModel} from '../thermal/rate-model.ts';

const MARGIN_C = 2;
/** A limit further from the rows than this is not worth the room. */
const WORTH_SHOWING_C = 12;

/** @param used temperatures that counted; all where none is given */
export function pictureOf(
  model: RateModelSpec,
  rows: readonly Observed[],
  used: readonly {readonly temperature: number}[],
): RateCurve {
  const counted = new Set(used.map(({temperature}) => temperature));
  const {lowerC, upperC} = landmarksOf(model);
  const tested = rows.map(({temperature}) => temperature);
  const [coldest, warmest] = [Math.min(...tested), Math.max(...tested)];
  const near = (limit: number | null, tested: number) =>
    limit !== null && Math.abs(limit - tested) <= WORTH_SHOWING_C ? limit : tested;
  return {
    ratePerDay: rateModel(model).ratePerDay,
    points: rows.map(({temperature, days}) => ({
      temperature,
      days,
      left: counted.size > 0 && !counted.has(temperature),
    })),
    fromC: Math.floor(Math.min(coldest, near(lowerC, coldest)) - MARGIN_C),
    toC: Math.ceil(Math.max(warmest, near(upperC, warmest)) + MARGIN_C),
  };
}
