// Values that cannot be, whatever the course around them: impossible, a spike, stuck.

import type {Doubt} from './doubt.ts';
import {type DoubtSettings, limitOf} from './doubt-rules.ts';
import type {Series} from './series.ts';

const HOUR_DAYS = 1 / 24;
const degrees = (value: number) => `${Math.round(value * 10) / 10} °C`;

/** Runs of rows below the one limit or above the other. */
export function impossible({temperatureC}: Series, settings: DoubtSettings): Doubt[] {
  const lowest = limitOf('too-cold', settings) ?? Number.NEGATIVE_INFINITY;
  const highest = limitOf('too-warm', settings) ?? Number.POSITIVE_INFINITY;
  const below = runs(temperatureC, value => value < lowest).map(run => ({
    ...run,
    rule: 'too-cold' as const,
    what: `${degrees(temperatureC[run.first]!)}, below ${lowest} °C`,
  }));
  const above = runs(temperatureC, value => value > highest).map(run => ({
    ...run,
    rule: 'too-warm' as const,
    what: `${degrees(temperatureC[run.first]!)}, above ${highest} °C`,
  }));
  return [...below, ...above];
}

/** Neighbours further apart tell nothing of what lies between. */
const NEIGHBOUR_DAYS = 1.2 * HOUR_DAYS;
const LONGEST_SPIKE = 2;

/** One or two readings off both neighbours by more than the limit, while the neighbours agree within half of it. */
export function spikes({atDays, temperatureC}: Series, settings: DoubtSettings): Doubt[] {
  const over = limitOf('spike', settings);
  if (over === undefined) return [];
  const found: Doubt[] = [];
  for (let first = 1; first < atDays.length - 1; first++) {
    const before = temperatureC[first - 1]!;
    const off = temperatureC[first]! - before;
    if (!(Math.abs(off) > over)) continue;
    for (let last = first; last < first + LONGEST_SPIKE && last < atDays.length - 1; last++) {
      const after = temperatureC[last + 1]!;
      const isNear = atDays[last + 1]! - atDays[first - 1]! <= (last - first + 2) * NEIGHBOUR_DAYS;
      const isAlone = (temperatureC[last]! - before) * Math.sign(off) > over;
      if (!isNear || !isAlone || !(Math.abs(after - before) < over / 2)) continue;
      const what = `${degrees(temperatureC[first]!)} between ${degrees(before)} and ${degrees(after)}`;
      found.push({rule: 'spike', first, last, what});
      first = last;
      break;
    }
  }
  return found;
}

/** A coarse sensor repeats values too: a run counts only where it is so many times its usual run. */
const TIMES_USUAL = 8;
const FEWEST_ROWS = 8;

/** The same temperature, and humidity where there is one, for longer than the limit and than is usual. */
export function stuck(series: Series, settings: DoubtSettings): Doubt[] {
  const hours = limitOf('stuck', settings);
  const {atDays, temperatureC} = series;
  if (hours === undefined || atDays.length < FEWEST_ROWS) return [];
  const same = runsOfSame(series);
  const usualDays = (atDays.at(-1)! - atDays[0]!) / same.length;
  return same.flatMap(({first, last}): Doubt[] => {
    const days = atDays[last]! - atDays[first]!;
    const isLong = days >= hours * HOUR_DAYS && days >= TIMES_USUAL * usualDays;
    if (!isLong || last - first + 1 < FEWEST_ROWS) return [];
    const what = `${degrees(temperatureC[first]!)} without a change for ${Math.round(days * 24)} h`;
    // The first of them was still read.
    return [{rule: 'stuck', first: first + 1, last, what}];
  });
}

interface Run {
  readonly first: number;
  readonly last: number;
}

function runsOfSame({temperatureC, rhPercent}: Series): Run[] {
  const found: Run[] = [];
  for (let first = 0, next = 1; first < temperatureC.length; first = next) {
    next = first + 1;
    while (
      next < temperatureC.length &&
      temperatureC[next] === temperatureC[first] &&
      Object.is(rhPercent[next], rhPercent[first])
    )
      next++;
    found.push({first, last: next - 1});
  }
  return found;
}

/** Runs of values that are so. */
export function runs(values: Float64Array, isSo: (value: number, row: number) => boolean): Run[] {
  const found: Run[] = [];
  for (let row = 0; row < values.length; row++) {
    if (!isSo(values[row]!, row)) continue;
    const first = row;
    while (row + 1 < values.length && isSo(values[row + 1]!, row + 1)) row++;
    found.push({first, last: row});
  }
  return found;
}
