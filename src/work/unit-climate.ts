// The climate of a unit in figures: by day, by class of temperature, by hour of the day, and its water.
import type {Course} from '../climate/course.ts';
import {FILLED} from '../climate/course-summary.ts';
import {type DaySummary, daySummaries} from '../climate/day-summaries.ts';
import {type Evaporation, evaporationOf} from '../climate/evaporation.ts';
import {type HumiditySummary, humiditySummaries} from '../climate/humidity-summaries.ts';
import {meanDay} from '../climate/mean-day.ts';
import {type TimeInClass, timeByClass} from '../climate/time-by-class.ts';
import type {Day} from '../records/civil.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import type {WaterReading} from '../records/state.ts';
import {midnights} from './day-bounds.ts';
import type {Desk} from './desk.ts';
import type {UnitCourse} from './unit-course.ts';

export interface ClimateDay extends DaySummary {
  readonly day: Day;
  /** Share of the day that was filled from elsewhere, and so is an estimate. */
  readonly estimated: number;
  readonly humidity: HumiditySummary | null;
}

export interface UnitClimate {
  readonly days: readonly ClimateDay[];
  /** Up to now. */
  readonly classes: readonly TimeInClass[];
  /** Mean of each of the 24 hours up to now; null where some hour is not known. */
  readonly meanDay: readonly number[] | null;
  readonly water: {
    readonly readings: readonly WaterReading[];
    readonly evaporation: Evaporation | null;
  } | null;
}

/** @param widthC of the classes */
export function unitClimate(
  {unit, course, read}: UnitCourse,
  {state, civil, now}: Desk,
  {fromDays, toDays}: {readonly fromDays: number; readonly toDays: number},
  widthC: number,
): UnitClimate {
  const bounds = midnights(civil, fromDays, toDays);
  const humidity = read === undefined ? [] : humiditySummaries(read, bounds);
  const past = {fromDays, toDays: Math.min(toDays, now / MS_PER_DAY)};
  const within = <At extends {readonly at: number}>({at}: At) =>
    at >= fromDays * MS_PER_DAY && at <= toDays * MS_PER_DAY;
  const water = state.water.filter(reading => reading.unit === unit.code && within(reading));
  const care = state.care.filter(done => done.unit === unit.code && within(done));
  return {
    days: daySummaries(course, bounds).map((summary, i) => ({
      day: civil.dayOf(summary.fromDays * MS_PER_DAY),
      ...summary,
      estimated: filledWithin(course, summary),
      humidity: humidity[i] ?? null,
    })),
    classes: timeByClass(course, past, widthC),
    meanDay: past.toDays > past.fromDays ? (meanDay(known(course), civil, past) ?? null) : null,
    water:
      unit.type === 'aquarium' || water.length > 0
        ? {readings: water, evaporation: evaporationOf(water, care) ?? null}
        : null,
  };
}

function filledWithin({stretches}: Course, {fromDays, toDays}: DaySummary): number {
  const filled = stretches.reduce((sum, stretch) => {
    const days = Math.min(stretch.toDays, toDays) - Math.max(stretch.fromDays, fromDays);
    return FILLED.has(stretch.basis) && days > 0 ? sum + days : sum;
  }, 0);
  return filled / (toDays - fromDays);
}

/** A course as a trace; unknown time carries no dose. */
function known({atDays, temperatureC}: Course) {
  return {atDays, temperatureC};
}
