// Two loggers in one place, compared over the days in which both read.
import {type Agreement, agreementOf} from '../climate/agreement.ts';
import type {Series} from '../climate/series.ts';
import {Refusal} from '../records/refusal.ts';
import type {TemperatureTrace} from '../thermal/trace.ts';
import type {Desk} from './desk.ts';
import {loggerNamed} from './logger-readings.ts';
import {trustedReadings} from './trusted-readings.ts';

/** As `teneral readings LOGGER --against OTHER` answers. */
export interface Comparison {
  readonly logger: string;
  readonly against: string;
  readonly temperature: Agreement;
  /** Null where not both read humidity. */
  readonly humidity: Agreement | null;
}

/** @throws Refusal where a logger is unknown, or they never read together */
export async function compareLoggers(
  desk: Desk,
  logger: string,
  against: string,
  fromDays: number,
  toDays: number,
): Promise<Comparison> {
  const [one, other] = await Promise.all([
    trusted(desk, logger, fromDays, toDays),
    trusted(desk, against, fromDays, toDays),
  ]);
  const temperature = agreementOf(
    trace(one.series, one.series.temperatureC, one.gapDays),
    trace(other.series, other.series.temperatureC, other.gapDays),
  );
  if (temperature === undefined)
    throw new Refusal(
      `${logger} and ${against} have no time in which both read`,
      'readings',
      'Put them side by side for a day or more and import both, or give other --from and --to.',
    );
  const humidity = agreementOf(
    trace(one.series, one.series.rhPercent, one.gapDays),
    trace(other.series, other.series.rhPercent, other.gapDays),
  );
  return {logger, against, temperature, humidity: humidity ?? null};
}

async function trusted(desk: Desk, code: string, fromDays: number, toDays: number) {
  const {maxGapHours} = loggerNamed(desk, code);
  return {series: await trustedReadings(desk, code, fromDays, toDays), gapDays: maxGapHours / 24};
}

/** One of its columns where it has a value, joined over pauses up to its allowed gap. */
function trace({atDays}: Series, values: Float64Array, maxGapDays: number): TemperatureTrace {
  const rows = Array.from(atDays.keys()).filter(row => !Number.isNaN(values[row]!));
  return {
    atDays: Float64Array.from(rows, row => atDays[row]!),
    temperatureC: Float64Array.from(rows, row => values[row]!),
    maxGapDays,
  };
}
