// What each instrument read, as traces: a logger's imported readings, a person's readings, extremes drawn as sines.
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {type Extremes, type Logger, type Mask, valueAt} from '../records/state.ts';
import type {TemperatureTrace} from '../thermal/trace.ts';
import type {CourseInput} from './course-input.ts';
import {cleaned} from './doubts.ts';
import {extremesFaults, isCourse} from './extremes-faults.ts';
import {isMasked, isTrusted, masked} from './masked.ts';
import type {Span} from './part.ts';
import {sineDays} from './sine-days.ts';

/** What a logger read in a span (its end excluded), masked readings left out; its kind and allowed gap as of an instant. */
export type Reading = (logger: string, span: Span, asOfDays: number) => TemperatureTrace;

export interface Instruments {
  readonly automatic: Reading;
  readonly extremes: Reading;
  readonly hand: Reading;
}

/** A person with a thermometer comes once a day. */
const HAND_GAP_HOURS = 26;

export function instrumentsOf({room, readings, civil}: CourseInput): Instruments {
  const masksOf = (logger: string) => room.masks.filter(mask => mask.logger === logger);
  const imported = remembered(logger => {
    const masks = masksOf(logger);
    const settings = room.loggers.get(logger)?.at(-1)?.value.rules ?? {};
    const unmasked = masked(readings(logger) ?? NO_SERIES, masks);
    return rows(cleaned(unmasked, settings, at => isTrusted(masks, Math.round(at * MS_PER_DAY))));
  });
  const drawn = remembered(logger => {
    const masks = masksOf(logger);
    const all = room.extremes.filter(each => each.logger === logger);
    const faults = extremesFaults(all);
    const kept = all.filter(each => !touchesMask(masks, each) && isCourse(each, faults.get(each)));
    return drawnExtremes(kept, civil);
  });
  const byHand = remembered(logger => {
    const masks = masksOf(logger);
    return room.handReadings
      .filter(reading => reading.logger === logger && !isMasked(masks, reading.at))
      .flatMap(({at, temperature}) => (temperature === undefined ? [] : [{at: at / MS_PER_DAY, temperature}]))
      .sort((a, b) => a.at - b.at);
  });
  const instrument = (logger: string, asOfDays: number): Logger | undefined => {
    const history = room.loggers.get(logger);
    return history === undefined ? undefined : valueAt(history, asOfDays * MS_PER_DAY);
  };

  return {
    automatic: (logger, span, asOfDays) => {
      const {kind, maxGapHours = 0} = instrument(logger, asOfDays) ?? {};
      return kind === 'hand' ? NOTHING : within({...imported(logger), maxGapDays: maxGapHours / 24}, span);
    },
    extremes: (logger, span, asOfDays) => {
      const {maxGapHours = 0} = instrument(logger, asOfDays) ?? {};
      return within({...drawn(logger), maxGapDays: maxGapHours / 24}, span);
    },
    hand: (logger, span, asOfDays) => {
      const {kind, maxGapHours} = instrument(logger, asOfDays) ?? {};
      const readings = kind === 'hand' ? merged(byHand(logger), imported(logger)) : byHand(logger);
      const allowed = (kind === 'hand' ? maxGapHours : undefined) ?? HAND_GAP_HOURS;
      return within({...columns(readings), maxGapDays: allowed / 24}, span);
    },
  };
}

type Rows = Pick<TemperatureTrace, 'atDays' | 'temperatureC'>;
interface HandReading {
  readonly at: number;
  readonly temperature: number;
}

const NOTHING: TemperatureTrace = {atDays: new Float64Array(0), temperatureC: new Float64Array(0)};
const NO_SERIES = {...NOTHING, rhPercent: new Float64Array(0)};

/** Rows that hold a temperature. */
function rows({atDays, temperatureC}: Rows): Rows {
  if (!temperatureC.some(Number.isNaN)) return {atDays, temperatureC};
  return {
    atDays: atDays.filter((_, row) => !Number.isNaN(temperatureC[row])),
    temperatureC: temperatureC.filter(temperature => !Number.isNaN(temperature)),
  };
}

function columns(readings: readonly HandReading[]): Rows {
  return {
    atDays: Float64Array.from(readings, reading => reading.at),
    temperatureC: Float64Array.from(readings, reading => reading.temperature),
  };
}

function merged(readings: readonly HandReading[], {atDays, temperatureC}: Rows): HandReading[] {
  const others = Array.from(atDays, (at, row) => ({at, temperature: temperatureC[row]!}));
  return [...readings, ...others].sort((a, b) => a.at - b.at);
}

/** Where two intervals overlap, the later one holds from its beginning. */
function drawnExtremes(extremes: readonly Extremes[], civil: CourseInput['civil']): Rows {
  const ordered = extremes.toSorted((a, b) => a.from - b.from);
  const pieces = ordered.map(({from, to, minimum, maximum}, i) => {
    const end = Math.min(to, ordered[i + 1]?.from ?? to);
    return sineDays(civil, {fromDays: from / MS_PER_DAY, toDays: end / MS_PER_DAY}, minimum, maximum);
  });
  return {
    atDays: Float64Array.from(pieces.flatMap(piece => piece.atDays)),
    temperatureC: Float64Array.from(pieces.flatMap(piece => piece.temperatureC)),
  };
}

/** Extremes cannot be trusted when any of their time is masked. */
function touchesMask(masks: readonly Mask[], {from, to}: Extremes): boolean {
  const instants: Instant[] = [from, to, ...masks.map(mask => mask.from).filter(at => from < at && at < to)];
  return instants.some(at => isMasked(masks, at));
}

function within(trace: TemperatureTrace, {fromDays, toDays}: Span): TemperatureTrace {
  const begin = firstFrom(trace.atDays, fromDays);
  const end = firstFrom(trace.atDays, toDays);
  return {
    ...trace,
    atDays: trace.atDays.subarray(begin, end),
    temperatureC: trace.temperatureC.subarray(begin, end),
  };
}

/** The first row at or after an instant. */
function firstFrom(atDays: Float64Array, instantDays: number): number {
  let low = 0;
  let high = atDays.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (atDays[middle]! < instantDays) low = middle + 1;
    else high = middle;
  }
  return low;
}

function remembered<Value>(make: (key: string) => Value): (key: string) => Value {
  const made = new Map<string, Value>();
  return key => {
    const found = made.get(key) ?? make(key);
    made.set(key, found);
    return found;
  };
}
