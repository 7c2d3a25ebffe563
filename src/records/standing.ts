// How long a trap stood with its animals inside.
import type {Civil} from './civil.ts';
import {instantOf, MS_PER_HOUR} from './entry.ts';
import {methods} from './methods.ts';
import type {Sample} from './state.ts';

type Stood = Pick<Sample, 'method' | 'medium' | 'collected' | 'trap'>;

/** Live traps are emptied every morning (common practice, no source). */
const MOST_HOURS = 24;

/**
 * For how many hours animals may have waited alive in a trap, where that is longer than a day: since it was last
 * emptied, else since it was set. A day without its time counts as the same time of day at both ends.
 * @returns undefined where it was emptied within a day, where nothing was to stay alive, and of what is no live trap
 */
export function waitedHours({method, medium, collected, trap}: Stood, civil: Civil): number | undefined {
  if (methods[method].how !== 'trap' || NO_LIVE_TRAPS.has(method) || medium !== 'none') return undefined;
  const {from, to = from} = collected;
  const hours = (atNoon(to, civil) - atNoon(trap?.lastEmptied ?? from, civil)) / MS_PER_HOUR;
  return hours > MOST_HOURS ? hours : undefined;
}

/** Nobody expects their catch alive, or it lives on in them as long as it likes. */
const NO_LIVE_TRAPS: ReadonlySet<string> = new Set(['sticky', 'band', 'other']);

function atNoon(dayOrInstant: string, civil: Civil): number {
  return dayOrInstant.length === 10 ? civil.at(dayOrInstant, '12:00') : instantOf(dayOrInstant);
}

/** "Its animals waited up to 40 h in the trap: look at their condition." */
export function waitedWords(hours: number): string {
  const long = hours < 72 ? `${Math.round(hours)} h` : `${Math.round(hours / 24)} days`;
  return `its animals waited up to ${long} in the trap: look at their condition`;
}
