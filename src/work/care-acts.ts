// Doing what the care list asks: tasks ticked off with what was seen, or skipped with the reason.
import {type CareDraft, recordsOfDone, recordsOfSkip, stillToRecord} from '../care/doing.ts';
import type {Task} from '../care/task.ts';
import {openDesk} from './desk.ts';
import {type Recorded, record} from './record.ts';
import type {Session} from './session.ts';
import {allTasks} from './today.ts';

export interface Finished extends Recorded {
  /** What was seen and still has to be recorded, for a person to be told. */
  readonly stillToRecord: readonly string[];
}

/**
 * Tick tasks off, all in one request.
 * @param seen answers as `key=value`
 * @throws Refusal for an id that is no open task, and where a forced answer is missing
 */
export async function finish(
  session: Session,
  ids: readonly string[],
  seen: readonly string[],
): Promise<Finished> {
  const tasks = await tasksOf(session);
  const drafts = recordsOfDone(tasks, ids, seen);
  return {...(await record(session, drafts)), stillToRecord: hints(tasks, ids, drafts)};
}

/** @throws Refusal for an id that is no open task, and where no reason is given */
export async function skip(
  session: Session,
  ids: readonly string[],
  why: string | undefined,
): Promise<Recorded> {
  return record(session, recordsOfSkip(await tasksOf(session), ids, why));
}

async function tasksOf(session: Session): Promise<readonly Task[]> {
  return allTasks(await openDesk(session));
}

function hints(tasks: readonly Task[], ids: readonly string[], drafts: readonly CareDraft[]): string[] {
  return tasks
    .filter(({id}) => ids.includes(id))
    .flatMap(task => {
      const own = drafts.find(
        draft => draft.record === 'care' && draft.task === task.task && draft.lot === (task.lot ?? undefined),
      );
      const hint = own?.record === 'care' ? stillToRecord(task, own.seen) : undefined;
      return hint === undefined ? [] : [hint];
    });
}
