// Care rules in lines: one in full, and what one would have asked for.
import type {RuleTrial, RuleUse} from '../../care/rule-use.ts';
import {everyWords, spanWords} from '../../care/when-words.ts';
import type {Civil, Day} from '../../records/civil.ts';
import type {Rule} from '../../records/state.ts';
import {howMuchText} from '../how-much.ts';
import {dayMonth} from './day-words.ts';
import {fill, wrap} from './fit.ts';
import {type Line, line} from './line.ts';

/** "every 2 days (1 to 3)", "every 24 degree-days above 8 °C". */
export function intervalWords({every, earliestDays, latestDays}: Rule): string {
  const often =
    'days' in every
      ? everyWords(every.days)
      : `every ${every.degreeDays} degree-days above ${every.lower} °C`;
  if (earliestDays === undefined && latestDays === undefined) return often;
  const soonest = earliestDays === undefined ? '' : `not before ${spanWords(earliestDays)}`;
  const limit = latestDays === undefined ? '' : `never over ${spanWords(latestDays)}`;
  return [often, soonest, limit].filter(part => part !== '').join(', ');
}

/** "2 d (1 to 3)", "24 degree-days over 8 °C". */
export function shortInterval({every, earliestDays, latestDays}: Rule): string {
  const often =
    'days' in every ? `${every.days} d` : `${every.degreeDays} degree-days over ${every.lower} °C`;
  if (earliestDays === undefined && latestDays === undefined) return often;
  return `${often} (${earliestDays ?? '…'} to ${latestDays ?? '…'})`;
}

/** "cages; lepidoptera; larva-4 larva-5". */
export function whomWords({for: {type, unit, group, profile, lot, stages}}: Rule): string {
  const named = [
    lot === undefined ? undefined : `lot ${lot}`,
    unit === undefined ? undefined : `unit ${unit}`,
    profile,
    group,
    type === undefined
      ? undefined
      : type === 'aquarium'
        ? 'aquaria'
        : type === 'cage'
          ? 'cages'
          : 'emergence boxes',
    stages?.join(' '),
  ].filter(part => part !== undefined);
  return named.length === 0 ? 'all' : named.join(', ');
}

export function ruleLines({rule, origin, lots}: RuleUse, columns: number): Line[] {
  const entry = (name: string, text: string): Line[] =>
    wrap(text, columns - 12).map((part, i) => line(` ${fill(i === 0 ? name : '', 9)} ${part}`));
  return [
    line(` ${rule.code}: ${rule.task.replaceAll('-', ' ')}${rule.off ? ', switched off' : ''}`, 'heading'),
    ...entry('for', whomWords(rule)),
    ...entry('how often', intervalWords(rule)),
    ...(rule.amount === undefined ? [] : entry('how much', howMuchText(rule.amount))),
    ...entry('a miss', `does ${rule.harm} harm`),
    ...(rule.observe.length === 0 ? [] : entry('asks', rule.observe.join(', '))),
    ...(rule.minutes === undefined ? [] : entry('takes', `${rule.minutes} min`)),
    ...(rule.caution === undefined ? [] : entry('care', rule.caution)),
    ...entry('from', `${origin}; ${rule.source ?? 'no source given'}`),
    ...entry('nearest', lots.length === 0 ? 'for no living lot' : `for ${lots.join(' ')}`),
  ];
}

/** A line for each lot or unit: how often it would have been asked, how often it was done, and on which days. */
export function trialLines(
  trials: readonly RuleTrial[],
  days: number,
  civil: Civil,
  columns: number,
): Line[] {
  if (trials.length === 0) return [line(' It fits no living lot.')];
  return trials.flatMap(({subject, unit, asked, done, longestGapDays, latestDays}) => {
    const over = longestGapDays > latestDays ? `, over the ${spanWords(latestDays)} it allows` : '';
    const head = ` ${subject}${subject === unit ? '' : ` in ${unit}`}: ${times(asked.length)} in ${days} days; it was done ${times(done.length)}, the longest gap ${gapWords(longestGapDays)}${over}`;
    const dates = asked.map(at => dayMonth(civil.dayOf(at)));
    return [
      ...wrap(head.trim(), columns - 2).map((part, i) =>
        line(`${i === 0 ? ' ' : '   '}${part}`, over === '' ? 'plain' : 'late'),
      ),
      ...wrap(datesWords(dates), columns - 4).map(part => line(`   ${part}`, 'expected')),
    ];
  });
}

function datesWords(dates: readonly Day[]): string {
  return dates.join(', ');
}

function gapWords(days: number): string {
  return days < 1 ? `${Math.round(days * 24)} hours` : `${Math.round(days * 10) / 10} days`;
}

function times(count: number): string {
  return count === 1 ? 'once' : `${count} times`;
}
