// Degree-days of one day of which only the lowest and the highest temperature are known.
import {type Thresholds, thresholdsFault} from './degree-day.ts';

/**
 * How the day is drawn between its extremes: not at all (`average`), as straight lines or as a sine. The double
 * methods draw the fall towards the next day's minimum, the others back to the day's own.
 */
export type DailyMethod = 'average' | 'triangle' | 'double-triangle' | 'sine' | 'double-sine';

export const dailyMethods: readonly DailyMethod[] = [
  'average',
  'triangle',
  'double-triangle',
  'sine',
  'double-sine',
];

export interface DayExtremes {
  readonly minimum: number;
  readonly maximum: number;
  /** Minimum of the day after, used by the double methods; the day's own where it is absent. */
  readonly nextMinimum?: number | undefined;
}

/**
 * Degree-days of one day, in the unit that the extremes and the thresholds share.
 * @throws RangeError where the minimum is above the maximum, thresholds do not rise, or `average` is asked for
 * with another cutoff than the horizontal one
 */
export function degreeDaysOfDay(method: DailyMethod, day: DayExtremes, thresholds: Thresholds): number {
  const fault = thresholdsFault(thresholds);
  if (fault !== undefined) throw new RangeError(`${fault.field} ${fault.what}`);
  const {minimum, maximum, nextMinimum = minimum} = day;
  if (!(minimum <= maximum))
    throw new RangeError(`the day's minimum (${minimum}) is not at or below its maximum (${maximum})`);
  switch (method) {
    case 'average':
      return average(minimum, maximum, thresholds);
    case 'triangle':
      return underWave(triangle(minimum, maximum), thresholds);
    case 'sine':
      return underWave(sine(minimum, maximum), thresholds);
    case 'double-triangle':
      return doubled(triangle, minimum, maximum, nextMinimum, thresholds);
    case 'double-sine':
      return doubled(sine, minimum, maximum, nextMinimum, thresholds);
  }
}

function average(
  minimum: number,
  maximum: number,
  {lower, upper, cutoff = 'horizontal'}: Thresholds,
): number {
  if (cutoff !== 'horizontal') throw new RangeError(`the average method has no ${cutoff} cutoff`);
  const mean = (minimum + maximum) / 2;
  return Math.max(0, Math.min(mean, upper ?? mean) - lower);
}

/** A day's course between its extremes, seen from one temperature level. */
interface Wave {
  /** Mean over the day of the degrees above the level. */
  excess(level: number): number;
  /** Share of the day spent above the level. */
  share(level: number): number;
}

function triangle(low: number, high: number): Wave {
  const within = (level: number) => low < level && level < high;
  return {
    excess: level =>
      within(level) ? (high - level) ** 2 / (2 * (high - low)) : Math.max(0, (low + high) / 2 - level),
    share: level => (within(level) ? (high - level) / (high - low) : outside(low, high, level)),
  };
}

/**
 * T = M + A·sin θ. Above a level that it crosses at θ = φ: ((M − level)(π/2 − φ) + A·cos φ)/π degrees on the mean
 * of the day, for 1/2 − φ/π of it; by integrating from φ to π/2.
 */
function sine(low: number, high: number): Wave {
  const mean = (low + high) / 2;
  const amplitude = (high - low) / 2;
  const within = (level: number) => low < level && level < high;
  const crossing = (level: number) => Math.asin(Math.max(-1, Math.min(1, (level - mean) / amplitude)));
  return {
    excess: level => {
      if (!within(level)) return Math.max(0, mean - level);
      const angle = crossing(level);
      return Math.max(0, (mean - level) * (Math.PI / 2 - angle) + amplitude * Math.cos(angle)) / Math.PI;
    },
    share: level => (within(level) ? 0.5 - crossing(level) / Math.PI : outside(low, high, level)),
  };
}

/** A level that the day does not cross: all of the day is above it, or none. A flat day at the level is not above. */
function outside(low: number, high: number, level: number): number {
  return level <= low && level < high ? 1 : 0;
}

/** Each half of the day is half a wave, and its mean is that of the whole wave between the same extremes. */
function doubled(
  wave: (low: number, high: number) => Wave,
  minimum: number,
  maximum: number,
  nextMinimum: number,
  thresholds: Thresholds,
): number {
  // After a cold day the next minimum may lie above the maximum: the half-wave then rises.
  const fall = wave(Math.min(maximum, nextMinimum), Math.max(maximum, nextMinimum));
  return (underWave(wave(minimum, maximum), thresholds) + underWave(fall, thresholds)) / 2;
}

/** Every cutoff is a sum of excesses over levels, and a share. */
function underWave(wave: Wave, {lower, upper, cutoff = 'horizontal'}: Thresholds): number {
  const uncut = wave.excess(lower);
  if (upper === undefined) return uncut;
  const over = wave.excess(upper);
  switch (cutoff) {
    case 'horizontal':
      return uncut - over;
    case 'intermediate':
      return Math.max(0, uncut - 2 * over + wave.excess(2 * upper - lower));
    case 'vertical':
      return Math.max(0, uncut - over - (upper - lower) * wave.share(upper));
  }
}
