// The care list as `teneral today` answers it: every instant as ISO text in the room's zone.
import type {Task} from '../care/task.ts';
import type {Desk} from './desk.ts';
import type {Today} from './today.ts';

export function todayAnswer({day, tasks, alerts, summary, who, shortages}: Today, desk: Desk) {
  return {
    day,
    summary,
    tasks: tasks.map(task => taskAnswer(task, who.get(task.id) ?? null, desk)),
    shortages: shortages.map(({below, ...shortage}) => ({
      ...shortage,
      below: below.map(({id, safeUntil}) => ({
        id,
        safeUntil: safeUntil === null ? null : desk.civil.iso(safeUntil),
      })),
    })),
    alerts: alerts.map(({since, ...alert}) => ({
      ...alert,
      since: since === null ? null : desk.civil.iso(since),
    })),
  };
}

/** Field by field: copying shapes takes longer than a large room's list. */
function taskAnswer(task: Task, who: string | null, {civil}: Desk) {
  const {id, rule, title, amount, unit, lot, lots, place, state, harm, observe, deadOf, caution} = task;
  const {since, earliest, target, latest, planned, minutes, done, skipped} = task;
  return {
    id,
    rule,
    task: task.task,
    title,
    amount,
    unit,
    lot,
    lots,
    place,
    state,
    harm,
    observe,
    deadOf,
    caution,
    why: task.why(),
    minutes,
    since: civil.iso(since),
    target: civil.iso(target),
    earliest: civil.iso(earliest),
    latest: civil.iso(latest),
    planned: planned === null ? null : civil.iso(planned),
    done: done === undefined ? null : {at: civil.iso(done.at), by: done.by},
    skipped: skipped === undefined ? null : {at: civil.iso(skipped.at), by: skipped.by, why: skipped.why},
    who,
  };
}
