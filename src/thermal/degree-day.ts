// The degree-day rate: straight above a lower threshold, with three ways to end at an upper one.
import type {Fault, Landmarks, RateModel} from './rate.ts';

export type Cutoff = 'horizontal' | 'intermediate' | 'vertical';

/** Where development begins and how it ends: what makes degrees effective. */
export interface Thresholds {
  readonly lower: number;
  readonly upper?: number | undefined;
  /** Above `upper`: `horizontal` stays as at upper, `intermediate` falls as it rose, `vertical` is 0. */
  readonly cutoff?: Cutoff | undefined;
}

/** Rate = effective degrees / degreeDays. */
export interface DegreeDaySpec extends Thresholds {
  readonly kind: 'degree-day';
  /** Degree-days that complete the stage; 1 makes the dose the degree-days themselves. */
  readonly degreeDays: number;
}

/**
 * The model of a degree-day specification. Effective degrees are T − L up to U; above it U − L (horizontal, the
 * default), max(0, 2U − L − T) (intermediate) or 0 (vertical).
 * @throws RangeError where thresholds do not rise or the constant is not above 0
 */
export function degreeDay(spec: DegreeDaySpec): RateModel {
  const fault = degreeDayFault(spec);
  if (fault !== undefined) throw new RangeError(`degree-day: ${fault.field} ${fault.what}`);
  const {degreeDays, lower, upper = Number.POSITIVE_INFINITY, cutoff = 'horizontal'} = spec;
  const [above, areaAbove] = endOf(cutoff, upper - lower);
  const atUpper = (upper - lower) ** 2 / 2;

  return {
    ratePerDay: temperature => {
      if (!(temperature > lower)) return 0;
      return (temperature <= upper ? temperature - lower : above(temperature - upper)) / degreeDays;
    },
    antiderivative: temperature => {
      if (!(temperature > lower)) return 0;
      const area =
        temperature <= upper ? (temperature - lower) ** 2 / 2 : atUpper + areaAbove(temperature - upper);
      return area / degreeDays;
    },
  };
}

export function degreeDayLandmarks({lower, upper}: DegreeDaySpec): Landmarks {
  return {lowerC: lower, optimumC: upper ?? null, upperC: upper ?? null};
}

export function degreeDayFault({degreeDays, ...thresholds}: DegreeDaySpec): Fault | undefined {
  const fault = thresholdsFault(thresholds);
  if (fault !== undefined) return fault;
  return degreeDays > 0 && Number.isFinite(degreeDays)
    ? undefined
    : {field: 'degreeDays', what: 'must be above 0'};
}

/** Why thresholds make no model. */
export function thresholdsFault({lower, upper}: Thresholds): Fault | undefined {
  if (!Number.isFinite(lower)) return {field: 'lower', what: 'must be a number'};
  if (upper !== undefined && !(upper > lower && Number.isFinite(upper)))
    return {field: 'upper', what: `must be above the lower one (${lower})`};
  return undefined;
}

type OfExcess = (degreesAboveUpper: number) => number;

/** Effective degrees beyond the upper threshold, and the area under them from there on. */
function endOf(cutoff: Cutoff, span: number): readonly [degrees: OfExcess, area: OfExcess] {
  switch (cutoff) {
    case 'horizontal':
      return [() => span, excess => span * excess];
    case 'intermediate':
      return [
        excess => Math.max(0, span - excess),
        excess => (span ** 2 - Math.max(0, span - excess) ** 2) / 2,
      ];
    case 'vertical':
      return [() => 0, () => 0];
  }
}
