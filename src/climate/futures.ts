// What may come after the readings: a unit's recent days, drawn again and again into an ensemble of futures.
import {dosesBetween} from '../thermal/dose.ts';
import type {TemperatureTrace} from '../thermal/trace.ts';
import type {CourseInput} from './course-input.ts';
import type {Instruments} from './instruments.ts';
import {temperatureItself} from './mean-day.ts';
import {along, type Source, type Span} from './part.ts';
import {regimeOf, type Standing, sameClimate, shared} from './regime.ts';
import {setPointsOf} from './set-points.ts';
import {lastReadDays, readSources, recordOf} from './unit-record.ts';

/** Days that may come, and many orders in which they may come. */
export interface Futures {
  /** Where what is known ends. */
  readonly fromDays: number;
  /** Whole days of the unit's record, each from the time of day at which the futures begin; time runs from 0 to 1. */
  readonly days: readonly TemperatureTrace[];
  /** For every future, which of the days comes first, second, and so on. */
  readonly orders: readonly Uint16Array[];
  /** Days among these that earlier years of the unit gave. */
  readonly ofEarlierYears: number;
}

/** How many futures a forecast is taken over. */
export const USUAL_FUTURES = 50;

/** Days of the unit's own record that are drawn from. */
const RECENT_DAYS = 14;
const FEWEST_DAYS = 3;
/**
 * Weather holds: a fortnight says no more of the level to come than so many independent days do, so each future draws
 * so many days first and lives through those. Common practice, no source.
 */
const INDEPENDENT_DAYS = 5;

/** What a unit at the temperature of its surroundings has of the present weather is half forgotten after so long. */
const HALF_FORGOTTEN_DAYS = 7;
const EARLIER_YEARS = 3;
const DAYS_A_YEAR = 365.25;
/** A day of an earlier year may stand for any day this near to its date. */
const ABOUT_DATE_DAYS = 7;
/** Readings from so long ago are of use. */
export const EARLIER_DAYS = EARLIER_YEARS * DAYS_A_YEAR + ABOUT_DATE_DAYS;
/** So long a run of an earlier year is kept together. */
const RUN_DAYS = 7;

/**
 * The futures of a unit as it stands: always the same for the same record. Undefined where fewer than three whole days
 * were read. At the temperature of its surroundings the unit's recent days give way to the same dates of its earlier
 * years, as far as the room holds them.
 */
export function futuresOf(
  input: CourseInput,
  instruments: Instruments,
  standing: Standing,
): Futures | undefined {
  const {futures: size = 0, toDays} = input;
  const {fromDays} = standing;
  if (size === 0 || input.holdC !== undefined) return undefined;
  const regime = regimeOf(input.room.units, standing, sameClimate);
  const sources = readSources(input, instruments, standing);
  const lastRead = lastReadDays(input, instruments, standing);
  // Whole days before the future begins, so that times of day agree.
  const anchor = fromDays - Math.max(0, Number.isFinite(lastRead) ? Math.ceil(fromDays - lastRead) : 0);

  const recent = wholeDays(sources, shared(regime, {fromDays: anchor - RECENT_DAYS, toDays: anchor}), anchor);
  if (recent.size < FEWEST_DAYS) return undefined;
  const isAmbient = setPointsOf(standing.unit) === undefined;
  const past = {
    fromDays: fromDays - EARLIER_DAYS,
    toDays: anchor - RECENT_DAYS,
  };
  const earlier = isAmbient
    ? wholeDays(sources, shared(regime, past), anchor)
    : new Map<number, TemperatureTrace>();
  const numbers = [...recent.keys(), ...earlier.keys()];
  const places = new Map(numbers.map((number, place) => [number, place] as const));
  const length = Math.max(0, Math.ceil(toDays - fromDays));
  return {
    fromDays,
    days: [...recent.values(), ...earlier.values()],
    orders: ordersOf(size, length, recent.size, (ahead, years, about) =>
      places.get(Math.round(ahead + fromDays - anchor) - Math.round(years * DAYS_A_YEAR) + about),
    ),
    ofEarlierYears: earlier.size,
  };
}

/** A temperature throughout, or one for so many days and then another. */
export type Held = number | {readonly firstC: number; readonly afterDays: number; readonly thenC: number};

