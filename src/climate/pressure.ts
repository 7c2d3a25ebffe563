// Air pressure where nobody measured it.

/** Standard pressure at sea level, kPa. */
export const SEA_LEVEL_KPA = 101.325;

/**
 * Pressure of the standard atmosphere at an altitude, kPa: 101.325·(1 − 2.25577e-5 z)^5.2559, z in metres,
 * −5000 to 11 000 m. ASHRAE Handbook Fundamentals 2017, chapter 1, eq. 3 (from memory; checked against its table 1).
 */
export function standardPressureKPa(altitudeM: number): number {
  return SEA_LEVEL_KPA * (1 - 2.25577e-5 * altitudeM) ** 5.2559;
}
