// The care list in words, as it is walked.
import type {Task} from '../care/task.ts';
import {textTable} from '../exchange/text-table.ts';
import {dayWords, instantWords} from '../exchange/time-words.ts';
import type {Desk} from '../work/desk.ts';
import type {Today} from '../work/today.ts';

export function todayText({day, places, alerts, summary}: Today, desk: Desk): string {
  const {civil, now, room} = desk;
  const late = summary.late === 0 ? '' : `, ${summary.late} late`;
  const head = `${dayWords(day, civil, now)} · ${room.name} · ${summary.toDo} to do${late}, about ${summary.minutes} min`;
  const walked = places.map(({place, tasks}) => `${place}\n${indented(tableOf(tasks, desk))}`);
  const amiss = alerts.map(({what, where, mend}) => `! ${where}: ${what}. ${mend}`);
  const list = walked.length === 0 ? [noTasks(desk)] : walked;
  return [head, ...(amiss.length === 0 ? [] : [amiss.join('\n')]), ...list].join('\n\n');
}

function tableOf(tasks: readonly Task[], desk: Desk): string {
  return textTable(tasks, [
    {head: 'unit', cell: task => task.unit},
    {head: 'task', cell: task => task.title},
    {head: 'lot', cell: task => task.lot ?? task.lots.join(' ')},
    {head: 'when', cell: task => whenOf(task, desk)},
    {head: 'id', cell: task => task.id},
  ]);
}

function whenOf({state, target, latest, done, skipped}: Task, {civil, now}: Desk): string {
  if (done !== undefined) return `done ${instantWords(done.at, civil, now)} by ${done.by}`;
  if (skipped !== undefined) return `skipped: ${skipped.why}`;
  if (state === 'overdue') return `late, was due ${instantWords(target, civil, now)}`;
  return `${state === 'early' ? 'may wait' : 'due'}, not after ${instantWords(latest, civil, now)}`;
}

function noTasks({state}: Desk): string {
  if (state.lots.size > 0) return 'nothing is to be done';
  return 'Nothing lives here yet. A unit, a field sample and a lot begin it: teneral unit --help, teneral sample --help, teneral lot --help.';
}

function indented(text: string): string {
  return text.replace(/^(?=.)/gm, '  ');
}
