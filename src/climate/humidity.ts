// Moist air: what one temperature and one humidity say of it.
import {type Aired, wetBulbC} from './psychrometer.ts';
import {dewPointC, saturationKPa, ZERO_C_IN_K} from './saturation.ts';

export interface Air {
  readonly saturationKPa: number;
  readonly vapourKPa: number;
  /** How much more vapour it could hold: what dries animals out. */
  readonly deficitKPa: number;
  /** Null in air without any vapour. */
  readonly dewPointC: number | null;
  /** Grams of water in a cubic metre. */
  readonly absoluteGM3: number;
  readonly wetBulbC: number;
}

/** Gas constant of water vapour, J/(kg·K): 8.314462618/0.018015268 (CODATA 2018; molar mass from IAPWS). */
const VAPOUR_GAS_CONSTANT = 461.523;

/** @param rhPercent 0 to 100 */
export function airOf(temperatureC: number, rhPercent: number, aired: Aired): Air {
  const saturated = saturationKPa(temperatureC);
  const vapour = (saturated * rhPercent) / 100;
  return {
    saturationKPa: saturated,
    vapourKPa: vapour,
    deficitKPa: saturated - vapour,
    dewPointC: rhPercent > 0 ? dewPointC(temperatureC, rhPercent) : null,
    absoluteGM3: (vapour * 1e6) / (VAPOUR_GAS_CONSTANT * (temperatureC + ZERO_C_IN_K)),
    wetBulbC: wetBulbC(temperatureC, rhPercent, aired),
  };
}
