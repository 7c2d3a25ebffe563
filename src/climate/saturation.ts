// How much water vapour air can hold, and the temperature at which it holds just so much.

/** 0 °C in kelvin. */
export const ZERO_C_IN_K = 273.15;

/** Where the formulas hold and animals are reared, °C. */
export const AIR_C = {lowest: -40, highest: 60} as const;

const CRITICAL_K = 647.096;
const CRITICAL_KPA = 22_064;

/**
 * Saturation vapour pressure over plane liquid water, kPa; −40 to 60 °C.
 *
 * Saturation line of the IAPWS, Wagner and Pruss 1993, J. Phys. Chem. Ref. Data 22, 783, with τ = 1 − T/Tc (from
 * memory, checked against the CRC Handbook's table). Below 0 °C it stands for supercooled water, as humidity sensors
 * are calibrated to.
 */
export function saturationKPa(temperatureC: number): number {
  const kelvin = temperatureC + ZERO_C_IN_K;
  const tau = 1 - kelvin / CRITICAL_K;
  const sum =
    -7.85951783 * tau +
    1.84408259 * tau ** 1.5 -
    11.7866497 * tau ** 3 +
    22.6807411 * tau ** 3.5 -
    15.9618719 * tau ** 4 +
    1.80122502 * tau ** 7.5;
  return CRITICAL_KPA * Math.exp((CRITICAL_K / kelvin) * sum);
}

/**
 * The same by the short formula in which meteorology defines dew point and wet bulb: 0.6112·exp(17.62 t/(243.12 + t)),
 * WMO-No. 8, annex 4.B. Up to 0.3 per cent lower at 25 to 30 °C, which shares of one another hardly feel.
 */
export function saturationWmoKPa(temperatureC: number): number {
  return 0.6112 * Math.exp((17.62 * temperatureC) / (243.12 + temperatureC));
}

/** The temperature, °C, to which air must cool to be saturated. WMO-No. 8, annex 4.B. @param rhPercent above 0 */
export function dewPointC(temperatureC: number, rhPercent: number): number {
  const exponent = Math.log(((rhPercent / 100) * saturationWmoKPa(temperatureC)) / 0.6112);
  return (243.12 * exponent) / (17.62 - exponent);
}
