// What the daybook does not hold but alerts are told from: each logger's last readings, each unit's climate now, and
// what people read beside loggers.
import type {CheckedReading, ReadingNow, RecentReadings, RoomFacts} from '../care/alert.ts';
import type {Series} from '../climate/series.ts';
import {ENOUGH_WATER, readBeside} from '../climate/water-offset.ts';
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {type HandReading, type Logger, type Unit, valueAt} from '../records/state.ts';
import type {Desk} from './desk.ts';
import {trustedReadings} from './trusted-readings.ts';

/** How long something has been amiss is told from the last days. */
const RECENT_DAYS = 3;
/** Checks by hand further back say nothing of the logger now. */
const CHECKED_DAYS = 14;

export async function factsOf(desk: Desk): Promise<RoomFacts> {
  const {state, now} = desk;
  const last = new Map<string, LastReading>();
  const checked: CheckedReading[] = [];
  const checks = checksOf(desk);
  for (const history of state.loggers.values()) {
    const logger = valueAt(history, now);
    const own = checks.filter(check => check.logger === logger.code);
    const series = await lastSeries(logger, own.length > 0 ? CHECKED_DAYS : RECENT_DAYS, desk);
    const reading = lastReading(logger, series, desk);
    if (reading !== undefined) last.set(reading.logger.code, reading);
    checked.push(...own.flatMap(check => checkedIn(series, check, state.handReadings)));
  }
  const units = [...state.units.values()].map(history => valueAt(history, now));
  const learned = waterLearned(units, checked);
  return {
    lastReadings: new Map([...last].map(([code, {at}]) => [code, at])),
    climate: new Map(
      units.flatMap(unit => {
        const {offsetC = learned.get(unit.code)} = unit;
        return climateOf(offsetC === undefined ? unit : {...unit, offsetC}, last, now);
      }),
    ),
    // Where the course goes by the water itself there is nothing to mend.
    checked: checked.filter(({unit}) => unit === undefined || !learned.has(unit)),
  };
}

interface LastReading extends ReadingNow {
  readonly logger: Logger;
}

function lastReading(
  logger: Logger,
  series: Series | undefined,
  {state, room, now}: Desk,
): LastReading | undefined {
  const byHand = state.handReadings.findLast(reading => reading.logger === logger.code);
  const imported = series === undefined ? undefined : lastImported(logger, series);
  // A logger whose last readings are all set aside has still spoken: then without a value.
  const spoken = Math.min(room.span(logger.code)?.toDays ?? Number.NEGATIVE_INFINITY, now / MS_PER_DAY);
  const silent = series === undefined ? undefined : {logger, at: spoken * MS_PER_DAY};
  const read = imported ?? silent;
  if (byHand !== undefined && byHand.at >= (read?.at ?? 0))
    return {logger, at: byHand.at, temperatureC: byHand.temperature, rhPercent: byHand.humidity};
  return read;
}

/** The readings of the days up to its last one; undefined where it has none. */
async function lastSeries(
  {code, maxGapHours}: Logger,
  days: number,
  desk: Desk,
): Promise<Series | undefined> {
  const nowDays = desk.now / MS_PER_DAY;
  const span = desk.room.span(code);
  if (span === undefined || span.fromDays > nowDays) return undefined;
  const until = Math.min(span.toDays, nowDays);
  return trustedReadings(desk, code, until - Math.max(days, maxGapHours / 24), until);
}

function lastImported(logger: Logger, series: Series): LastReading | undefined {
  const row = series.atDays.length - 1;
  if (row < 0) return undefined;
  const known = (value: number | undefined) =>
    value === undefined || Number.isNaN(value) ? undefined : value;
  return {
    logger,
    at: series.atDays[row]! * MS_PER_DAY,
    temperatureC: known(series.temperatureC[row]),
    rhPercent: known(series.rhPercent[row]),
    recent: recentOf(series, logger),
  };
}

function recentOf({atDays, temperatureC, rhPercent}: Series, {maxGapHours}: Logger): RecentReadings {
  const from = atDays.findIndex(at => at >= atDays.at(-1)! - RECENT_DAYS);
  return {
    at: Array.from(atDays.subarray(from), days => Math.round(days * MS_PER_DAY)),
    temperatureC: [...temperatureC.subarray(from)],
    rhPercent: [...rhPercent.subarray(from)],
    maxGapMs: maxGapHours * MS_PER_HOUR,
  };
}

/** As its animals have it; nothing where the reading is older than the logger's allowed gap. */
function climateOf(unit: Unit, last: ReadonlyMap<string, LastReading>, now: Instant): [string, ReadingNow][] {
  const reading = last.get(unit.logger ?? '');
  if (reading === undefined || now - reading.at > reading.logger.maxGapHours * MS_PER_HOUR) return [];
  const {at, temperatureC, rhPercent, recent} = reading;
  const {offsetC = 0} = unit;
  const here = (value: number) => value + offsetC;
  return [
    [
      unit.code,
      {
        at,
        temperatureC: temperatureC === undefined ? undefined : here(temperatureC),
        rhPercent,
        recent: recent === undefined ? recent : {...recent, temperatureC: recent.temperatureC.map(here)},
      },
    ],
  ];
}

interface Check extends Omit<CheckedReading, 'loggerC'> {
  readonly offsetC: number;
}

/** Temperatures by hand, of loggers that read by themselves and of the water of units, of the last days. */
function checksOf({state, now}: Desk): Check[] {
  const isRecent = ({at}: {readonly at: Instant}) => at > now - CHECKED_DAYS * MS_PER_DAY && at <= now;
  const byHand = state.handReadings
    .filter(isRecent)
    .flatMap(({logger, at, temperature}) =>
      temperature === undefined ? [] : [{logger, at, byHandC: temperature, offsetC: 0}],
    );
  const ofWater = state.water.filter(isRecent).flatMap(({unit, at, temperature}) => {
    const history = state.units.get(unit);
    if (history === undefined || temperature === undefined) return [];
    const {logger, offsetC = 0} = valueAt(history, at);
    return logger === undefined ? [] : [{logger, at, byHandC: temperature, offsetC, unit}];
  });
  return [...byHand, ...ofWater];
}

/** What the logger read beside the check; the water of a unit may be compared with what a person read there too. */
function checkedIn(
  series: Series | undefined,
  {offsetC, ...check}: Check,
  handReadings: readonly HandReading[],
): CheckedReading[] {
  const atDays = check.at / MS_PER_DAY;
  const byHand = handReadings.filter(
    ({logger, temperature}) =>
      check.unit !== undefined && logger === check.logger && temperature !== undefined,
  );
  const read =
    (series === undefined ? undefined : readBeside(series, atDays)) ??
    readBeside(
      {
        atDays: Float64Array.from(byHand, ({at}) => at / MS_PER_DAY),
        temperatureC: Float64Array.from(byHand, ({temperature}) => temperature ?? Number.NaN),
      },
      atDays,
    );
  return read === undefined ? [] : [{...check, loggerC: read + offsetC}];
}

/** By unit: how much warmer its water is than its logger reads, where that is gone by; see climate/water-offset.ts. */
function waterLearned(
  units: readonly Unit[],
  checked: readonly CheckedReading[],
): ReadonlyMap<string, number> {
  return new Map(
    units.flatMap(({code, type, offsetC}): [string, number][] => {
      const own = checked.filter(({unit}) => unit === code);
      if (type !== 'aquarium' || offsetC !== undefined || own.length < ENOUGH_WATER) return [];
      return [[code, own.reduce((sum, {byHandC, loggerC}) => sum + byHandC - loggerC, 0) / own.length]];
    }),
  );
}
