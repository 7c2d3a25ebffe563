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

/** Whether a day's sine may be drawn from it: a person's pair of extremes that is misread or not reset says too little. */
export function isCourse(reading: Extremes, fault: ExtremesFault | undefined): boolean {
  if (fault === undefined) return true;
  return fault.kind === 'not-reset' && reading.now === undefined && fault.before.reset === undefined;
}
