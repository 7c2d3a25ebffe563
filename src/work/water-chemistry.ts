// Questions about water that need no room: oxygen at saturation, and the ammonia that harms.
import {UNIONISED_MG_L, unionisedShare} from '../climate/ammonia.ts';
import {OXYGEN_RANGE, oxygenSaturationMgL} from '../climate/oxygen.ts';
import {inRange} from './air.ts';

export interface WaterWishes {
  readonly temperatureC: number;
  readonly pressureKPa: number;
  /** g/kg. */
  readonly salinity: number;
  readonly ph?: number | undefined;
  /** Total ammonia, mg/L. */
  readonly ammoniaMgL?: number | undefined;
  /** Dissolved oxygen as measured, mg/L. */
  readonly oxygenMgL?: number | undefined;
}

/** As `teneral water` answers without a unit; a field is null where what it needs was not given. */
export interface WaterAnswer {
  readonly oxygenSaturationMgL: number;
  /** Of what was measured, per cent of saturation. */
  readonly oxygenPercent: number | null;
  readonly unionisedShare: number | null;
  readonly unionisedMgL: number | null;
  /** What the un-ionised ammonia means for animals. */
  readonly caution: string | null;
}

/** @throws Refusal outside what the formulas hold for */
export function waterOf(wishes: WaterWishes): WaterAnswer {
  const {temperatureC, pressureKPa, salinity, ph, ammoniaMgL, oxygenMgL} = wishes;
  inRange(temperatureC, OXYGEN_RANGE.lowestC, OXYGEN_RANGE.highestC, '°C', '--temperature');
  inRange(pressureKPa, 40, 120, 'kPa', '--pressure');
  inRange(salinity, 0, OXYGEN_RANGE.highestSalinity, 'g/kg', '--salinity');
  if (ph !== undefined) inRange(ph, 0, 14, 'pH', '--ph');
  if (ammoniaMgL !== undefined) inRange(ammoniaMgL, 0, 1000, 'mg/L', '--ammonia');
  const saturated = oxygenSaturationMgL(temperatureC, pressureKPa, salinity);
  const share = ph === undefined ? null : unionisedShare(temperatureC, ph);
  const unionised = share === null || ammoniaMgL === undefined ? null : share * ammoniaMgL;
  return {
    oxygenSaturationMgL: saturated,
    oxygenPercent: oxygenMgL === undefined ? null : (100 * oxygenMgL) / saturated,
    unionisedShare: share,
    unionisedMgL: unionised,
    caution: unionised === null ? null : ammoniaCaution(unionised),
  };
}

/** What so much un-ionised ammonia means; null below the guide value. Figures: see UNIONISED_MG_L. */
export function ammoniaCaution(unionisedMgL: number): string | null {
  const {guide, harm, deadly} = UNIONISED_MG_L;
  const act = 'Change part of the water now, feed less, and measure again; do not raise the pH.';
  if (unionisedMgL >= deadly) return `at ${deadly} mg/L fish larvae die. ${act}`;
  if (unionisedMgL >= harm) return `above ${harm} mg/L harm lasts. ${act}`;
  if (unionisedMgL >= guide) return `above the guide value of ${guide} mg/L for fish waters. ${act}`;
  return null;
}
