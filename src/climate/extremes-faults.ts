// Minimum–maximum readings that cannot be what they say: misread, or of a thermometer that nobody reset.
import type {Extremes} from '../records/state.ts';

export type ExtremesFault =
  /** A minimum above, or a maximum below, what the thermometer showed at one of the two visits. */
  | {readonly kind: 'misread'; readonly which: 'minimum' | 'maximum'; readonly bound: number}
  /** Both extremes are those of the time before: they only bound the true ones. */
  | {readonly kind: 'not-reset'; readonly before: Extremes};

/** Readings of a thermometer that agree to a tenth of a degree. */
const SAME_C = 0.05;

/**
 * What is wrong with each reading, of every logger; readings that nothing is wrong with are left out.
 * A minimum lies at or below what was shown at both visits, a maximum at or above: rule of the United States weather
 * observers (crh.noaa.gov/lbf). Two same pairs are a thermometer not reset: common practice, no source.
 */
export function extremesFaults(extremes: readonly Extremes[]): ReadonlyMap<Extremes, ExtremesFault> {
  const faults = new Map<Extremes, ExtremesFault>();
  const last = new Map<string, Extremes>();
  for (const reading of extremes.toSorted((a, b) => a.to - b.to)) {
    const fault = faultOf(reading, last.get(reading.logger));
    if (fault !== undefined) faults.set(reading, fault);
    last.set(reading.logger, reading);
  }
  return faults;
}

function faultOf(reading: Extremes, before: Extremes | undefined): ExtremesFault | undefined {
  const shown = [reading.now, before?.reset === true && before.to === reading.from ? before.now : undefined];
  const known = shown.filter(value => value !== undefined);
  const lowest = Math.min(...known);
  const highest = Math.max(...known);
  if (reading.minimum > lowest + SAME_C) return {kind: 'misread', which: 'minimum', bound: lowest};
  if (reading.maximum < highest - SAME_C) return {kind: 'misread', which: 'maximum', bound: highest};
  if (before === undefined || before.reset === true) return undefined;
  const isSame =
    Math.abs(before.minimum - reading.minimum) < SAME_C &&
    Math.abs(before.maximum - reading.maximum) < SAME_C;
  return isSame ? {kind: 'not-reset', before} : undefined;
}

/**
 * When a thermometer was last found not reset, a reading about to be written down told of as well; from then on every
 * reading has to say whether it was reset. Undefined where nothing was ever found.
 * @param extremes of one thermometer
 */
export function unresetSince(
  extremes: readonly Extremes[],
  next?: Pick<Extremes, 'minimum' | 'maximum'>,
): Extremes | undefined {
  const last = extremes.reduce<Extremes | undefined>(
    (latest, each) => (latest === undefined || each.to >= latest.to ? each : latest),
    undefined,
  );
  const added =
    next === undefined || last === undefined
      ? []
      : [{logger: last.logger, from: last.to, to: last.to + 1, ...next, now: next.minimum, entry: ''}];
  const all = [...extremes, ...added];
  const unreset = [...extremesFaults(all)].flatMap(([reading, fault]) =>
    fault.kind === 'not-reset' && !isCourse(reading, fault) ? [fault.before] : [],
  );
  return unreset.at(-1);
}

/** Whether a day's sine may be drawn from it: a person's pair of extremes that is misread or not reset says too little. */
export function isCourse(reading: Extremes, fault: ExtremesFault | undefined): boolean {
  if (fault === undefined) return true;
  return fault.kind === 'not-reset' && reading.now === undefined && fault.before.reset === undefined;
}
