// Dates on labels: day, month, year with full stops, the month in roman numerals, so that day and month cannot be
// confused. Order and stops: Wheeler, Huber & Currie 2001, Label Data Standards for Terrestrial Arthropods, Biological
// Survey of Canada Document Series 8; roman months: Purdue Extension 401.
import type {Day} from '../../records/civil.ts';

const months = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'viii', 'ix', 'x', 'xi', 'xii'];

/** "25.v.2026". */
export function labelDay(day: Day): string {
  const {year, month, date} = partsOf(day);
  return `${date}.${month}.${year}`;
}

/**
 * From one day to another, without repeating what both share: "25-27.v.2026", "25.iv-6.v.2000" (the form of an
 * emergence between two looks in La Salle's CSIRO collecting protocol), "30.xii.2025-2.i.2026".
 */
export function labelSpan(from: Day, to: Day): string {
  if (from === to) return labelDay(to);
  const [a, b] = [partsOf(from), partsOf(to)];
  if (a.year !== b.year) return `${labelDay(from)}-${labelDay(to)}`;
  return a.month === b.month ? `${a.date}-${labelDay(to)}` : `${a.date}.${a.month}-${labelDay(to)}`;
}

function partsOf(day: Day) {
  const [year = '', month, date] = day.split('-');
  return {year, month: months[Number(month) - 1], date: Number(date)};
}
