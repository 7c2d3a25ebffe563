// "Can it wait?", told in lines: what cannot first, then what can and until when.
import {costWords, visitWords} from '../care/coming-words.ts';
import type {Visit} from '../care/visits.ts';
import type {WaitingTask} from '../care/waiting.ts';
import {dateWords} from '../care/when-words.ts';
import {wrap} from '../exchange/pictures/fit.ts';
import {type Line, line} from '../exchange/pictures/line.ts';
import type {Civil} from '../records/civil.ts';
import type {Waiting, WaitingLot} from './waiting.ts';

export function waitingLines(
  {until, canWait, tasks, lots, visits}: Waiting,
  civil: Civil,
  columns: number,
): Line[] {
  const when = dateWords(until, civil);
  const pressing = tasks.filter(task => !task.canWait);
  const safe = tasks.filter(task => task.canWait);
  const entry = (unit: string, text: string, late: boolean): Line[] =>
    wrap(text, columns - 9).map((part, i) =>
      line(` ${(i === 0 ? unit : '').padEnd(7)} ${part}`, late ? 'late' : 'plain'),
    );
  return [
    line(
      canWait ? ` Yes, everything can wait until ${when}.` : ` No: this cannot wait until ${when}.`,
      'heading',
    ),
    ...wrap(visits.length === 0 ? '' : visitsWords(visits, civil), columns - 2).map(text => line(` ${text}`)),
    ...pressing.flatMap(task => entry(task.unit, `${task.title}: ${cureWords(task, civil)}`, true)),
    ...lots.filter(lot => !lot.canWait).flatMap(lot => entry(lot.unit, adultWords(lot), true)),
    ...(safe.length === 0 ? [] : [[], line(' This can.', 'heading')]),
    ...safe.flatMap(task =>
      entry(task.unit, `${task.title}: safe until ${dateWords(task.safeUntil, civil)}`, false),
    ),
    ...lots.filter(lot => lot.canWait).flatMap(lot => entry(lot.unit, adultWords(lot), false)),
  ];
}

/** "Cost: 1 visit, 2 units, about 6 min: between Sat 24 May 16:30 and Mon 26 May 16:30 (feed A3, A5)." */
function visitsWords(visits: readonly Visit[], civil: Civil): string {
  const [first = '', ...rest] = costWords(visits, 'visit');
  return `${first.toUpperCase()}${rest.join('')}: ${visits.map(each => visitWords(each, civil)).join('; ')}.`;
}

function cureWords({cure, safeUntil, visit}: WaitingTask, civil: Civil): string {
  const limit = `too late after ${dateWords(safeUntil, civil)}`;
  const come =
    visit === undefined
      ? ''
      : `come between ${dateWords(visit.from, civil)} and ${dateWords(visit.to, civil)}`;
  switch (cure) {
    case 'nothing':
      return 'safe';
    case 'now':
      return `${limit}; done before the room closes it is safe`;
    case 'visit':
      return `${limit}; ${come}`;
    case 'now-and-visit':
      return `${limit}; do it before the room closes, and ${come}`;
  }
}

/** "26-022-A: 98 in 100 that an adult is out, 8.1 expected; 6.0 would have waited over 24 hours". */
function adultWords({lot, probability, expected, expectedOverHold, holdHours}: WaitingLot): string {
  if (probability === null || expected === null || expectedOverHold === null)
    return `${lot}: nobody knows how many animals it holds; look as often as before`;
  const over = `${amount(expectedOverHold)} would have waited over ${holdHours} hours`;
  return `${lot}: ${Math.round(100 * probability)} in 100 that an adult is out, ${amount(expected)} expected; ${over}`;
}

function amount(value: number): string {
  return value < 0.095 ? String(Math.round(100 * value) / 100) : value.toFixed(1);
}
