// The rules by which a reading is doubted, each with one number that may be set for a logger.
import type {Logger} from '../records/state.ts';

/** What was set for a logger; a rule that is not named keeps its usual number. */
export type DoubtSettings = NonNullable<Logger['rules']>;

export type DoubtName = keyof DoubtSettings;

/**
 * What a rule does with its hits. `set-aside`: the reading cannot be and is left out of the course, where gaps are
 * filled. `look`: it may be true; a person looks and masks it or not.
 */
export type Consequence = 'set-aside' | 'look';

export interface DoubtRule {
  readonly says: string;
  readonly unit: string;
  /** Common practice for room loggers, no source. */
  readonly usual: number;
  readonly consequence: Consequence;
}

export const doubtRules = {
  'too-cold': {says: 'below what can be', unit: '°C', usual: -30, consequence: 'set-aside'},
  'too-warm': {says: 'above what can be', unit: '°C', usual: 60, consequence: 'set-aside'},
  spike: {
    says: 'one or two readings far off both neighbours',
    unit: '°C',
    usual: 5,
    consequence: 'set-aside',
  },
  stuck: {says: 'the same value again and again', unit: 'h', usual: 6, consequence: 'set-aside'},
  jump: {says: 'a step that stays', unit: '°C', usual: 6, consequence: 'look'},
  bench: {says: 'suddenly elsewhere and back', unit: '°C', usual: 3, consequence: 'look'},
  sun: {says: 'warmer by day than the days around', unit: '°C', usual: 5, consequence: 'look'},
  'out-of-water': {says: 'changes faster than water does', unit: '°C/h', usual: 1.5, consequence: 'look'},
  wet: {says: 'humidity at saturation, a wet sensor', unit: 'h', usual: 12, consequence: 'look'},
} as const satisfies Readonly<Record<DoubtName, DoubtRule>>;

export const doubtNames = Object.keys(doubtRules) as readonly DoubtName[];

/** A rule's number; undefined where it is off. */
export function limitOf(name: DoubtName, settings: DoubtSettings = {}): number | undefined {
  const set = settings[name];
  return set === 'off' ? undefined : (set ?? doubtRules[name].usual);
}
