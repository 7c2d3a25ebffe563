// Loggers that do not read what a person reads beside them.
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {Alert, CheckedReading, RoomFacts} from './alert.ts';
import {grouped} from './grouped.ts';
import type {CareInput} from './task.ts';

/** A logger and a thermometer held beside it agree within so much. Common practice, no source. */
const AGREE_C = 1.5;
/** So many checks make a rule of it; the last so many days count. */
const ENOUGH_CHECKS = 3;
const CHECKED_MS = 14 * MS_PER_DAY;

/** By logger or unit: the mean difference of the last checks, where it is too large. */
export function disagreements({civil, now}: CareInput, {checked = []}: RoomFacts): Alert[] {
  const recent = checked.filter(({at}) => at > now - CHECKED_MS && at <= now);
  return [...grouped(recent, ({unit, logger}) => unit ?? logger)].flatMap(([where, checks]) => {
    const ordered = checks.toSorted((a, b) => a.at - b.at).slice(-ENOUGH_CHECKS);
    const mean = ordered.reduce((sum, check) => sum + off(check), 0) / ordered.length;
    if (ordered.length < ENOUGH_CHECKS || Math.abs(mean) < AGREE_C) return [];
    const [{logger, unit, at: since}] = ordered as [CheckedReading];
    return [alertOf(where, logger, unit, mean, ordered.length, since, civil.dayOf(since))];
  });
}

function off({byHandC, loggerC}: CheckedReading): number {
  return byHandC - loggerC;
}

function alertOf(
  where: string,
  logger: string,
  unit: string | undefined,
  meanC: number,
  checks: number,
  since: Instant,
  day: string,
): Alert {
  const degrees = `${Math.abs(Math.round(meanC * 10) / 10)} °C ${meanC < 0 ? 'cooler' : 'warmer'}`;
  const what =
    unit === undefined
      ? `${logger} disagrees with what was read beside it: ${degrees} by hand in ${checks} checks`
      : `the water of ${unit} was ${degrees} than ${logger} says of it, in ${checks} measurements`;
  const mend =
    unit === undefined
      ? `Check both thermometers in one place (teneral readings ${logger} --against …); mask what is wrong.`
      : `Give the unit its offset: teneral unit ${unit} --offset …, by ${Math.round(meanC * 100) / 100} °C more than now.`;
  return {id: `disagrees:${where}:${day}`, what, where, since, mend};
}
