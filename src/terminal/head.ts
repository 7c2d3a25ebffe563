// The left half of the head of a home sheet: day, time, room.
import {dayMonth, weekdayDay} from '../exchange/pictures/day-words.ts';
import type {View} from './sheet.ts';

/** "Fri 12 Jun, 08:40 · north room" */
export function headOf({facts: {desk}, glyphs}: View): string {
  const {civil, now, room} = desk;
  const day = civil.dayOf(now);
  const weekday = weekdayDay(day, civil).slice(0, 3);
  return `${weekday} ${dayMonth(day)}, ${civil.iso(now).slice(11, 16)} ${glyphs.dot} ${room.name}`;
}
