// When a task is due, in words, seen from now.
import type {Task} from '../care/task.ts';
import {dayWords, instantWords} from '../exchange/time-words.ts';
import type {Civil} from '../records/civil.ts';
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';

/** "late 9 h, limit today 16:30", "before 11:00", "today", "from tomorrow". */
export function whenWords(task: Task, civil: Civil, now: Instant): string {
  const {state, target, latest, earliest, done, skipped} = task;
  if (state === 'done')
    return done === undefined ? 'done' : `done ${instantWords(done.at, civil, now)} by ${done.by}`;
  if (skipped !== undefined) return `could not be done: ${skipped.why}`;
  if (now > latest) return `past its limit by ${spanWords(now - latest)}`;
  if (now > target && state === 'overdue')
    return `late ${spanWords(now - target)}, limit ${limit(latest, civil, now)}`;
  if (now < earliest) return `from ${instantWords(earliest, civil, now)}`;
  const today = civil.dayOf(now);
  if (civil.dayOf(latest) === today) return `before ${civil.iso(latest).slice(11, 16)}`;
  return civil.dayOf(target) <= today ? 'today' : `by ${dayWords(civil.dayOf(latest), civil, now)}`;
}

/** "9 h", "3 days", "20 min" */
export function spanWords(ms: number): string {
  if (ms >= 2 * MS_PER_DAY) return `${Math.round(ms / MS_PER_DAY)} days`;
  if (ms >= MS_PER_HOUR) return `${Math.round(ms / MS_PER_HOUR)} h`;
  return `${Math.max(1, Math.round(ms / 60_000))} min`;
}

function limit(at: Instant, civil: Civil, now: Instant): string {
  return instantWords(at, civil, now);
}

/** A chance as people say it: "3 in 4", "9 in 10", "1 in 20". */
export function chanceWords(chance: number): string {
  if (chance < 0.005) return 'hardly any chance';
  if (chance > 0.995) return 'as good as certain';
  const denominators = chance < 0.1 || chance > 0.9 ? [10, 20, 50, 100] : [2, 3, 4, 5, 10];
  let best = {of: 1, count: 0, miss: Number.POSITIVE_INFINITY};
  for (const of of denominators) {
    const count = Math.round(chance * of);
    const miss = Math.abs(count / of - chance) + of * 1e-4;
    if (count > 0 && count < of && miss < best.miss) best = {of, count, miss};
  }
  return `${best.count} in ${best.of}`;
}
