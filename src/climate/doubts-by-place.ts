// Readings that are true of the sensor and not of the animals: in the sun, out of the water, wet.

import type {Doubt, LoggerPlace} from './doubt.ts';
import {type DoubtSettings, limitOf} from './doubt-rules.ts';
import {medianOf} from './doubts-by-course.ts';
import {runs} from './doubts-by-value.ts';
import type {Series} from './series.ts';

const HOUR_DAYS = 1 / 24;
const degrees = (value: number) => `${Math.round(value * 10) / 10} °C`;

/** Sun falls on a logger by day only. */
const DAYLIGHT = {from: 5, to: 21} as const;
const DAYS_AROUND = 4;
const FEWEST_DAYS = 3;
const LONGEST_SUN_DAYS = 6 * HOUR_DAYS;
const SHORTEST_SUN_DAYS = 0.25 * HOUR_DAYS;

/** Warmer by more than the limit than the median of the same hour of the days around, by daylight, for up to six hours. */
export function tooWarmByDay(series: Series, {hourOf}: LoggerPlace, settings: DoubtSettings): Doubt[] {
  const over = limitOf('sun', settings);
  if (over === undefined) return [];
  const {atDays, temperatureC} = series;
  const usual = hourlyMeans(series);
  const excess = temperatureC.map((value, row) => {
    const hour = hourOf(atDays[row]!);
    if (hour < DAYLIGHT.from || hour > DAYLIGHT.to) return Number.NaN;
    const around = DAY_STEPS.flatMap(days => usual.get(hourNumber(atDays[row]! + days)) ?? []);
    return around.length < FEWEST_DAYS ? Number.NaN : value - medianOf(around);
  });
  return runs(excess, value => value > over).flatMap(({first, last}): Doubt[] => {
    const days = atDays[last]! - atDays[first]!;
    if (days < SHORTEST_SUN_DAYS || days > LONGEST_SUN_DAYS) return [];
    const warmest = excess.subarray(first, last + 1).reduce((most, value) => Math.max(most, value), 0);
    const what = `up to ${degrees(warmest)} above the same hour of the days around: was it in the sun or by a lamp?`;
    return [{rule: 'sun', first, last, what}];
  });
}

const DAY_STEPS = Array.from({length: 2 * DAYS_AROUND + 1}, (_, i) => i - DAYS_AROUND).filter(
  days => days !== 0,
);

function hourNumber(atDays: number): number {
  return Math.floor(atDays * 24);
}

function hourlyMeans({atDays, temperatureC}: Series): Map<number, number> {
  const sums = new Map<number, {sum: number; rows: number}>();
  atDays.forEach((at, row) => {
    const hour = hourNumber(at);
    const found = sums.get(hour) ?? {sum: 0, rows: 0};
    sums.set(hour, {sum: found.sum + temperatureC[row]!, rows: found.rows + 1});
  });
  return new Map([...sums].map(([hour, {sum, rows}]) => [hour, sum / rows]));
}

/** Litres of water do not change so fast; within half an hour to two hours on both sides it does as air does. */
export function outOfWater({atDays, temperatureC}: Series, settings: DoubtSettings): Doubt[] {
  const over = limitOf('out-of-water', settings);
  if (over === undefined) return [];
  const pace = new Float64Array(atDays.length);
  for (let from = 0, row = 1; row < atDays.length; row++) {
    while (atDays[row]! - atDays[from]! > HOUR_DAYS) from++;
    const hours = (atDays[row]! - atDays[from]!) * 24;
    if (hours >= 0.25) pace[row] = Math.abs(temperatureC[row]! - temperatureC[from]!) / hours;
  }
  return joinedWithin(
    atDays,
    runs(pace, value => value > over),
    2 * HOUR_DAYS,
  ).map(({first, last}) => {
    const fastest = pace.subarray(first, last + 1).reduce((most, value) => Math.max(most, value), 0);
    const what = `changed by ${Math.round(fastest * 10) / 10} °C an hour, as air does: is it out of the water?`;
    return {rule: 'out-of-water', first, last, what};
  });
}

const SATURATED_PERCENT = 99;

/** Air in a unit is seldom saturated for long; a sensor with dew on it always is. */
export function wetSensor({atDays, rhPercent}: Series, settings: DoubtSettings): Doubt[] {
  const hours = limitOf('wet', settings);
  if (hours === undefined) return [];
  return runs(rhPercent, value => value >= SATURATED_PERCENT).flatMap(({first, last}): Doubt[] => {
    const long = (atDays[last]! - atDays[first]!) * 24;
    if (long < hours) return [];
    const what = `${SATURATED_PERCENT} % or more for ${Math.round(long)} h: is the sensor wet, or in water?`;
    return [{rule: 'wet', first, last, what}];
  });
}

/** Runs that lie closer together than so many days are one. */
function joinedWithin(
  atDays: Float64Array,
  found: readonly {readonly first: number; readonly last: number}[],
  days: number,
): {readonly first: number; readonly last: number}[] {
  const whole: {first: number; last: number}[] = [];
  for (const run of found) {
    const before = whole.at(-1);
    if (before !== undefined && atDays[run.first]! - atDays[before.last]! <= days) before.last = run.last;
    else whole.push({...run});
  }
  return whole;
}
