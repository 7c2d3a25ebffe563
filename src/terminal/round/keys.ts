// The keys of the round.

import type {Task} from '../../care/task.ts';
import {askFor} from '../ask/ask-for.ts';
import {askNote, askReading, loggerOfUnit} from '../ask/ask-text.ts';
import type {Binding} from '../bindings.ts';
import {cursorKeys} from '../cursor-keys.ts';
import {emergenceSheet} from '../emergence/form.ts';
import type {SheetOf, Step, View} from '../sheet.ts';
import {current, type RowWithId, roundRows, stops} from './rows.ts';

type Round = SheetOf<'round'>;
type Key = Binding<Round, View, Step<Round>>;

export const roundKeys: readonly Key[] = [
  {
    strokes: [' '],
    short: 'done',
    says: 'do the task under the cursor, or all that are ticked; answers that it forces are asked on the line',
    hint: true,
    disabled: (sheet, view) => {
      const row = at(sheet, view);
      if (row === undefined) return 'nothing is left to do';
      return row.kind === 'task' && row.done ? 'this is done already; u takes it back' : undefined;
    },
    act: (sheet, view) => {
      const row = at(sheet, view)!;
      if (row.kind === 'alert' && sheet.ticked.length === 0)
        return {
          ask: {
            kind: 'text',
            label: 'what was done about it',
            text: '',
            purpose: {for: 'acknowledge', alert: row.id},
          },
        };
      return finish(sheet, view);
    },
  },
  {
    strokes: ['s'],
    short: 'skip',
    says: 'say why a task could not be done; it stays as due as it was',
    hint: true,
    disabled: needsTask,
    act: (sheet, view) => ({
      ask: {
        kind: 'text',
        label: 'why could it not be done',
        text: '',
        purpose: {for: 'skip', ids: chosen(sheet, view).map(({id}) => id)},
      },
    }),
  },
  {
    strokes: ['l'],
    short: 'log reading',
    says: 'write down what a thermometer shows, or the minimum and maximum it held',
    hint: true,
    disabled: (sheet, view) =>
      needsTask(sheet, view) ??
      (loggerOf(sheet, view) === undefined
        ? `${taskAt(sheet, view)!.unit} has no logger or thermometer; teneral unit gives it one`
        : undefined),
    act: (sheet, view) => askReading(view.facts.desk, loggerOf(sheet, view)!),
  },
  {
    strokes: ['e'],
    short: 'adults',
    says: 'write down adults that came out',
    hint: true,
    disabled: (sheet, view) =>
      needsTask(sheet, view) ?? (lotAt(sheet, view) === undefined ? 'no lot lives here' : undefined),
    act: (sheet, view) => ({open: emergenceSheet(lotAt(sheet, view)!)}),
  },
  {
    strokes: ['n'],
    short: 'note',
    says: 'write a remark about the lot or unit',
    hint: true,
    disabled: needsTask,
    act: (sheet, view) => {
      const about = lotAt(sheet, view) ?? taskAt(sheet, view)!.unit;
      return {ask: askNote(about)};
    },
  },
  {
    strokes: ['x'],
    short: 'tick',
    says: 'tick a task, to do several at once',
    hint: true,
    disabled: needsTask,
    act: (sheet, view) => {
      const {id} = at(sheet, view)!;
      const ticked = sheet.ticked.includes(id)
        ? sheet.ticked.filter(one => one !== id)
        : [...sheet.ticked, id];
      return {sheet: {...sheet, ticked, cursor: neighbour(sheet, view, 1)}};
    },
  },
  {
    strokes: ['a'],
    short: 'all alike',
    says: 'tick every task of the kind under the cursor',
    disabled: needsTask,
    act: (sheet, view) => {
      const kind = taskAt(sheet, view)!.task;
      const alike = openTasks(view).filter(({task}) => task === kind);
      return {sheet: {...sheet, ticked: [...new Set([...sheet.ticked, ...alike.map(({id}) => id)])]}};
    },
  },
  {
    strokes: ['enter'],
    short: 'open',
    says: 'open the lot, or the unit',
    hint: true,
    disabled: needsTask,
    act: (sheet, view) => {
      const lot = lotAt(sheet, view);
      return {open: lot === undefined ? unitSheet(sheet, view) : {kind: 'lot', code: lot, scroll: 0}};
    },
  },
  ...(
    [
      ['w', 'ahead', 'the days ahead: what is to be done on each, and how long it takes', 'week', true],
      ['f', 'can it wait', 'what can wait until the room opens after the next closed day', 'wait', false],
      ['h', 'handover', 'the note to whoever takes over', 'handover', false],
    ] as const
  ).map(
    ([stroke, short, says, topic, hint]): Key => ({
      strokes: [stroke],
      short,
      says,
      hint,
      act: () => ({open: {kind: 'plan', topic, scroll: 0}}),
    }),
  ),
  {
    strokes: ['r'],
    short: 'rules',
    says: 'the care rules: read, try, change, switch off',
    act: () => ({open: {kind: 'rules', cursor: undefined, tried: undefined}}),
  },
  {
    strokes: ['c'],
    short: 'climate',
    says: 'open the unit with its temperature course',
    disabled: needsTask,
    act: (sheet, view) => ({open: unitSheet(sheet, view)}),
  },
  ...cursorKeys<Round>('line', moved),
];

