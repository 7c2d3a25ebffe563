// The days that the threads show: so many to a column, now near a third of the width.
import {openTimeOf} from '../../care/calendar.ts';
import type {DayColumn} from '../../exchange/pictures/thread.ts';
import type {Civil, Day} from '../../records/civil.ts';
import {MS_PER_DAY} from '../../records/entry.ts';
import type {View} from '../sheet.ts';

/** Cells beside the thread: cursor, lot and unit, and the first adult. */
export const LABEL_CELLS = 16;
export const FIRST_CELLS = 10;
/** The share of the picture that lies before now. */
const PAST = 0.35;

export const ZOOMS = [1, 2, 4, 7] as const;

/** Columns of days for a picture of so many cells, one of which is now's. */
export function dayColumns(view: View, cells: number, daysPerColumn: number, shift: number): DayColumn[] {
  const {civil, now, state} = view.facts.desk;
  const {isOpen} = openTimeOf(state.calendar, civil);
  const count = Math.max(10, cells - 1);
  const today = civil.dayOf(now);
  const before = Math.round(count * PAST) - shift;
  return Array.from({length: count}, (_, i) => {
    const day = civil.addDays(today, (i - before) * daysPerColumn);
    const next = civil.addDays(day, daysPerColumn);
    return {
      day,
      fromDays: civil.at(day, '00:00') / MS_PER_DAY,
      toDays: civil.at(next, '00:00') / MS_PER_DAY,
      closed: !daysFrom(day, daysPerColumn, civil).some(isOpen),
    };
  });
}

function daysFrom(day: Day, count: number, civil: Civil): Day[] {
  return Array.from({length: count}, (_, k) => civil.addDays(day, k));
}
