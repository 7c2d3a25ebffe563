// Loggers that say nothing any more, and minimum–maximum thermometers that nobody reset.
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
/** Readings of a thermometer that agree to a tenth of a degree. */
const SAME_C = 0.05;

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

/**
 * Thermometers whose newest minimum and maximum are both those of the time before, to a tenth of a degree, unless
 * somebody then said that it was reset. Common practice, no source.
 */
export function notReset({state, civil}: CareInput): Alert[] {
  return [...grouped(state.extremes, ({logger}) => logger)].flatMap(([code, readings]) => {
    const [before, newest] = readings.toSorted((a, b) => a.to - b.to).slice(-2);
    if (before === undefined || newest === undefined || before.reset === true || !agree(before, newest))
      return [];
    const {minimum, maximum, to} = newest;
    return [
      {
        id: `not-reset:${code}:${civil.dayOf(to)}`,
        what: `${code} shows the same minimum ${minimum} °C and maximum ${maximum} °C as the time before; it was probably not reset on ${dateWords(before.to, civil)}`,
        where: code,
        since: before.to,
        mend: 'Reset it at every reading, and say so. Until then the two values only bound the true ones; void the reading if it is wrong.',
      },
    ];
  });
}

function agree(a: Extremes, b: Extremes): boolean {
  return Math.abs(a.minimum - b.minimum) < SAME_C && Math.abs(a.maximum - b.maximum) < SAME_C;
}
