// How it is said that the day is too short for its care.
import type {Below} from '../care/shortage.ts';
import {whenWords} from '../care/when-words.ts';
import type {Desk} from './desk.ts';
import type {Today} from './today.ts';

/** For each person who is short of time: a sentence, and below it what may be left, with until when. */
export function shortageWords({shortages, tasks}: Today, desk: Desk): string[] {
  const named = new Map(tasks.map(task => [task.id, `${task.unit}  ${task.title}`]));
  return shortages.flatMap(({who, minutes, needed, below}) => [
    `${who} has ${minutes} minutes for ${needed} minutes of care. Below the line:`,
    ...below.map(each => `  ${named.get(each.id)}: ${leftWords(each, desk)}`),
  ]);
}

/** "safe until Sat 21:00", "past its limit already". */
export function leftWords({safeUntil}: Below, {civil, now}: Desk): string {
  return safeUntil === null ? 'past its limit already' : `safe until ${whenWords(safeUntil, now, civil)}`;
}
