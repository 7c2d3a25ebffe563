// The mean daily course of a record, hour by hour of the local day, and the same day over and over.
import type {Civil} from '../records/civil.ts';
import {dosesBetween} from '../thermal/dose.ts';
import type {RateModel} from '../thermal/rate.ts';
import type {TemperatureTrace} from '../thermal/trace.ts';
import {timesOfDay} from './civil-times.ts';
import {along, type Mark, type Source, type Span} from './part.ts';

/** Mean temperature of each of the 24 hours. */
export type MeanDay = readonly number[];

const HOUR_DAYS = 1 / 24;
/** An hour of the day that was read for less than half an hour in all is not known. */
const ENOUGH_DAYS = 0.5 * HOUR_DAYS;

/** The dose of temperature itself is temperature times days: its mean follows. */
export const temperatureItself: RateModel = {
  ratePerDay: temperature => temperature,
  antiderivative: temperature => temperature ** 2 / 2,
};

/** The mean day of a record within a span; undefined where some hour of the day was never read. */
export function meanDay(record: TemperatureTrace, civil: Civil, span: Span): MeanDay | undefined {
  const sums = new Array<number>(24).fill(0);
  const read = new Array<number>(24).fill(0);
  const marks = hourMarks(midnights(civil, span));
  const {dose, coveredDays} = dosesBetween(
    record,
    temperatureItself,
    Float64Array.from(marks, mark => mark.at),
  );
  coveredDays.forEach((days, i) => {
    const {hour} = marks[i]!;
    sums[hour]! += dose[i]!;
    read[hour]! += days;
  });
  return read.every(days => days > ENOUGH_DAYS) ? sums.map((sum, hour) => sum / read[hour]!) : undefined;
}

/** A day that was read for less than so much of it has no mean to compare. */
const MOSTLY_READ = 0.9;

/** How unlike the means of the days of a record are: their standard deviation; undefined below two days. */
export function spreadOfDays(record: TemperatureTrace, civil: Civil, span: Span): number | undefined {
  const bounds = midnights(civil, span);
  const {dose, coveredDays} = dosesBetween(record, temperatureItself, Float64Array.from(bounds));
  const means = Array.from(dose).flatMap((sum, i) =>
    coveredDays[i]! > MOSTLY_READ ? [sum / coveredDays[i]!] : [],
  );
  if (means.length < 2) return undefined;
  const mean = means.reduce((sum, value) => sum + value, 0) / means.length;
  return Math.sqrt(means.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (means.length - 1));
}

/** The mean day again and again, each hour's mean at its middle, joined by straight lines. */
export function repeated(day: MeanDay, civil: Civil, mark: Mark): Source {
  return span => {
    const around = {fromDays: span.fromDays - HOUR_DAYS, toDays: span.toDays + HOUR_DAYS};
    const marks = hourMarks(midnights(civil, around)).slice(0, -1);
    const trace = {
      atDays: Float64Array.from(marks, ({at}) => at + HOUR_DAYS / 2),
      temperatureC: Float64Array.from(marks, ({hour}) => day[hour]!),
    };
    return along(trace, mark)(span);
  };
}

function midnights(civil: Civil, span: Span): number[] {
  return timesOfDay(civil, '00:00', span);
}

/** Each hour of each day, counted from midnight; the 25th of a day when clocks go back is like the 24th. */
function hourMarks(midnights: readonly number[]): {readonly at: number; readonly hour: number}[] {
  return midnights.flatMap((midnight, i) => {
    const next = midnights[i + 1];
    if (next === undefined) return [{at: midnight, hour: 0}];
    const hours = Math.round((next - midnight) * 24);
    return Array.from({length: hours}, (_, hour) => ({
      at: midnight + hour * HOUR_DAYS,
      hour: Math.min(hour, 23),
    }));
  });
}
