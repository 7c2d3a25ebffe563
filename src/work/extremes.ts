// Minimum–maximum thermometers as people read them: what has to be answered, what is said at once, how each reading stands.
import {extremesAlert} from '../care/alert-loggers.ts';
import {dateWords} from '../care/when-words.ts';
import {type ExtremesFault, extremesFaults, isCourse, unresetSince} from '../climate/extremes-faults.ts';
import type {Civil} from '../records/civil.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {Extremes, RoomState} from '../records/state.ts';
import type {Desk} from './desk.ts';

/** `drawn`: a day's course comes of it. `misread`: nothing does. `bounds`: it only bounds the true extremes. */
export type ExtremesStanding = 'drawn' | 'misread' | 'bounds';

/** One reading as `teneral readings LOGGER` answers it. */
export interface ExtremesRow {
  readonly entry: string;
  readonly from: string;
  readonly to: string;
  readonly minimum: number;
  readonly maximum: number;
  readonly now: number | null;
  readonly reset: boolean | null;
  readonly state: ExtremesStanding;
  /** What is wrong with it; null where nothing is. */
  readonly what: string | null;
}

/** The readings of a thermometer that end within a span, in order of time. */
export function extremesRows(
  {state, civil}: Desk,
  logger: string,
  {fromDays, toDays}: {readonly fromDays: number; readonly toDays: number},
): ExtremesRow[] {
  const own = readingsOf(state, logger);
  const faults = extremesFaults(own);
  return own
    .filter(({to}) => to >= fromDays * MS_PER_DAY && to <= toDays * MS_PER_DAY)
    .sort((a, b) => a.to - b.to)
    .map(reading => {
      const {entry, from, to, minimum, maximum, now = null, reset = null} = reading;
      const fault = faults.get(reading);
      const standing = standingOf(reading, fault);
      const what =
        standing === 'drawn' || fault === undefined ? null : extremesAlert(reading, fault, civil).what;
      const at = {from: civil.iso(from), to: civil.iso(to)};
      return {entry, ...at, minimum, maximum, now, reset, state: standing, what};
    });
}

function standingOf(reading: Extremes, fault: ExtremesFault | undefined): ExtremesStanding {
  if (isCourse(reading, fault)) return 'drawn';
  return fault?.kind === 'misread' ? 'misread' : 'bounds';
}

/** What is wrong with a reading that was just written down, for whoever still stands at the thermometer. */
export function saidOfExtremes(entry: string, {state, civil}: Desk): readonly string[] {
  const reading = state.extremes.find(each => each.entry === entry);
  if (reading === undefined) return [];
  const fault = extremesFaults(readingsOf(state, reading.logger)).get(reading);
  if (fault === undefined || isCourse(reading, fault)) return [];
  const {what, mend} = extremesAlert(reading, fault, civil);
  return [what, mend.replace(/\.$/, '')];
}

/**
 * Why a reading has to say whether the thermometer was reset; undefined where it need not.
 * @param next its two values, as far as they are known
 */
export function resetIsAsked(
  state: Pick<RoomState, 'extremes'>,
  logger: string,
  next: {readonly minimum?: unknown; readonly maximum?: unknown},
  civil: Civil,
): string | undefined {
  const {minimum, maximum} = next;
  const known = typeof minimum === 'number' && typeof maximum === 'number' ? {minimum, maximum} : undefined;
  const unreset = unresetSince(readingsOf(state, logger), known);
  return unreset === undefined
    ? undefined
    : `${logger} was probably not reset on ${dateWords(unreset.to, civil)}`;
}

/** @throws Refusal where a person who reads the thermometer has to say whether it was reset, and did not */
export function refuseWithoutReset(
  {logger, reset, ...next}: Readonly<Record<string, unknown>>,
  state: Pick<RoomState, 'extremes'>,
  civil: Civil,
): void {
  if (reset !== undefined || typeof logger !== 'string') return;
  const why = resetIsAsked(state, logger, next, civil);
  if (why !== undefined)
    throw new Refusal(why, 'extremes', 'Say whether it is reset now: --reset or --not-reset.');
}

function readingsOf({extremes}: Pick<RoomState, 'extremes'>, logger: string): Extremes[] {
  return extremes.filter(each => each.logger === logger);
}
