// A humidity sensor checked over a salt solution, from what it logged there.
import {Refusal} from '../records/refusal.ts';
import {airOverSalt, type SaltAnswer} from './air.ts';
import type {Desk} from './desk.ts';
import {loggerReadings} from './logger-readings.ts';

export interface SaltTest {
  readonly logger: string;
  readonly salt: SaltAnswer;
  /** Mean over the readings that count, °C. */
  readonly temperature: number;
  readonly readings: number;
  /** Warmest less coolest, °C. */
  readonly steadyC: number;
}

/** The second half of the time counts: before, the box comes to rest. @throws Refusal where nothing was logged then */
export async function saltTest(
  desk: Desk,
  code: string,
  formula: string,
  fromDays: number,
  toDays: number,
): Promise<SaltTest> {
  const {series} = await loggerReadings(desk, code, (fromDays + toDays) / 2, toDays);
  const rows = Array.from(series.atDays.keys()).filter(
    row => !Number.isNaN(series.rhPercent[row]! + series.temperatureC[row]!),
  );
  if (rows.length === 0)
    throw new Refusal(
      `${code} has no temperature with a humidity in this time`,
      'readings',
      'Give --from and --to of the time over the salt, and import its file first.',
    );
  const mean = (values: Float64Array) => rows.reduce((sum, row) => sum + values[row]!, 0) / rows.length;
  const temperatures = rows.map(row => series.temperatureC[row]!);
  const temperature = mean(series.temperatureC);
  return {
    logger: code,
    salt: airOverSalt(formula, temperature, mean(series.rhPercent)),
    temperature,
    readings: rows.length,
    steadyC: Math.max(...temperatures) - Math.min(...temperatures),
  };
}