/** Tasks that are not done. */
function openTasks(view: View): Task[] {
  return view.facts.today.tasks.filter(({state}) => state !== 'done');
}

/** The tasks that an act is for: those ticked, else the one under the cursor. */
function chosen(sheet: Round, view: View): Task[] {
  const ticked = openTasks(view).filter(({id}) => sheet.ticked.includes(id));
  const under = taskAt(sheet, view);
  return ticked.length > 0 ? ticked : under === undefined ? [] : [under];
}

function finish(sheet: Round, view: View): Step<Round> {
  const tasks = chosen(sheet, view);
  const groups = askFor(tasks);
  return groups.some(({questions}) => questions.length > 0)
    ? {ask: {kind: 'answers', groups, answers: groups.map(() => []), typed: ''}}
    : {
        sheet: finished(sheet, view),
        effects: [{do: 'finish', groups: groups.map(({ids}) => ({ids, seen: {}}))}],
      };
}

/** The round once the chosen tasks are done: nothing ticked, the next line under the cursor. */
export function finished(sheet: Round, view: View): Round {
  const chosenIds = new Set(chosen(sheet, view).map(({id}) => id));
  const all = stops(roundRows(view));
  const here = all.findIndex(({id}) => id === at(sheet, view)?.id);
  const isOpen = (row: RowWithId) => !chosenIds.has(row.id) && !(row.kind === 'task' && row.done);
  const next = all.slice(here + 1).find(isOpen) ?? all.slice(0, here + 1).findLast(isOpen);
  return {...sheet, ticked: [], cursor: next?.id};
}

function at(sheet: Round, view: View): RowWithId | undefined {
  return current(roundRows(view), sheet.cursor);
}

function taskAt(sheet: Round, view: View): Task | undefined {
  const row = at(sheet, view);
  return row?.kind === 'task' ? row.task : undefined;
}

function needsTask(sheet: Round, view: View): string | undefined {
  return taskAt(sheet, view) === undefined ? 'no task is under the cursor' : undefined;
}

/** The lot of the task; of a task about the unit, the lot that lives there alone. */
function lotAt(sheet: Round, view: View): string | undefined {
  const task = taskAt(sheet, view);
  return task?.lot ?? (task?.lots.length === 1 ? task.lots[0] : undefined);
}

function loggerOf(sheet: Round, view: View): string | undefined {
  return loggerOfUnit(view.facts.desk, taskAt(sheet, view)?.unit ?? '');
}

function unitSheet(sheet: Round, view: View): SheetOf<'unit'> {
  return {kind: 'unit', code: taskAt(sheet, view)!.unit, span: 'week', shift: 0, scroll: 0};
}

/** The id of the stop so many lines on; the last or first one where there are no more. */
function neighbour(sheet: Round, view: View, by: number): string | undefined {
  const rows = roundRows(view);
  const all = stops(rows);
  const here = all.findIndex(({id}) => id === current(rows, sheet.cursor)?.id);
  return all[Math.max(0, Math.min(all.length - 1, here + by))]?.id;
}

function moved(sheet: Round, view: View, by: number): Step<Round> {
  return {sheet: {...sheet, cursor: neighbour(sheet, view, by)}};
}
