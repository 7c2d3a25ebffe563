// What the daybook does not hold but alerts are told from: each logger's last readings, each unit's climate now, and
// what people read beside loggers.
import type {CheckedReading, ReadingNow, RecentReadings, RoomFacts} from '../care/alert.ts';
import type {Series} from '../climate/series.ts';
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {type Logger, type Unit, valueAt} from '../records/state.ts';
import type {Desk} from './desk.ts';
import {trustedReadings} from './trusted-readings.ts';

/** How long something has been amiss is told from the last days. */
const RECENT_DAYS = 3;
/** Checks by hand further back say nothing of the logger now. */
const CHECKED_DAYS = 14;

export async function factsOf(desk: Desk): Promise<RoomFacts> {
  const {state, now} = desk;
  const last = new Map<string, LastReading>();
  for (const history of state.loggers.values()) {
    const reading = await lastReading(valueAt(history, now), desk);
    if (reading !== undefined) last.set(reading.logger.code, reading);
  }
  const units = [...state.units.values()].map(history => valueAt(history, now));
  return {
    lastReadings: new Map([...last].map(([code, {at}]) => [code, at])),
    climate: new Map(units.flatMap(unit => climateOf(unit, last, now))),
    checked: await checkedReadings(desk),
  };
}

interface LastReading extends ReadingNow {
  readonly logger: Logger;
}

async function lastReading(logger: Logger, desk: Desk): Promise<LastReading | undefined> {
  const byHand = desk.state.handReadings.findLast(reading => reading.logger === logger.code);
  const imported = await lastImported(logger, desk);
  if (byHand !== undefined && byHand.at >= (imported?.at ?? 0))
    return {logger, at: byHand.at, temperatureC: byHand.temperature, rhPercent: byHand.humidity};
  return imported;
}

/** A logger whose last readings are all set aside has still spoken: then without a value. */
async function lastImported(logger: Logger, desk: Desk): Promise<LastReading | undefined> {
  const {room, now} = desk;
  const span = room.span(logger.code);
  const nowDays = now / MS_PER_DAY;
  if (span === undefined || span.fromDays > nowDays) return undefined;
  const until = Math.min(span.toDays, nowDays);
  const gapDays = logger.maxGapHours / 24;
  const series = await trustedReadings(desk, logger.code, until - Math.max(RECENT_DAYS, gapDays), until);
  const row = series.atDays.length - 1;
  if (row < 0) return {logger, at: until * MS_PER_DAY};
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
  return {
    at: Array.from(atDays, days => Math.round(days * MS_PER_DAY)),
    temperatureC: [...temperatureC],
    rhPercent: [...rhPercent],
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

/** Temperatures by hand, of loggers that read by themselves and of the water of units, with the logger's own then. */
async function checkedReadings(desk: Desk): Promise<CheckedReading[]> {
  const {state, now} = desk;
  const isRecent = ({at}: {readonly at: Instant}) => at > now - CHECKED_DAYS * MS_PER_DAY && at <= now;
  const byHand = state.handReadings
    .filter(isRecent)
    .flatMap(({logger, at, temperature}) =>
      temperature === undefined ? [] : [{logger, at, byHandC: temperature, offsetC: 0, unit: undefined}],
    );
  const ofWater = state.water.filter(isRecent).flatMap(({unit, at, temperature}) => {
    const history = state.units.get(unit);
    if (history === undefined || temperature === undefined) return [];
    const {logger, offsetC = 0} = valueAt(history, at);
    return logger === undefined ? [] : [{logger, at, byHandC: temperature, offsetC, unit}];
  });
  const found: CheckedReading[] = [];
  for (const {logger, at, byHandC, offsetC, unit} of [...byHand, ...ofWater]) {
    const read = await readAt(desk, logger, at);
    if (read !== undefined) found.push({logger, unit, at, byHandC, loggerC: read + offsetC});
  }
  return found;
}

const BESIDE_DAYS = 1 / 24;

/** What it read nearest to an instant, within an hour. */
async function readAt(desk: Desk, logger: string, at: Instant): Promise<number | undefined> {
  const days = at / MS_PER_DAY;
  const span = desk.room.span(logger);
  if (span === undefined || days < span.fromDays - BESIDE_DAYS || days > span.toDays + BESIDE_DAYS)
    return undefined;
  const {atDays, temperatureC} = await trustedReadings(desk, logger, days - BESIDE_DAYS, days + BESIDE_DAYS);
  let nearest: number | undefined;
  atDays.forEach((each, row) => {
    if (nearest === undefined || Math.abs(each - days) < Math.abs(atDays[nearest]! - days)) nearest = row;
  });
  return nearest === undefined ? undefined : temperatureC[nearest];
}
