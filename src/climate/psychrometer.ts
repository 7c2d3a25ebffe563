// Humidity from a dry and a wet thermometer, and the wet bulb from a humidity.
import {saturationWmoKPa} from './saturation.ts';

/**
 * How air passes the wet bulb: `ventilated` (drawn past it at 5 m/s, or slung round), `natural` (outdoors in a
 * screen), `still` (indoors).
 */
export type Psychrometer = keyof typeof coefficients;

/** Psychrometer coefficient, 1/°C. */
const coefficients = {
  // WMO-No. 8, annex 4.B, over water, at 0 °C; its growth by 0.1 per cent a degree is below what a wick allows.
  ventilated: 6.53e-4,
  // FAO Irrigation and Drainage Paper 56, eq. 16.
  natural: 8e-4,
  still: 1.2e-3,
};

export const psychrometers = Object.keys(coefficients) as readonly Psychrometer[];

/** What the two thermometers hang in. */
export interface Aired {
  readonly pressureKPa: number;
  readonly psychrometer: Psychrometer;
}

/**
 * Relative humidity, per cent, where a wet thermometer shows `wetC` beside a dry one that shows `dryC`:
 * e = es(wet) − A·p·(dry − wet), WMO-No. 8, annex 4.B. Below 0 where no such air can be.
 */
export function humidityFromWetBulb(dryC: number, wetC: number, {pressureKPa, psychrometer}: Aired): number {
  const vapourKPa = saturationWmoKPa(wetC) - coefficients[psychrometer] * pressureKPa * (dryC - wetC);
  return (100 * vapourKPa) / saturationWmoKPa(dryC);
}

const COLDEST_WET_C = -60;

/** What the wet thermometer shows, °C: the inverse of humidityFromWetBulb, by halving to 1e-9 °C. */
export function wetBulbC(dryC: number, rhPercent: number, aired: Aired): number {
  let [low, high] = [COLDEST_WET_C, dryC];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (humidityFromWetBulb(dryC, middle, aired) < rhPercent) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