/** One future for each of several temperatures that might be held. */
export function heldFutures(held: readonly Held[], fromDays: number, toDays: number): Futures {
  const length = Math.max(1, Math.ceil(toDays - fromDays));
  const days: TemperatureTrace[] = [];
  const orders = held.map(each => {
    const place = days.length;
    if (typeof each === 'number') {
      days.push(flatDay(each));
      return new Uint16Array(length).fill(place);
    }
    const {firstC, afterDays, thenC} = each;
    const whole = Math.floor(afterDays);
    days.push(flatDay(firstC), stepDay(firstC, afterDays - whole, thenC), flatDay(thenC));
    return Uint16Array.from({length}, (_, day) => place + (day < whole ? 0 : day === whole ? 1 : 2));
  });
  return {fromDays, days, orders, ofEarlierYears: 0};
}

function flatDay(celsius: number): TemperatureTrace {
  return {atDays: Float64Array.of(0, 1), temperatureC: Float64Array.of(celsius, celsius)};
}

/** A day on which the temperature changes at a part of it. */
function stepDay(firstC: number, part: number, thenC: number): TemperatureTrace {
  if (part === 0) return flatDay(thenC);
  return {
    atDays: Float64Array.of(0, part, part, 1),
    temperatureC: Float64Array.of(firstC, firstC, thenC, thenC),
  };
}

/** Days that were read from beginning to end, by how many days after the anchor they begin (so below 0). */
function wholeDays(sources: readonly Source[], span: Span, anchor: number): Map<number, TemperatureTrace> {
  const days = new Map<number, TemperatureTrace>();
  if (!(span.toDays > span.fromDays)) return days;
  const record = recordOf(sources, span);
  const first = Math.ceil(span.fromDays - anchor - ROUNDING);
  const last = Math.floor(span.toDays - anchor + ROUNDING);
  const bounds = Float64Array.from({length: Math.max(0, last - first + 1)}, (_, i) => anchor + first + i);
  const {coveredDays} = dosesBetween(record, temperatureItself, bounds);
  const read = along(record, {basis: 'expected'});
  coveredDays.forEach((covered, i) => {
    if (covered < 1 - ROUNDING) return;
    const begin = bounds[i]!;
    const parts = read({fromDays: begin, toDays: begin + 1});
    days.set(first + i, {
      atDays: Float64Array.from(
        parts.flatMap(({atDays}) => atDays),
        at => at - begin,
      ),
      temperatureC: Float64Array.from(parts.flatMap(({temperatureC}) => temperatureC)),
    });
  });
  return days;
}

const ROUNDING = 1e-6;

/**
 * Orders of days. Every recent day is dealt to the futures equally often, so that their mean is the mean of the record.
 * @param earlier the place of the day so many days ahead, so many years earlier and so many days about it
 */
function ordersOf(
  size: number,
  length: number,
  recent: number,
  earlier: (ahead: number, years: number, about: number) => number | undefined,
): readonly Uint16Array[] {
  const draw = drawing();
  const below = (bound: number) => Math.floor(draw() * bound);
  const deal = dealing(recent, below);
  return Array.from({length: size}, () => {
    const own = Array.from({length: INDEPENDENT_DAYS}, deal);
    let run = {years: 0, about: 0};
    return Uint16Array.from({length}, (_, ahead) => {
      if (ahead % RUN_DAYS === 0) {
        const forgotten = draw() > 2 ** (-(ahead + RUN_DAYS / 2) / HALF_FORGOTTEN_DAYS);
        const years = 1 + below(EARLIER_YEARS);
        run = {years: forgotten ? years : 0, about: below(2 * ABOUT_DATE_DAYS + 1) - ABOUT_DATE_DAYS};
      }
      const day = own[below(INDEPENDENT_DAYS)]!;
      if (run.years === 0) return day;
      // Where this year was not read, the others stand in.
      for (let tried = 0; tried < EARLIER_YEARS; tried++) {
        const years = 1 + ((run.years - 1 + tried) % EARLIER_YEARS);
        const found = earlier(ahead, years, run.about);
        if (found !== undefined) return found;
      }
      return day;
    });
  });
}

/** Numbers below a bound, each once before any comes again. */
function dealing(bound: number, below: (bound: number) => number): () => number {
  let deck: number[] = [];
  return () => {
    if (deck.length === 0) deck = Array.from({length: bound}, (_, i) => i);
    return deck.splice(below(deck.length), 1)[0]!;
  };
}

/** The same even numbers between 0 and 1 every time: a 32-bit Weyl sequence, its bits mixed by multiplication. */
function drawing(): () => number {
  let state = 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return ((mixed ^ (mixed >>> 15)) >>> 0) / 2 ** 32;
  };
}
