// The care list in words, as it is walked.
import type {Task} from '../care/task.ts';
import {withAmount} from '../care/titles.ts';
import {minuteWords} from '../care/when-words.ts';
import {fill, wrap} from '../exchange/pictures/fit.ts';
import {dayWords, instantWords} from '../exchange/time-words.ts';
import type {Desk} from '../work/desk.ts';
import {shortageWords} from '../work/shortage-words.ts';
import type {Today} from '../work/today.ts';

const UNIT_COLUMNS = 6;
/** With so many columns a task's id stands on its own line no longer. */
const WIDE = 120;

export function todayText(today: Today, desk: Desk, columns: number): string {
  const {day, places, alerts, summary} = today;
  const {civil, now, room} = desk;
  const late = summary.late === 0 ? '' : `, ${summary.late} late`;
  const head = `${dayWords(day, civil, now)} · ${room.name} · ${summary.toDo} to do${late}, about ${minuteWords(summary.minutes)}`;
  const amiss = alerts.flatMap(({id, what, mend}) => [
    ...hanging('! ', `${what}. ${mend}`, columns),
    `  ${id}`,
  ]);
  const walked = places.map(({place, tasks}) =>
    [place, ...tasks.flatMap(task => lines(task, desk, columns))].join('\n'),
  );
  const list = walked.length === 0 ? [noTasks(desk)] : walked;
  const parts = [shortageWords(today, desk), amiss].filter(lines => lines.length > 0);
  return [head, ...list, ...parts.map(lines => lines.join('\n'))].join('\n\n');
}

/** Unit, what is to be done, by when; the id that `teneral done` wants behind it, or below where it is narrow. */
function lines(task: Task, desk: Desk, columns: number): string[] {
  const unit = fill(`  ${task.unit}`, UNIT_COLUMNS);
  const titleColumns = columns >= WIDE ? 40 : columns - UNIT_COLUMNS - 34;
  const line = `${unit}${fill(withAmount(task), titleColumns)}  ${whenOf(task, desk)}`;
  return columns >= WIDE
    ? [`${fill(line, 82)}  ${task.id}`]
    : [line, `${' '.repeat(UNIT_COLUMNS)}${task.id}`];
}

function whenOf({state, target, latest, done, skipped}: Task, {civil, now}: Desk): string {
  if (done !== undefined) return `done ${instantWords(done.at, civil, now)} by ${done.by}`;
  if (skipped !== undefined) return `skipped: ${skipped.why}`;
  if (state === 'overdue') return `late, was due ${instantWords(target, civil, now)}`;
  return `${state === 'early' ? 'may wait' : 'due'}, by ${instantWords(latest, civil, now)}`;
}

function noTasks({state}: Desk): string {
  if (state.lots.size > 0) return 'Nothing is to be done.';
  return 'Nothing lives here yet. A unit, a field sample and a lot begin it: see teneral unit --help, teneral sample --help, teneral lot --help.';
}

/** Wrapped, with the lines after the first set in. */
function hanging(lead: string, text: string, columns: number): string[] {
  return wrap(text, columns - lead.length).map(
    (line, i) => (i === 0 ? lead : ' '.repeat(lead.length)) + line,
  );
}
