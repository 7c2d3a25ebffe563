// What a profile says of keeping its animals, in words: where they are met, their food, their care, their rest.

import {howMuchText} from '../exchange/how-much.ts';
import {wrap} from '../exchange/pictures/fit.ts';
import type {Profile} from '../records/schema/index.ts';
import {listed} from '../records/stage-words.ts';

/** Where it is met, what it eats, what is done for it otherwise, and how it rests. */
export function keepingText({met, food, care = [], diapause, sexes}: Profile, width: number): string {
  const lines = [
    ...(met === undefined ? [] : [`met in or on ${listed(met.sat.map(spaced))}${hostWords(met.hosts)}`]),
    ...(met?.lengthMm === undefined ? [] : [`full-grown ${met.lengthMm[0]} to ${met.lengthMm[1]} mm long`]),
    ...(food === undefined ? [] : [`fed ${food.what}`]),
    ...care.map(
      ({task, stages, everyDays, latestDays, amount}) =>
        `${spaced(task)}${stages === undefined ? '' : ` (${listed(stages)})`} every ${everyDays} d, ${latestDays} d at the latest${amount === undefined ? '' : `; ${howMuchText(amount)}`}`,
    ),
    ...diapause.map(restWords),
    ...(sexes === undefined || sexes.female === sexes.male ? [] : [sexWords(sexes)]),
  ];
  return lines.length === 0 ? '' : `Keeping\n${lines.flatMap(text => indented(text, width)).join('\n')}`;
}

function restWords({stage, months, chance, chill, secondYear}: Profile['diapause'][number]): string {
  const cold =
    chill === undefined
      ? ''
      : `; ${chill.days ?? chill.degreeDays} ${chill.days === undefined ? 'degree-days' : 'd'} below ${chill.belowC} °C end it`;
  const second = secondYear === undefined ? '' : `; ${percent(secondYear)} of these wait for a second winter`;
  return `rests as ${stage} in ${percent(chance)} where found in month ${listed(months.map(String))}${cold}${second}`;
}

function sexWords({female, male}: NonNullable<Profile['sexes']>): string {
  const [first, second] = male < female ? ['males', 'females'] : ['females', 'males'];
  const sooner = 1 - Math.min(female, male) / Math.max(female, male);
  return `${first} come first: they take ${percent(sooner)} less time than ${second}`;
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

function hostWords(hosts: readonly string[]): string {
  return hosts.length === 0 ? '' : `, of ${listed(hosts)}`;
}

function spaced(word: string): string {
  return word.replaceAll('-', ' ');
}

/** Wrapped, the first line two blanks in, the others four. */
export function indented(text: string, width: number): string[] {
  return wrap(text, width - 4).map((line, i) => `${i === 0 ? '  ' : '    '}${line}`);
}
