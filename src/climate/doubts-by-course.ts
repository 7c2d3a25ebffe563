// Courses that break off: a step that stays, and a while somewhere else, such as on the bench while it was read out.

import type {Doubt, LoggerPlace} from './doubt.ts';
import {type DoubtSettings, limitOf} from './doubt-rules.ts';
import type {Series} from './series.ts';

const HOUR_DAYS = 1 / 24;
/** A change within this is sudden. */
const SUDDEN_DAYS = 0.6 * HOUR_DAYS;
/** What a level is told from. */
const LEVEL_DAYS = 2 * HOUR_DAYS;
const LONGEST_AWAY_DAYS = 12 * HOUR_DAYS;
const degrees = (value: number) => `${Math.round(value * 10) / 10} °C`;

/** Steps between two readings after which the level stays where it went. */
export function jumps({atDays, temperatureC}: Series, settings: DoubtSettings): Doubt[] {
  const over = limitOf('jump', settings);
  if (over === undefined) return [];
  const found: Doubt[] = [];
  for (let row = 1; row < atDays.length; row++) {
    if (atDays[row]! - atDays[row - 1]! > SUDDEN_DAYS) continue;
    if (!(Math.abs(temperatureC[row]! - temperatureC[row - 1]!) > over)) continue;
    const before = levelOf(atDays, temperatureC, row - 1, -1);
    const after = levelOf(atDays, temperatureC, row, 1);
    if (!(Math.abs(after - before) > 0.75 * over)) continue;
    const what = `from ${degrees(before)} to ${degrees(after)} at once: was it moved, or a heater or lamp switched?`;
    found.push({rule: 'jump', first: row, last: row, what});
  }
  return found;
}

/**
 * Times of up to half a day that begin and end with a sudden change, or end with the readings, at another level than
 * before. What comes at the same hour of other days too is the unit's own day and night.
 */
export function awayFromItsPlace(
  {atDays, temperatureC}: Series,
  {hourOf}: LoggerPlace,
  settings: DoubtSettings,
): Doubt[] {
  const over = limitOf('bench', settings);
  if (over === undefined) return [];
  const found: Doubt[] = [];
  const edges = sudden(atDays, temperatureC, over);
  for (const [i, first] of edges.entries()) {
    if (first <= (found.at(-1)?.last ?? -1)) continue;
    const level = levelOf(atDays, temperatureC, first - 1, -1);
    if (Number.isNaN(level)) continue;
    const isAway = (row: number) => Math.abs(temperatureC[row]! - level) > over / 2;
    let last = first;
    while (
      last + 1 < atDays.length &&
      isAway(last + 1) &&
      atDays[last]! - atDays[first]! <= LONGEST_AWAY_DAYS
    )
      last++;
    if (atDays[last]! - atDays[first]! > LONGEST_AWAY_DAYS || last === first) continue;
    const isOpen = last === atDays.length - 1;
    const endsSuddenly = edges.slice(i + 1).some(edge => edge >= last - 2 && edge <= last + 2);
    if (!isOpen && !endsSuddenly) continue;
    const others = edges.filter(edge => isOtherDay(atDays[edge]! - atDays[first]!));
    if (others.some(edge => hoursApart(hourOf(atDays[edge]!), hourOf(atDays[first]!)) < 1)) continue;
    const what = `about ${degrees(temperatureC[Math.floor((first + last) / 2)]!)} after ${degrees(level)}${isOpen ? ', to the end of the file' : ', and back'}: did it lie on the bench?`;
    found.push({rule: 'bench', first, last, what});
  }
  return found;
}

/** Rows at which the temperature has changed by more than the limit within the time of a sudden change. */
function sudden(atDays: Float64Array, temperatureC: Float64Array, over: number): number[] {
  const rows: number[] = [];
  let from = 0;
  for (let row = 1; row < atDays.length; row++) {
    while (atDays[row]! - atDays[from]! > SUDDEN_DAYS) from++;
    const begins = from < row && Math.abs(temperatureC[row]! - temperatureC[from]!) > over;
    if (begins && (rows.length === 0 || rows.at(-1)! < from)) rows.push(from + 1);
  }
  return rows;
}

/** The median of the readings within two hours on one side, the row itself among them. */
function levelOf(atDays: Float64Array, temperatureC: Float64Array, row: number, side: 1 | -1): number {
  const near: number[] = [];
  for (
    let i = row;
    i >= 0 && i < atDays.length && Math.abs(atDays[i]! - atDays[row]!) <= LEVEL_DAYS;
    i += side
  )
    near.push(temperatureC[i]!);
  return medianOf(near);
}

export function medianOf(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function isOtherDay(days: number): boolean {
  return Math.abs(days) > 0.5 && Math.abs(days) < 5.5;
}

export function hoursApart(a: number, b: number): number {
  const apart = Math.abs(a - b);
  return Math.min(apart, 24 - apart);
}
