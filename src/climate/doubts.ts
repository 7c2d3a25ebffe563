// Readings that are hardly true: hits of the rules, found anew whenever readings are looked at.

import type {Doubt, LoggerPlace} from './doubt.ts';
import {type DoubtSettings, doubtRules} from './doubt-rules.ts';
import {awayFromItsPlace, jumps} from './doubts-by-course.ts';
import {outOfWater, tooWarmByDay, wetSensor} from './doubts-by-place.ts';
import {impossible, spikes, stuck} from './doubts-by-value.ts';
import {rowsOf, type Series} from './series.ts';

/** Every hit in a series, in order of time; what cannot be is left out before courses are judged. */
export function doubtsOf(series: Series, place: LoggerPlace, settings: DoubtSettings = {}): Doubt[] {
  const certain = doubtedValues(series, settings);
  const away = new Set(certain.flatMap(({first, last}) => rowsFrom(first, last)));
  const left = Array.from(series.atDays.keys()).filter(row => !away.has(row));
  const rest = rowsOf(series, left);
  const judged = [
    ...jumps(rest, settings),
    ...awayFromItsPlace(rest, place, settings),
    ...tooWarmByDay(rest, place, settings),
    ...(place.inWater ? outOfWater(rest, settings) : wetSensor(rest, settings)),
  ].map(doubt => ({...doubt, first: left[doubt.first]!, last: left[doubt.last]!}));
  return [...certain, ...judged].sort((a, b) => a.first - b.first || a.last - b.last);
}

/**
 * The series without what cannot be; itself where all can.
 * @param isTrusted a person's word that a reading is true all the same
 */
export function cleaned(
  series: Series,
  settings: DoubtSettings,
  isTrusted: (atDays: number) => boolean,
): Series {
  const away = doubtedValues(series, settings);
  if (away.length === 0) return series;
  const doubted = new Uint8Array(series.atDays.length);
  for (const {first, last} of away) doubted.fill(1, first, last + 1);
  return rowsOf(
    series,
    Array.from(series.atDays.keys()).filter(row => doubted[row] === 0 || isTrusted(series.atDays[row]!)),
  );
}

/** Hits of the rules that set readings aside. */
function doubtedValues(series: Series, settings: DoubtSettings): Doubt[] {
  const values = impossible(series, settings);
  return [...values, ...spikes(series, settings), ...stuck(series, settings)].filter(
    ({rule}) => doubtRules[rule].consequence === 'set-aside',
  );
}

function rowsFrom(first: number, last: number): number[] {
  return Array.from({length: last - first + 1}, (_, i) => first + i);
}
