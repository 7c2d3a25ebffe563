// When a task can be done in open time, given its window.
import type {Civil, Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';
import type {OpenTime} from './calendar.ts';
import type {Window} from './window.ts';

/**
 * The open moment a task is planned for. On the target's own day if the room is open then; else the next round up
 * to `latest`; else it is pulled forward to the last one from `earliest` on. Null: no open time lies in the window,
 * and only a visit on closed time will do.
 */
export function openMoment(window: Window, open: OpenTime, civil: Civil): Instant | null {
  const targetDay = civil.dayOf(window.target);
  return (
    nearest(momentsOn(targetDay, window, open), window.target) ??
    laterDay(targetDay, window, open, civil) ??
    earlierDay(targetDay, window, open, civil)
  );
}

/** The round of each opening, or where it comes too soon, the instant from which it is not too soon. */
export function momentsOn(day: Day, {earliest, latest}: Window, open: OpenTime): Instant[] {
  const moments: Instant[] = [];
  for (const {from, to} of open.openings(day)) {
    const moment = from < earliest && earliest < to ? earliest : from;
    if (earliest <= moment && moment <= latest) moments.push(moment);
  }
  return moments;
}

function nearest(moments: readonly Instant[], target: Instant): Instant | undefined {
  let best = moments[0];
  for (const each of moments) if (Math.abs(each - target) < Math.abs(best! - target)) best = each;
  return best;
}

function laterDay(targetDay: Day, window: Window, open: OpenTime, civil: Civil): Instant | undefined {
  const last = civil.dayOf(window.latest);
  for (let day = open.neighbour(targetDay, 1); day <= last; day = open.neighbour(day, 1)) {
    const [moment] = momentsOn(day, window, open);
    if (moment !== undefined) return moment;
  }
  return undefined;
}

function earlierDay(targetDay: Day, window: Window, open: OpenTime, civil: Civil): Instant | null {
  const first = civil.dayOf(window.earliest);
  for (let day = open.neighbour(targetDay, -1); day >= first; day = open.neighbour(day, -1)) {
    const moment = momentsOn(day, window, open).at(-1);
    if (moment !== undefined) return moment;
  }
  return null;
}
