// How much warmer or cooler the water of a unit is than its logger reads beside it, from where people measured both.
import {MS_PER_DAY} from '../records/entry.ts';
import type {Unit} from '../records/state.ts';
import type {TemperatureTrace} from '../thermal/trace.ts';
import type {CourseInput} from './course-input.ts';
import type {Instruments} from './instruments.ts';
import type {Span} from './part.ts';
import {regimesOf, sameClimate, shared} from './regime.ts';

export interface WaterOffset {
  readonly unit: string;
  readonly logger: string;
  /** Mean of the water less the logger, and the standard deviation of the differences; 0 for a single one. */
  readonly offsetC: number;
  readonly sdC: number;
  /** Measurements that the logger, or a person at it, has a reading beside. */
  readonly n: number;
  /** The course goes by it; else it goes by the logger as it is. */
  readonly used: boolean;
}

/** From so many measurements on the water is gone by. Common practice, no source. */
export const ENOUGH_WATER = 3;
/** A reading of the logger belongs to a measurement of the water that is no further from it. Common practice, no source. */
const BESIDE_DAYS = 1 / 24;
/** Measurements from so long before the course are of use: readings are fetched from then on. */
const BEFORE_DAYS = 30;

/**
 * The units with what their water taught in place of an offset of their own. An offset that a person gave, 0 too, stays:
 * then nothing is learned.
 * @returns the units, and what was learned of the last unit of the stays, as it stands now
 */
export function withWaterOffsets(
  input: CourseInput,
  instruments: Instruments,
): {readonly units: CourseInput['room']['units']; readonly water: WaterOffset | undefined} {
  const {stays, room} = input;
  const codes = [...new Set(stays.map(({unit}) => unit))].filter(code =>
    room.water?.some(({unit, temperature}) => unit === code && temperature !== undefined),
  );
  if (codes.length === 0) return {units: room.units, water: undefined};
  const units = new Map(room.units);
  let water: WaterOffset | undefined;
  for (const code of codes) {
    const history = room.units.get(code) ?? [];
    const regimes = regimesOf(history, sameClimate).map(regime => ({
      ...regime,
      learned: learnedIn(code, regime.unit, regime, input, instruments),
    }));
    const settled = history.map(({from, value}) => {
      const {learned} = regimes.findLast(({fromDays}) => fromDays * MS_PER_DAY <= from)!;
      const isOpen = value.type === 'aquarium' && value.offsetC === undefined;
      if (!isOpen || learned === undefined) return {from, value, learned: undefined};
      return {from, value: learned.used ? {...value, offsetC: learned.offsetC} : value, learned};
    });
    units.set(code, settled);
    if (code === stays.at(-1)?.unit)
      water = settled.findLast(({from}) => from <= input.nowDays * MS_PER_DAY)?.learned;
  }
  return {units, water};
}

function learnedIn(
  code: string,
  {logger}: Unit,
  regime: Span,
  input: CourseInput,
  instruments: Instruments,
): WaterOffset | undefined {
  if (logger === undefined) return undefined;
  const span = shared(regime, {fromDays: input.fromDays - BEFORE_DAYS, toDays: input.nowDays});
  const about = {fromDays: span.fromDays - BESIDE_DAYS, toDays: span.toDays + BESIDE_DAYS};
  const traces = [instruments.automatic, instruments.hand].map(read => read(logger, about, input.nowDays));
  const differences = (input.room.water ?? []).flatMap(({unit, at, temperature}) => {
    const atDays = at / MS_PER_DAY;
    if (unit !== code || temperature === undefined || atDays < span.fromDays || atDays > span.toDays)
      return [];
    const beside = traces.map(trace => readBeside(trace, atDays)).find(value => value !== undefined);
    return beside === undefined ? [] : [temperature - beside];
  });
  const n = differences.length;
  if (n === 0) return undefined;
  const offsetC = differences.reduce((sum, value) => sum + value, 0) / n;
  const squares = differences.reduce((sum, value) => sum + (value - offsetC) ** 2, 0);
  const needed = input.waterAs === 'measured' ? 1 : input.waterAs === 'air' ? Infinity : ENOUGH_WATER;
  return {unit: code, logger, offsetC, sdC: Math.sqrt(squares / Math.max(1, n - 1)), n, used: n >= needed};
}

/** What was read nearest to an instant, within an hour; undefined where nothing was. */
export function readBeside(
  {atDays, temperatureC}: Pick<TemperatureTrace, 'atDays' | 'temperatureC'>,
  instantDays: number,
): number | undefined {
  let nearest: number | undefined;
  let apart = BESIDE_DAYS;
  atDays.forEach((at, row) => {
    if (Math.abs(at - instantDays) >= apart || Number.isNaN(temperatureC[row]!)) return;
    nearest = temperatureC[row]!;
    apart = Math.abs(at - instantDays);
  });
  return nearest;
}
