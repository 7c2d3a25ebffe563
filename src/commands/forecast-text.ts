// A lot's outlook in words.

import type {Window} from '../development/answer.ts';
import {TELL_APART} from '../development/not-out.ts';
import {MOSTLY} from '../development/rest.ts';
import {instantWords} from '../exchange/time-words.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {compareStages} from '../records/stage.ts';
import type {Desk} from '../work/desk.ts';
import type {FigureSource} from '../work/figures.ts';
import type {Outlook} from '../work/outlook.ts';
import {chillWords, notOutWords} from '../work/rest-words.ts';
import type {SaidLine} from '../work/said-lines.ts';
import {marginLines} from './said-text.ts';

const STATUS_WORDS = {
  developing: 'developing',
  due: 'due: adults may be out already',
  emerging: 'emerging',
  late: 'late',
  finished: 'finished',
  unknown: 'no dates can be given',
} as const;

/** @param behind the profiles the figures come from, where the reasons are wanted too; why there is no date is always said */
export function forecastText(
  outlook: Outlook,
  desk: Desk,
  columns: number,
  behind?: readonly FigureSource[],
): string {
  const {lot, unit, forecast} = outlook;
  const alive = forecast.alive === null ? 'number alive not known' : `${forecast.alive} alive`;
  const title = [lot.code, unit, lot.taxon ?? '', alive, STATUS_WORDS[forecast.status]].filter(
    part => part !== '',
  );
  const isAsked = behind !== undefined || forecast.animal.p50 === null;
  const lines = [...facts(outlook, desk), ...(isAsked ? reasons(outlook, behind ?? []) : [])];
  return [title.join(' · '), ...lines.flatMap(line => marginLines(line, columns))].join('\n');
}

type Line = SaidLine;

function facts({forecast, readings, experience}: Outlook, desk: Desk): Line[] {
  const {first, half, last, animal, candidates, pace} = forecast;
  const open = forecast.status === 'unknown' ? 'not known' : 'beyond the horizon';
  const when = (days: number | null) =>
    days === null ? open : instantWords(days * MS_PER_DAY, desk.civil, desk.now);
  const window = (times: Window) =>
    times.p10 === null ? open : `${when(times.p50)}  (${when(times.p10)} to ${when(times.p90)})`;
  const lines: Line[] = [];
  const stages = Object.entries(forecast.stagesNow)
    .filter(([, share]) => share >= 0.005)
    .sort(([a], [b]) => compareStages(a, b));
  if (stages.length > 0)
    lines.push(['now', stages.map(([stage, share]) => `${stage} ${percent(share)}`).join(', ')]);
  if (first !== null) lines.push(['first', window(first)]);
  if (half !== null) lines.push(['half', window(half)]);
  if (last !== null) lines.push(['last', window(last)]);
  if (first === null && animal.p50 !== null) lines.push(['one of it', window(animal)]);
  if (forecast.notOut !== null) lines.push(['left', notOutWords(forecast.notOut)]);
  const {chill} = forecast.rest;
  if (forecast.rest.chance >= MOSTLY && chill !== null) lines.push(['cold', chillWords(chill, when)]);
  if (forecast.startCheckingDays !== null) lines.push(['look from', when(forecast.startCheckingDays)]);
  if (candidates.length > 0)
    lines.push([
      'may be',
      candidates.map(({profile, weight}) => `${profile} ${weight.toFixed(2)}`).join(', '),
    ]);
  if (pace !== null)
    lines.push([
      'pace',
      `${pace.p50.toFixed(2)} (${pace.p10.toFixed(2)} to ${pace.p90.toFixed(2)}), 1 is as published`,
    ]);
  for (const {profile, pace: own} of experience)
    if (own !== null)
      lines.push([
        'begins from',
        `${Math.exp(own.lnMean).toFixed(2)} for ${profile}, as ${own.lots === 1 ? 'a finished lot' : `${own.lots} finished lots`} of this room went`,
      ]);
  lines.push([
    'readings',
    `${percent(readings.coverage)} of the time read${filled(readings.filledHours)}; ${readings.basis}`,
  ]);
  return lines;
}

function reasons({forecast}: Outlook, behind: readonly FigureSource[]): Line[] {
  return [
    ...(forecast.notOut === null
      ? []
      : TELL_APART.map((text, i) => [i === 0 ? 'tell apart' : '', text] as const)),
    ...forecast.assumptions.map(text => ['granted', text] as const),
    ...behind.flatMap(({profile, name, sources, fromMemory}) => [
      ['figures', `${profile} (${name})${fromMemory ? ': some figures are from memory' : ''}`] as const,
      ...sources.map(source => ['', source] as const),
    ]),
  ];
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

function filled(hours: number): string {
  return hours === 0 ? '' : `, ${hours.toFixed(1)} h filled in`;
}
