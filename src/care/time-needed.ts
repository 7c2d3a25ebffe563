// How long tasks take.
import type {Job} from './job.ts';

/** Where a rule does not say. */
const MINUTES = 3;

export function minutesOf({rule}: Pick<Job, 'rule'>): number {
  return rule.minutes ?? MINUTES;
}
