// Tasks done or skipped, turned into the records that say so. Dead animals that were counted are lost to the lot where it
// is plain whose they are; all else that was seen stays as it was said and changes no numbers.
import {nearest} from '../records/nearest.ts';
import {Refusal} from '../records/refusal.ts';
import type {Stage} from '../records/stage.ts';
import {type Answers, missingAnswers, readAnswers, seenOption} from './answers.ts';
import {COLD_C} from './cold.ts';
import type {Task} from './task.ts';

/** A record as `apply` takes it; `at` is now. */
export type CareDraft =
  | {
      readonly record: 'care';
      readonly unit: string;
      readonly lot?: string;
      readonly task: string;
      readonly seen: Answers;
    }
  | {
      readonly record: 'skip';
      readonly unit: string;
      readonly lot?: string;
      readonly task: string;
      readonly why: string;
    }
  | {readonly record: 'check'; readonly lot: string; readonly found: 0}
  | {
      readonly record: 'loss';
      readonly lot: string;
      readonly stage: Stage;
      readonly count: number;
      readonly cause: 'dead';
    }
  | {readonly record: 'close'; readonly lot: string; readonly reason: string};

/**
 * The records of tasks that were done.
 * @param tasks all tasks of the room
 * @param ids which of them
 * @param seen answers as `key=value`; each goes to the tasks that ask for it, to all where none does
 * @throws Refusal for an id that is no open task, an answer that cannot be read, and where answers are missing
 */
export function recordsOfDone(
  tasks: readonly Task[],
  ids: readonly string[],
  seen: readonly string[],
): readonly CareDraft[] {
  const chosen = openTasks(tasks, ids);
  const asked = new Set(chosen.flatMap(({observe}) => observe));
  const answers = readAnswers(seen, asked);
  refuseUnanswered(chosen, answers);
  return chosen.flatMap(task => recordsOf(task, answersFor(task, answers, asked)));
}

/**
 * The records of tasks that could not be done. Their time runs on.
 * @throws Refusal for an id that is no open task, and where no reason is given
 */
export function recordsOfSkip(
  tasks: readonly Task[],
  ids: readonly string[],
  why: string | undefined,
): readonly CareDraft[] {
  const chosen = openTasks(tasks, ids);
  const reason = why?.trim() ?? '';
  if (reason === '')
    throw new Refusal(
      'a task is skipped for a reason',
      ids.join(', '),
      'Add --why "…", such as --why "no food left".',
    );
  return chosen.map(task => ({record: 'skip', ...whoseOf(task), task: task.task, why: reason}));
}

/** The tasks of these ids, each once. */
function openTasks(tasks: readonly Task[], ids: readonly string[]): readonly Task[] {
  if (ids.length === 0)
    throw new Refusal('no task is named', '', 'teneral today lists the tasks with their ids.');
  const byId = new Map(tasks.map(task => [task.id, task]));
  return [...new Set(ids)].map(id => {
    const task = byId.get(id);
    if (task === undefined) throw unknownTask(id, byId);
    if (task.done !== undefined)
      throw new Refusal(
        `"${task.title}" is done already, by ${task.done.by}`,
        id,
        'teneral undo takes back your last request.',
      );
    return task;
  });
}

function unknownTask(id: string, byId: ReadonlyMap<string, Task>): Refusal {
  const close = nearest(id, byId.keys());
  const hint = close === undefined ? '' : `Did you mean ${close}? `;
  return new Refusal(`there is no task "${id}"`, '', `${hint}teneral today lists the tasks with their ids.`);
}

function refuseUnanswered(tasks: readonly Task[], answers: Answers): void {
  const open = tasks.filter(({observe}) => missingAnswers(observe, answers).length > 0);
  if (open.length === 0) return;
  const keys = [...new Set(open.flatMap(({observe}) => missingAnswers(observe, answers)))];
  const titles = [...new Set(open.map(({title}) => `"${title}"`))];
  throw new Refusal(
    `${titles.join(', ')} cannot be ticked off without saying what was seen: ${keys.join(', ')}`,
    open.map(({id}) => id).join(', '),
    `Add ${keys.map(seenOption).join(' ')}.`,
  );
}

function answersFor({observe}: Task, answers: Answers, asked: ReadonlySet<string>): Answers {
  return Object.fromEntries(
    Object.entries(answers).filter(([key]) => observe.includes(key) || !asked.has(key)),
  );
}

/** A lot is closed by its own record; a look that found nobody is also a check; the dead are a loss. */
function recordsOf(task: Task, seen: Answers): CareDraft[] {
  const {lot} = task;
  if (task.task === 'close' && lot !== null) return [{record: 'close', lot, reason: 'all accounted for'}];
  const care: CareDraft = {record: 'care', ...whoseOf(task), task: task.task, seen};
  const {deadOf} = task;
  const lost: CareDraft[] =
    deadOf !== null && typeof seen.dead === 'number' && seen.dead > 0
      ? [{record: 'loss', ...deadOf, count: seen.dead, cause: 'dead'}]
      : [];
  const nobody = seen.adults === 0 && (seen.deadUnseen ?? 0) === 0;
  return task.task === 'look' && lot !== null && nobody
    ? [care, {record: 'check', lot, found: 0}]
    : [care, ...lost];
}

function whoseOf({unit, lot}: Task): {unit: string; lot?: string} {
  return lot === null ? {unit} : {unit, lot};
}

/** What still has to be written down of what was seen, or done about it, for a person to be told. */
export function stillToRecord({unit, lot, deadOf}: Task, seen: Answers): string[] {
  const {adults, dead, deadUnseen} = seen;
  const some = (count: Answers[string] | undefined) => typeof count === 'number' && count > 0;
  const hints: string[] = [];
  if (some(dead) && deadOf === null)
    hints.push(`whose the dead are is not plain: teneral loss ${lot ?? 'LOT'}`);
  if (lot !== null && some(adults))
    hints.push(`record the ${adults === 1 ? 'adult' : `${adults} adults`}: teneral emerge ${lot}`);
  else if (lot !== null && some(deadUnseen))
    hints.push(`record the dead adults: teneral emerge ${lot} --fate dead`);
  if (seen.escapes === true)
    hints.push(`record who escaped: teneral loss ${lot ?? 'LOT'} NUMBER --cause escaped`);
  if (seen.bubbles === false) hints.push(`give ${unit} air within the hour, then check it again`);
  if (seen.scum === true)
    hints.push(
      `change part of the water of ${unit} for matured water, take out what is left of the food, feed less`,
    );
  if (seen.foodLeft === 'much')
    hints.push(`take the leftovers out of ${unit} and give less: what rots does more harm than hunger`);
  if (typeof seen.coldC === 'number' && seen.coldC > COLD_C)
    hints.push(
      `${unit} is warmer than a winter (${COLD_C} °C): look at its setting and its door, and when it was last cold`,
    );
  if (seen.condensation === true) hints.push(`wipe ${unit} dry and air it: small adults drown in drops`);
  return hints;
}
