// What a course rests on, in figures and in words.
import type {Course, CourseBasis, Stretch} from './course.ts';

export interface CourseSummary {
  /** Share of the time up to now for which the lot's own unit was read; 1 where no time has passed. */
  readonly coverage: number;
  /** Hours up to now that were filled from elsewhere, and so are estimates. */
  readonly filledHours: number;
  /** Hours up to now for which nothing at all is known. */
  readonly unknownHours: number;
  /** What the course rests on up to now, by share of time, and from then on. */
  readonly basis: string;
}

const READ: ReadonlySet<CourseBasis> = new Set(['logger', 'extremes', 'hand']);
/** Of the past, filled from elsewhere: an estimate. */
export const FILLED: ReadonlySet<CourseBasis> = new Set(['other-logger', 'mean-day', 'set-points']);

export function summaryOf(course: Course, nowDays: number): CourseSummary {
  const past = course.stretches
    .filter(({fromDays}) => fromDays < nowDays)
    .map(stretch => ({...stretch, toDays: Math.min(stretch.toDays, nowDays)}));
  const days = (bases: ReadonlySet<CourseBasis>) =>
    past.reduce((sum, {basis, fromDays, toDays}) => (bases.has(basis) ? sum + (toDays - fromDays) : sum), 0);
  const passed = past.reduce((sum, {fromDays, toDays}) => sum + (toDays - fromDays), 0);
  return {
    coverage: passed > 0 ? days(READ) / passed : 1,
    filledHours: days(FILLED) * 24,
    unknownHours: days(new Set(['unknown'])) * 24,
    basis: phraseFor(pastPhrase(past, passed), futurePhrase(course)),
  };
}

/** What is the same before and after now is said once. */
function phraseFor(before: string, after: string): string {
  if (before === after || after === '') return before;
  return before === '' ? `then ${after}` : `${before}; then ${after}`;
}

/** "logger L1 86 %, other logger L4 14 %", the largest share first. */
function pastPhrase(past: readonly Stretch[], passed: number): string {
  if (passed === 0) return '';
  const shares = new Map<string, number>();
  for (const stretch of past) {
    const words = wordsFor(stretch);
    shares.set(words, (shares.get(words) ?? 0) + (stretch.toDays - stretch.fromDays) / passed);
  }
  if (shares.size === 1) return [...shares.keys()][0]!;
  return [...shares]
    .sort(([, a], [, b]) => b - a)
    .map(([words, share]) => `${words} ${percent(share)}`)
    .join(', ');
}

function futurePhrase({stretches, expectedFromDays}: Course): string {
  const next = stretches.find(({fromDays}) => fromDays >= expectedFromDays);
  return next === undefined ? '' : wordsFor(next);
}

function wordsFor({basis, of = ''}: Stretch): string {
  switch (basis) {
    case 'logger':
      return `logger ${of}`;
    case 'extremes':
      return `minimum and maximum of ${of}`;
    case 'hand':
      return `read by hand (${of})`;
    case 'other-logger':
      return `other logger ${of}`;
    case 'mean-day':
      return 'mean day of the days around';
    case 'set-points':
      return 'set points';
    case 'expected':
      return of;
    case 'held':
      return `held at ${of} °C`;
    case 'unknown':
      return 'unknown';
  }
}

/** A share that is not nothing does not read as nothing. */
function percent(share: number): string {
  return share < 0.01 ? 'under 1 %' : `${Math.round(share * 100)} %`;
}
