// What the water of a unit taught, in words: how unlike the air it is, what the dates go by, and how to have it otherwise.
import {ENOUGH_WATER, type WaterOffset} from '../climate/water-offset.ts';
import {instantWords} from '../exchange/time-words.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import type {Desk} from './desk.ts';
import {halfOf, type Outlook} from './outlook.ts';

/** "2.35 ± 0.13 °C cooler than L1, in 4 measurements" */
export function waterOffsetWords({offsetC, sdC, n, logger}: WaterOffset): string {
  const band = n < 2 ? '' : ` ± ${sdC.toFixed(2)}`;
  const side = offsetC < 0 ? 'cooler' : 'warmer';
  return `${Math.abs(offsetC).toFixed(2)}${band} °C ${side} than ${logger}, in ${n} measurement${n === 1 ? '' : 's'}`;
}

/** What a person may do about it. */
export function waterRefusalWords({unit, used}: WaterOffset): string {
  return used
    ? `to go by the air all the same: teneral unit ${unit} --offset 0`
    : `measured ${ENOUGH_WATER} times, the water is gone by`;
}

/** What a forecast says of it; undefined where no water was measured. */
export function waterWords({water, forecast}: Outlook, {civil, now}: Desk): string | undefined {
  if (water === null) return undefined;
  const {used, otherwiseDays} = water;
  const half = halfOf(forecast);
  const [by, notBy] = used ? ['water', 'air'] : ['air', 'water'];
  const said = `${waterOffsetWords(water)}; the dates go by the ${by}`;
  if (half === null || otherwiseDays === null) return `${said}; ${waterRefusalWords(water)}`;
  const days = otherwiseDays - half;
  const apart = `${Math.abs(days).toFixed(1)} days ${used ? 'too ' : ''}${days < 0 ? (used ? 'early' : 'earlier') : used ? 'late' : 'later'}`;
  return `${said}; by the ${notBy} half would be out ${instantWords(otherwiseDays * MS_PER_DAY, civil, now)}, ${apart}; ${waterRefusalWords(water)}`;
}
