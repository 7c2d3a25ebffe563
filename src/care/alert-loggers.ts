// Loggers that say nothing any more, and minimum–maximum thermometers that nobody reset.
import {type ExtremesFault, extremesFaults} from '../climate/extremes-faults.ts';
import type {Civil} from '../records/civil.ts';
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {type Extremes, type RoomState, valueAt} from '../records/state.ts';
import type {Alert, RoomFacts} from './alert.ts';
import {grouped} from './grouped.ts';
import {unitOf} from './occupancy.ts';
import {isLiving} from './stages.ts';
import type {CareInput} from './task.ts';
import {compareNaturally} from './walking-order.ts';
import {dateWords} from './when-words.ts';

/** So much later than its allowed gap a logger is silent: files are fetched at a round. Common practice, no source. */
const SILENT_AFTER_MS = MS_PER_DAY;
/** What is read by a person is read at the daily round. Common practice, no source. */
const READ_DAILY_HOURS = 26;
/** Loggers of units with living lots whose last reading is too long ago. */
export function silentLoggers({state, civil, now}: CareInput, {lastReadings}: RoomFacts): Alert[] {
  const byHand = lastByHand(state);
  return [...unitsByLogger(state)].flatMap(([code, {units, needed}]) => {
    const history = state.loggers.get(code);
    if (history === undefined) return [];
    const {maxGapHours, kind} = valueAt(history, now);
    const gapHours = kind === 'automatic' ? maxGapHours : Math.max(maxGapHours, READ_DAILY_HOURS);
    const last = Math.max(lastReadings.get(code) ?? 0, byHand.get(code) ?? 0);
    const since = Math.max(last, needed);
    if (now - since <= gapHours * MS_PER_HOUR + SILENT_AFTER_MS) return [];
    const what = last >= needed ? `has said nothing since ${dateWords(last, civil)}` : 'has no reading yet';
    const mend =
      kind === 'automatic'
        ? `Import its file (teneral import ${code} FILE); look at its battery and its place.`
        : `Read it (teneral ${kind === 'hand' ? 'log' : 'extremes'} ${code} …).`;
    return [
      {
        id: `silent:${code}:${civil.dayOf(since)}`,
        what: `logger ${code} of ${units.sort(compareNaturally).join(', ')} ${what}`,
        where: code,
        since,
        mend,
      },
    ];
  });
}

/** Loggers of units in which somebody lives, and since when they are needed. */
function unitsByLogger(state: RoomState): Map<string, {units: string[]; needed: Instant}> {
  const found = new Map<string, {units: string[]; needed: Instant}>();
  for (const lot of state.lots.values()) {
    const unit = isLiving(lot) ? unitOf(lot, state) : undefined;
    if (unit?.logger === undefined) continue;
    const {units, needed} = found.get(unit.logger) ?? {units: [], needed: lot.startedAt};
    if (!units.includes(unit.code)) units.push(unit.code);
    found.set(unit.logger, {units, needed: Math.min(needed, lot.startedAt)});
  }
  return found;
}

function lastByHand({handReadings, extremes}: RoomState): Map<string, Instant> {
  const last = new Map<string, Instant>();
  const take = (logger: string, at: Instant) => last.set(logger, Math.max(last.get(logger) ?? 0, at));
  for (const {logger, at} of handReadings) take(logger, at);
  for (const {logger, to} of extremes) take(logger, to);
  return last;
}

/** Thermometers whose newest reading cannot be what it says: misread, or probably not reset the time before. */
export function faultyExtremes({state, civil}: CareInput): Alert[] {
  const faults = extremesFaults(state.extremes);
  return [...grouped(state.extremes, ({logger}) => logger).values()].flatMap(readings => {
    const newest = readings.reduce((last, each) => (each.to >= last.to ? each : last));
    const fault = faults.get(newest);
    return fault === undefined ? [] : [extremesAlert(newest, fault, civil)];
  });
}

/** What is wrong with one reading of a thermometer, and what to do. */
export function extremesAlert(reading: Extremes, fault: ExtremesFault, civil: Civil): Alert {
  const {logger, minimum, maximum, to, entry} = reading;
  if (fault.kind === 'misread')
    return {
      id: `misread:${logger}:${civil.dayOf(to)}`,
      what: `${logger} cannot have a ${fault.which} of ${fault.which === 'minimum' ? minimum : maximum} °C: it showed ${fault.bound} °C when it was read or reset`,
      where: logger,
      since: to,
      mend: `Read it again. Until then no course is drawn from it; void entry ${entry} and enter it anew.`,
    };
  return {
    id: `not-reset:${logger}:${civil.dayOf(to)}`,
    what: `${logger} shows the same minimum ${minimum} °C and maximum ${maximum} °C as the time before; it was probably not reset on ${dateWords(fault.before.to, civil)}`,
    where: logger,
    since: fault.before.to,
    mend: `Reset it at every reading, and say so each time. The day is not drawn from the two values: they only tell that it was never below ${minimum} °C nor above ${maximum} °C; void the reading if it is wrong.`,
  };
}
