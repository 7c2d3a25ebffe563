// The days above the threads: a label at each Monday that has room, closed days, now.
import type {Civil} from '../../records/civil.ts';
import {dayMonth} from './day-words.ts';
import type {Glyphs} from './glyphs.ts';
import {joinCells, type Line, piece} from './line.ts';
import {type DayColumn, nowColumn} from './thread.ts';

/** As wide as a thread: the columns and one for now. */
export function threadAxis(
  columns: readonly DayColumn[],
  nowDays: number,
  civil: Civil,
  glyphs: Glyphs,
): Line {
  const cells = columns.map(({closed}) => (closed ? piece(glyphs.closed, 'mark') : piece(' ')));
  const now = nowColumn(columns, nowDays);
  cells.splice(now, 0, piece(glyphs.now, 'mark'));
  let free = 0;
  columns.forEach((column, i) => {
    const at = i < now ? i : i + 1;
    const monday = mondayIn(column, civil);
    if (monday === undefined || at < free) return;
    const label = dayMonth(monday);
    const crossesNow = at < now && at + label.length > now;
    if (crossesNow || at + label.length > cells.length) return;
    [...label].forEach((letter, k) => {
      cells[at + k] = piece(letter);
    });
    free = at + label.length + 1;
  });
  return joinCells(cells);
}

function mondayIn({day, fromDays, toDays}: DayColumn, civil: Civil): string | undefined {
  const length = Math.max(1, Math.round(toDays - fromDays));
  for (let k = 0; k < length; k++) {
    const one = civil.addDays(day, k);
    if (civil.weekdayOf(one) === 'mon') return one;
  }
  return undefined;
}
