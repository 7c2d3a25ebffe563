// Why a forecast says what it says, in words a practitioner accepts, and as `teneral forecast --why` answers it.
import type {Stretch} from '../climate/course.ts';
import type {LotForecast} from '../development/answer.ts';
import type {Doubts} from '../development/doubts.ts';
import {instantWords} from '../exchange/time-words.ts';
import {heaviestFirst} from '../records/candidates.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import type {Desk} from './desk.ts';
import {overdueLines} from './rest-words.ts';
import {experienceLines} from './review-words.ts';
import type {SaidLine, SaidLines} from './said-lines.ts';
import type {LearnedStep, Why} from './why.ts';

const FILLED_WITH: Readonly<Partial<Record<Stretch['basis'], string>>> = {
  'other-logger': 'another logger',
  'mean-day': 'the mean day of the days around',
  'set-points': 'the set points',
  unknown: 'nothing: it is not known',
};
/** "another logger R, +0.8 ± 0.4 °C": what stands in for the readings of a gap. */
export function filledWithWords({basis, of, movedC, sdC}: Stretch): string {
  const what = FILLED_WITH[basis] ?? basis;
  if (basis !== 'other-logger' || movedC === undefined || sdC === undefined) return what;
  return `${what}, ${of}, ${movedC < 0 ? '' : '+'}${movedC.toFixed(1)} ± ${sdC.toFixed(1)} °C`;
}

/** Longer lists are cut; the shortest gaps matter least. */
const MOST_GAPS = 4;

export function whyWords(told: Why, desk: Desk): SaidLines {
  const {civil, now} = desk;
  const {outlook, gaps, figures, doubts} = told;
  const {lot, forecast, readings, experience} = outlook;
  const when = (days: number) => instantWords(days * MS_PER_DAY, civil, now);
  const longest = [...gaps].sort((a, b) => b.toDays - b.fromDays - (a.toDays - a.fromDays));
  const shown = longest.slice(0, MOST_GAPS).sort((a, b) => a.fromDays - b.fromDays);
  const gapLines = shown.map(
    (gap, i): SaidLine => [
      i === 0 ? 'gaps' : '',
      `${when(gap.fromDays)} to ${when(gap.toDays)}: ${filledWithWords(gap)}`,
    ],
  );
  return {
    title: `${lot.code} · why`,
    lines: [
      ['readings', `${Math.round(readings.coverage * 100)} % of the time read; ${readings.basis}`],
      ...gapLines,
      ...(longest.length > shown.length
        ? [['', `and ${longest.length - shown.length} shorter ones`] as const]
        : []),
      ...comesLines(told),
      [told.fromTheStart ? 'at first' : 'before', stateWords(told.before)],
      ...told.learned.flatMap((step, i): SaidLine[] => [
        ...step.said.map((said, j): SaidLine => [i + j === 0 ? 'learned' : '', said]),
        ['', `→ ${stateWords(step)}`],
      ]),
      ...experience.flatMap(({pace, survival}) => experienceLines({pace, survival})),
      ...(doubts === null ? [] : doubtLines(doubts)),
      ...overdueLines(outlook, desk),
      ...grantedLines(forecast),
      ...figures
        .filter(isInIt)
        .flatMap(({profile, name, sources, fromMemory}): SaidLine[] => [
          ['figures', `${profile} (${name})${fromMemory ? ': some figures are from memory' : ''}`],
          ...sources.map((source): SaidLine => ['', source]),
        ]),
    ],
  };
}

/** A weight that does not read as nothing. */
function isInIt({weight}: {readonly weight: number}): boolean {
  return weight >= 0.005;
}

/** What a forecast takes for granted. */
export function grantedLines({assumptions}: LotForecast): SaidLine[] {
  return assumptions.map((text, i): SaidLine => [i === 0 ? 'granted' : '', text]);
}

function comesLines({futures: {number, days, ofEarlierYears}}: Why): SaidLine[] {
  if (number === 0) return [];
  const earlier =
    ofEarlierYears === 0
      ? ''
      : `, ${ofEarlierYears} of them of earlier years, to which it drifts as the present weather is forgotten`;
  return [['to come', `${number} futures, drawn from ${days} whole days read in this unit${earlier}`]];
}

/** "pieris-rapae 0.97, pace 0.93, window 4.1 d wide" */
function stateWords({candidates, pace, window: {p10, p90}}: Why['before']): string {
  const weights = heaviestFirst(candidates)
    .filter(isInIt)
    .map(({profile, weight}) => `${profile} ${weight.toFixed(2)}`);
  const wide = p10 === null || p90 === null ? 'no window' : `window ${(p90 - p10).toFixed(1)} d wide`;
  return [...weights, ...(pace === null ? [] : [`pace ${pace.p50.toFixed(2)}`]), wide].join(', ');
}

const DOUBTS: readonly {readonly of: keyof Doubts; readonly is: string; readonly narrows: string}[] = [
  {
    of: 'candidate',
    is: 'who they are',
    narrows: 'a name, even only of the family, or a count of stages about the next moult',
  },
  {
    of: 'kind',
    is: 'which kind of the group',
    narrows: 'the day on which they moult or pupate, or a name nearer than the group',
  },
  {of: 'pace', is: 'how fast this lot goes', narrows: 'counts of stages about the next moult or pupation'},
  {
    of: 'animals',
    is: 'how old each is, and how unlike they are',
    narrows: 'little: a count of stages tells their ages, the rest is their nature',
  },
  {
    of: 'temperature',
    is: 'how warm it will be',
    narrows: 'a temperature that is held, or a place whose days are more alike',
  },
];

/** What the width is made of, and what would narrow it most. */
function doubtLines(doubts: Doubts): SaidLine[] {
  const {shares, first} = weighed(doubts);
  if (first === undefined) return [];
  const made = shares
    .filter(({share}) => share >= 0.01)
    .map(({is, share}) => `${is} ${Math.round(share * 100)} %`);
  return [
    ['open', made.join(', ')],
    ['would help', first.narrows],
  ];
}

function weighed(doubts: Doubts) {
  const whole = DOUBTS.reduce((sum, {of}) => sum + doubts[of], 0);
  const shares = DOUBTS.map(one => ({...one, share: whole > 0 ? doubts[one.of] / whole : 0})).sort(
    (a, b) => b.share - a.share,
  );
  return {shares, first: whole > 0 ? shares[0] : undefined};
}

export function whyAnswer({gaps, futures, figures, before, learned, doubts}: Why, {civil}: Desk) {
  const iso = (days: number | null) => (days === null ? null : civil.iso(days * MS_PER_DAY));
  const state = ({candidates, pace, window}: Why['before']) => ({
    candidates,
    pace,
    window: {p10: iso(window.p10), p50: iso(window.p50), p90: iso(window.p90)},
  });
  const opened = doubts === null ? undefined : weighed(doubts);
  return {
    gaps: gaps.map(({fromDays, toDays, basis, of = null, movedC = null, sdC = null}) => ({
      from: iso(fromDays),
      to: iso(toDays),
      filledBy: basis,
      of,
      movedC,
      sdC,
    })),
    futures,
    before: state(before),
    learned: learned.map(({atDays, entries, ...step}: LearnedStep) => ({
      at: iso(atDays),
      entries,
      ...state(step),
    })),
    doubts: opened === undefined ? null : Object.fromEntries(opened.shares.map(({of, share}) => [of, share])),
    wouldHelp: opened?.first?.narrows ?? null,
    figures,
  };
}
