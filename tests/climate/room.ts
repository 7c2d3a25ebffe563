// Small invented rooms for courses: units, loggers and what was read.
import type {CourseInput} from '../../src/climate/course-input.ts';
import type {Series} from '../../src/climate/series.ts';
import {MS_PER_DAY} from '../../src/records/entry.ts';
import type {Extremes, HandReading, History, Logger, Mask, Unit} from '../../src/records/state.ts';
import {civil, days} from './fake-civil.ts';

export interface RoomSketch {
  readonly from: string;
  readonly now: string;
  readonly to: string;
  /** Units by code, each with its changes: a local instant (or `always`) and the unit from then on. */
  readonly units: Readonly<Record<string, readonly (readonly [string, Omit<Unit, 'code'>])[]>>;
  readonly loggers?: Readonly<Record<string, Pick<Logger, 'kind' | 'maxGapHours'>>>;
  readonly readings?: Readonly<Record<string, Series>>;
  readonly stays?: readonly (readonly [string, string])[];
  readonly hand?: readonly (readonly [logger: string, at: string, temperature: number])[];
  readonly extremes?: readonly (readonly [
    logger: string,
    from: string,
    to: string,
    min: number,
    max: number,
  ])[];
  readonly masks?: readonly (readonly [logger: string, from: string, to: string, lift: boolean])[];
  readonly holdC?: number;
  readonly futures?: number;
}

const ms = (local: string) => (local === 'always' ? Number.NEGATIVE_INFINITY : days(local) * MS_PER_DAY);

export function courseInput(sketch: RoomSketch): CourseInput {
  const codes = Object.keys(sketch.units);
  const loggers = new Map<string, History<Logger>>();
  for (const [code, facts] of Object.entries(sketch.loggers ?? {}))
    loggers.set(code, [{from: Number.NEGATIVE_INFINITY, value: {code, ...facts}}]);
  const units = new Map<string, History<Unit>>();
  for (const [code, changes] of Object.entries(sketch.units))
    units.set(
      code,
      changes.map(([from, facts]) => ({from: ms(from), value: {code, ...facts}})),
    );
  return {
    stays: (sketch.stays ?? [[sketch.from, codes[0]!]]).map(([from, unit]) => ({unit, from: ms(from)})),
    room: {
      units,
      loggers,
      masks: (sketch.masks ?? []).map(
        ([logger, from, to, lift]): Mask => ({logger, from: ms(from), to: ms(to), lift, why: 'invented'}),
      ),
      handReadings: (sketch.hand ?? []).map(
        ([logger, at, temperature]): HandReading => ({logger, at: ms(at), temperature, entry: 'e'}),
      ),
      extremes: (sketch.extremes ?? []).map(
        ([logger, from, to, minimum, maximum]): Extremes => ({
          logger,
          from: ms(from),
          to: ms(to),
          minimum,
          maximum,
          entry: 'e',
        }),
      ),
    },
    readings: logger => sketch.readings?.[logger],
    civil,
    fromDays: days(sketch.from),
    nowDays: days(sketch.now),
    toDays: days(sketch.to),
    holdC: sketch.holdC,
    futures: sketch.futures,
  };
}

/** Readings every so many minutes from one local instant to another, its end included. */
export function series(
  from: string,
  to: string,
  minutes: number,
  temperature: (atDays: number) => number,
): Series {
  const steps = Math.floor(((days(to) - days(from)) * 1440) / minutes + 1e-6);
  const atDays = Float64Array.from({length: steps + 1}, (_, i) => days(from) + (i * minutes) / 1440);
  return {
    atDays,
    temperatureC: atDays.map(temperature),
    rhPercent: new Float64Array(steps + 1).fill(Number.NaN),
  };
}

/** Several spells of readings of one logger. */
export function spells(...parts: readonly Series[]): Series {
  const column = (name: keyof Series) => Float64Array.from(parts.flatMap(part => [...part[name]]));
  return {atDays: column('atDays'), temperatureC: column('temperatureC'), rhPercent: column('rhPercent')};
}
