// The care list as `teneral today` answers it: every instant as ISO text in the room's zone.
import type {Task} from '../care/task.ts';
import type {Desk} from './desk.ts';
import type {Today} from './today.ts';

export function todayAnswer({day, tasks, alerts, summary, who, shortages}: Today, desk: Desk) {
  return {
    day,
    summary,
    tasks: tasks.map(task => ({...taskAnswer(task, desk), who: who.get(task.id) ?? null})),
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

function taskAnswer({since, target, earliest, latest, planned, done, skipped, ...task}: Task, {civil}: Desk) {
  return {
    ...task,
    why: task.why(),
    since: civil.iso(since),
    target: civil.iso(target),
    earliest: civil.iso(earliest),
    latest: civil.iso(latest),
    planned: planned === null ? null : civil.iso(planned),
    done: done === undefined ? null : {...done, at: civil.iso(done.at)},
    skipped: skipped === undefined ? null : {...skipped, at: civil.iso(skipped.at)},
  };
}
