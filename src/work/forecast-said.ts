// A lot's outlook in words.

import type {Window} from '../development/answer.ts';
import {MOSTLY} from '../development/rest.ts';
import {instantWords} from '../exchange/time-words.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {compareStages} from '../records/stage.ts';
import type {Desk} from './desk.ts';
import type {Outlook} from './outlook.ts';
import {chillWords, notOutWords, overdueLines, pastWords} from './rest-words.ts';
import type {SaidLine, SaidLines} from './said-lines.ts';
import {waterWords} from './water-words.ts';
import type {Why} from './why.ts';
import {grantedLines, whyWords} from './why-words.ts';

const STATUS_WORDS = {
  developing: 'developing',
  due: 'due: adults may be out already',
  emerging: 'emerging',
  late: 'late',
  finished: 'finished',
  unknown: 'no dates can be given',
} as const;

/** @param told the reasons, where they are wanted too; why there is no date is always said */
export function forecastSaid(outlook: Outlook, desk: Desk, told?: Why): SaidLines {
  const {lot, unit, forecast} = outlook;
  const alive = forecast.alive === null ? 'number alive not known' : `${forecast.alive} alive`;
  const title = [lot.code, unit, lot.taxon ?? '', alive, STATUS_WORDS[forecast.status]].filter(
    part => part !== '',
  );
  const undated = forecast.animal.p50 === null;
  const reasons =
    told !== undefined
      ? whyWords(told, desk).lines
      : [readingsLine(outlook), ...overdueLines(outlook, desk), ...(undated ? grantedLines(forecast) : [])];
  return {title: title.join(' · '), lines: [...facts(outlook, desk), ...reasons]};
}

function facts(outlook: Outlook, desk: Desk): SaidLine[] {
  const {forecast, experience} = outlook;
  const {first, half, last, animal, candidates, pace} = forecast;
  const open = forecast.status === 'unknown' ? 'not known' : 'beyond the horizon';
  const when = (days: number | null) =>
    days === null ? open : instantWords(days * MS_PER_DAY, desk.civil, desk.now);
  const window = (times: Window) =>
    times.p10 === null ? open : `${when(times.p50)}  (${when(times.p10)} to ${when(times.p90)})`;
  const lines: SaidLine[] = [];
  const stages = Object.entries(forecast.stagesNow)
    .filter(([, share]) => share >= 0.005)
    .sort(([a], [b]) => compareStages(a, b));
  if (stages.length > 0)
    lines.push(['now', stages.map(([stage, share]) => `${stage} ${percent(share)}`).join(', ')]);
  const warmth = warmthWords(outlook);
  if (warmth !== undefined) lines.push(['warmth', warmth]);
  const water = waterWords(outlook, desk);
  if (water !== undefined) lines.push(['water', water]);
  if (first !== null) lines.push(['first', window(first)]);
  if (half !== null) lines.push(['half', window(half)]);
  if (last !== null) lines.push(['last', window(last)]);
  if (first === null && animal.p50 !== null) lines.push(['one of it', window(animal)]);
  if (forecast.sexes !== null)
    lines.push(['a male', window(forecast.sexes.male)], ['a female', window(forecast.sexes.female)]);
  const past = pastWords(outlook, desk);
  if (past !== undefined) lines.push(['left', past]);
  if (forecast.notOut !== null) lines.push([past === undefined ? 'left' : '', notOutWords(forecast.notOut)]);
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
  if (desk.state.settings.finishedLots === 'left-out' && experience.every(({pace: own}) => own === null))
    lines.push(['begins from', 'the published figures: the room is set to leave finished lots out']);
  return lines;
}

/** The degree-days behind them, and how much of that was filled in; undefined where they are not counted so. */
export function warmthWords({forecast: {degreeDays}, estimated}: Outlook): string | undefined {
  if (degreeDays === null) return undefined;
  const {stage, accumulated, required, lower} = degreeDays;
  const sum = `${accumulated.toFixed(1)} of ${required.toFixed(0)} degree-days above ${rounded(lower)} °C as ${stage}`;
  if (estimated === null) return sum;
  const {degreeDays: filledIn, within, share, datesHours} = estimated;
  const band = within === null ? '' : ` ± ${within.toFixed(1)}`;
  const dates =
    datesHours === null
      ? ', and how far off that may be is not known'
      : `, so that the dates may lie ${hoursWords(datesHours)} earlier or later`;
  return `${sum}; ${filledIn.toFixed(1)}${band} of them, ${percent(share)}, are estimated${dates}`;
}

function rounded(value: number): number {
  return Math.round(value * 10) / 10;
}

function hoursWords(hours: number): string {
  return hours < 0.95 ? 'under an hour' : `${Math.round(hours)} h`;
}

function readingsLine({readings: {coverage, filledHours, basis}}: Outlook): SaidLine {
  return ['readings', `${percent(coverage)} of the time read${filled(filledHours)}; ${basis}`];
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

function filled(hours: number): string {
  return hours === 0 ? '' : `, ${hours.toFixed(1)} h filled in`;
}
