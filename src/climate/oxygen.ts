// How much oxygen water holds in contact with air.
import {SEA_LEVEL_KPA} from './pressure.ts';
import {ZERO_C_IN_K} from './saturation.ts';

/** Where the solubility was measured. */
export const OXYGEN_RANGE = {lowestC: 0, highestC: 40, highestSalinity: 40} as const;

/**
 * Oxygen at saturation under moist air, mg/L.
 *
 * Benson and Krause 1984, Limnol. Oceanogr. 29, 620–632, as in APHA Standard Methods 4500-O; pressure by Benson and
 * Krause 1980: C·P·(1 − u/P)(1 − θP)/((1 − u)(1 − θ)), u the vapour pressure in atm, θ the second virial term.
 * @param salinity g/kg, 0 for fresh water
 */
export function oxygenSaturationMgL(
  temperatureC: number,
  pressureKPa: number = SEA_LEVEL_KPA,
  salinity = 0,
): number {
  const kelvin = temperatureC + ZERO_C_IN_K;
  const fresh =
    -139.34411 +
    1.575701e5 / kelvin -
    6.642308e7 / kelvin ** 2 +
    1.2438e10 / kelvin ** 3 -
    8.621949e11 / kelvin ** 4;
  const salted = salinity * (1.7674e-2 - 10.754 / kelvin + 2140.7 / kelvin ** 2);
  const atm = pressureKPa / SEA_LEVEL_KPA;
  const vapourAtm = Math.exp(11.8571 - 3840.7 / kelvin - 216_961 / kelvin ** 2);
  const theta = 0.000975 - 1.426e-5 * temperatureC + 6.436e-8 * temperatureC ** 2;
  const pressure = (atm * (1 - vapourAtm / atm) * (1 - theta * atm)) / ((1 - vapourAtm) * (1 - theta));
  return Math.exp(fresh - salted) * pressure;
}
