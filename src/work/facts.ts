// What the daybook does not hold but alerts are told from: each logger's last reading, each unit's climate now.
import type {ReadingNow, RoomFacts} from '../care/alert.ts';
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {type Logger, type Unit, valueAt} from '../records/state.ts';
import type {Desk} from './desk.ts';

/** Reads the last few hours of each logger only. */
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
  };
}

interface LastReading extends ReadingNow {
  readonly logger: Logger;
}

async function lastReading(logger: Logger, {room, now, state}: Desk): Promise<LastReading | undefined> {
  const byHand = state.handReadings.findLast(reading => reading.logger === logger.code);
  const imported = await lastImported(logger, room, now);
  if (byHand !== undefined && byHand.at >= (imported?.at ?? 0))
    return {logger, at: byHand.at, temperatureC: byHand.temperature, rhPercent: byHand.humidity};
  return imported;
}

async function lastImported(
  logger: Logger,
  room: Desk['room'],
  now: Instant,
): Promise<LastReading | undefined> {
  const span = room.span(logger.code);
  if (span === undefined) return undefined;
  const nowDays = now / MS_PER_DAY;
  const until = Math.min(span.toDays, nowDays);
  const {atDays, temperatureC, rhPercent} = await room.series(
    logger.code,
    until - logger.maxGapHours / 24,
    until,
  );
  const row = atDays.length - 1;
  if (row < 0) return undefined;
  const known = (value: number | undefined) =>
    value === undefined || Number.isNaN(value) ? undefined : value;
  return {
    logger,
    at: atDays[row]! * MS_PER_DAY,
    temperatureC: known(temperatureC[row]),
    rhPercent: known(rhPercent[row]),
  };
}

/** As its animals have it; nothing where the reading is older than the logger's allowed gap. */
function climateOf(unit: Unit, last: ReadonlyMap<string, LastReading>, now: Instant): [string, ReadingNow][] {
  const reading = last.get(unit.logger ?? '');
  if (reading === undefined || now - reading.at > reading.logger.maxGapHours * MS_PER_HOUR) return [];
  const {at, temperatureC, rhPercent} = reading;
  const here = temperatureC === undefined ? undefined : temperatureC + (unit.offsetC ?? 0);
  return [[unit.code, {at, temperatureC: here, rhPercent}]];
}
