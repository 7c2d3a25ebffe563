// The days ahead in lines: a bar of minutes, and the errands of each day with their units.
import {minuteWords, timeWords} from '../../care/when-words.ts';
import type {Civil, Day} from '../../records/civil.ts';
import type {Instant} from '../../records/entry.ts';
import {dayMonth, weekdayDay} from './day-words.ts';
import {wrap} from './fit.ts';
import type {Glyphs} from './glyphs.ts';
import {type Line, line, piece} from './line.ts';

export interface DayShown {
  readonly day: Day;
  readonly open: boolean;
  readonly closed: string | null;
  readonly minutes: number;
  readonly items: readonly (Errand & {readonly visit: boolean})[];
  /** What somebody has to come for on closed time. */
  readonly errands: readonly Errand[];
  /** When somebody has to come back to the open room. */
  readonly returns: readonly Return[];
}

export interface Return {
  readonly from: Instant;
  readonly to: Instant;
  readonly errands: readonly Errand[];
}

export interface Errand {
  readonly task: string;
  readonly unit: string;
}

const BAR_COLUMNS = 20;
const LEAD = '             ';

/** One line a day: its bar, its minutes, how many tasks. */
export function monthLines(days: readonly DayShown[], civil: Civil, glyphs: Glyphs): Line[] {
  const most = Math.max(60, ...days.map(({minutes}) => minutes));
  return days.map(day => [...headOf(day, most, civil, glyphs), piece(countOf(day))]);
}

/** A line a day, and under it what is done in which units. */
export function weekLines(days: readonly DayShown[], civil: Civil, glyphs: Glyphs, columns: number): Line[] {
  const most = Math.max(60, ...days.map(({minutes}) => minutes));
  return days.flatMap(day => [
    [...headOf(day, most, civil, glyphs), piece(day.open ? '' : closedWords(day))],
    ...wrap(errandsOf(day, civil), columns - LEAD.length).map(text => line(`${LEAD}${text}`)),
  ]);
}

function headOf(day: DayShown, most: number, civil: Civil, glyphs: Glyphs): Line {
  const cells = Math.round((day.minutes / most) * BAR_COLUMNS);
  const full = glyphs.shades.at(-1)!;
  return [
    piece(
      ` ${weekdayDay(day.day, civil).slice(0, 3)} ${dayMonth(day.day)}`.padEnd(LEAD.length - 1),
      'heading',
    ),
    piece(` ${full.repeat(cells)}${' '.repeat(BAR_COLUMNS - cells)} `, 'emergence'),
    piece(`${minuteWords(day.minutes)}  `.padStart(10)),
  ];
}

function countOf(day: DayShown): string {
  const {length} = day.items;
  const visit = day.errands.length > 0 ? ', a visit on closed time' : '';
  const back = day.returns.length > 0 ? ', to come back for some' : '';
  return length === 0
    ? `${closedWords(day)}${visit}`
    : `${length} ${length === 1 ? 'task' : 'tasks'}${back}${visit}`;
}

function closedWords({open, closed}: DayShown): string {
  return open ? 'nothing is due' : (closed ?? 'closed');
}

/** "feed C2 T1; look C1 C3 C4; back 15:00 to 16:30: look T1; on a visit: check air T2". */
function errandsOf({items, returns, errands}: DayShown, civil: Civil): string {
  const inHours = unitsByTask(items.filter(({visit}) => !visit));
  const back = returns.map(each => `back ${returnWords(each, civil)}`);
  const visiting = unitsByTask(errands);
  return [
    ...inHours,
    ...back,
    ...visiting.map((errand, i) => (i === 0 ? `on a visit: ${errand}` : errand)),
  ].join('; ');
}

/** "15:00 to 16:30: look T1, feed T1 T2". */
export function returnWords({from, to, errands}: Return, civil: Civil): string {
  const [early, late] = [timeWords(from, civil), timeWords(to, civil)];
  return `${early === late ? late : `${early} to ${late}`}: ${unitsByTask(errands).join(', ')}`;
}

/** "feed C2 T1", "look C1 C3". */
export function unitsByTask(errands: readonly Errand[]): string[] {
  const units = new Map<string, Set<string>>();
  for (const {task, unit} of errands) {
    const word = task.replaceAll('-', ' ');
    units.set(word, (units.get(word) ?? new Set()).add(unit));
  }
  return [...units].map(([task, all]) => `${task} ${[...all].join(' ')}`);
}
