// Doing what the care list asks: tasks ticked off with what was seen, or skipped with the reason.
import {type CareDraft, recordsOfDone, recordsOfSkip, stillToRecord} from '../care/doing.ts';
import type {Task} from '../care/task.ts';
import type {Entry} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {Room} from '../room/room.ts';
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
  const desk = await openDesk(session);
  const tasks = await allTasks(desk);
  const drafts = recordsOfDone(tasks, ids, seen);
  const known = new Set(desk.room.entries.map(({id}) => id));
  const refuseTwice = (room: Room) => refuseDoneMeanwhile(drafts, room.entries, known);
  return {
    ...(await record(session, drafts, undefined, refuseTwice)),
    stillToRecord: hints(tasks, ids, drafts),
  };
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

/** Somebody else did one of them between our looking and our writing. */
function refuseDoneMeanwhile(
  drafts: readonly CareDraft[],
  entries: readonly Entry[],
  known: ReadonlySet<string>,
): void {
  for (const {id, by, record: other} of entries) {
    if (known.has(id) || other.record !== 'care') continue;
    const twice = drafts.find(
      draft =>
        draft.record === 'care' &&
        draft.task === other.task &&
        (draft.lot === undefined ? draft.unit === other.unit : draft.lot === other.lot),
    );
    if (twice !== undefined)
      throw new Refusal(
        `${by} has just done "${other.task.replaceAll('-', ' ')}" in ${other.unit ?? other.lot}`,
        other.lot ?? other.unit ?? '',
        'Nothing was written; teneral today shows what is left.',
      );
  }
}

function hints(tasks: readonly Task[], ids: readonly string[], drafts: readonly CareDraft[]): string[] {
  return tasks
    .filter(({id}) => ids.includes(id))
    .flatMap(task => {
      const own = drafts.find(
        draft => draft.record === 'care' && draft.task === task.task && draft.lot === (task.lot ?? undefined),
      );
      return own?.record === 'care' ? stillToRecord(task, own.seen) : [];
    });
}
