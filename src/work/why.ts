// Why a forecast says what it says: its readings and gaps, its figures, what was learned from which entry, what is open.
import type {Stretch} from '../climate/course.ts';
import type {LotForecast, Window} from '../development/answer.ts';
import type {Doubts} from '../development/doubts.ts';
import {forecastLot} from '../development/forecast.ts';
import {type CaseQuestion, caser} from './cases.ts';
import {lineOf} from './daybook.ts';
import type {Desk} from './desk.ts';
import {type FigureSource, figuresBehind} from './figures.ts';
import {lessonsUsed} from './lessons.ts';
import {lotOf, type Outlook, outlookFrom} from './outlook.ts';

/** What one look taught. */
export interface LearnedStep {
  readonly atDays: number;
  /** The entries of the look, as the daybook says them. */
  readonly entries: readonly string[];
  readonly said: readonly string[];
  readonly candidates: LotForecast['candidates'];
  readonly pace: LotForecast['pace'];
  /** Of half of the animals, else of one taken at random. */
  readonly window: Window;
}

export interface Why {
  readonly outlook: Outlook;
  /** Stretches up to now that the lot's own unit was not read in. */
  readonly gaps: readonly Stretch[];
  /** How many futures the dates are taken over, and how many days of them earlier years gave. */
  readonly futures: {readonly number: number; readonly days: number; readonly ofEarlierYears: number};
  readonly figures: readonly FigureSource[];
  /** The looks told are all there were. */
  readonly fromTheStart: boolean;
  /** Before the first of them. */
  readonly before: Omit<LearnedStep, 'atDays' | 'entries' | 'said'>;
  /** The latest looks, in order of time. */
  readonly learned: readonly LearnedStep[];
  readonly doubts: Doubts | null;
}

/** The looks that are told one by one. */
const MOST_STEPS = 6;
const READ: ReadonlySet<Stretch['basis']> = new Set(['logger', 'extremes', 'hand']);

export interface WhyQuestion {
  readonly lot: string;
  readonly holdC?: number | undefined;
  /** Default: those that the room is set to use. */
  readonly lessons?: CaseQuestion['lessons'] | undefined;
}

/** @throws Refusal for a code that is no lot */
export async function why(
  desk: Desk,
  {lot: code, holdC, lessons = lessonsUsed(desk)}: WhyQuestion,
): Promise<Why> {
  const lot = lotOf(desk, code);
  const known = await caser(desk, [lot], {holdC, lessons})(lot, {asked: {doubts: true}});
  const outlook = outlookFrom(lot, known, desk);
  const {course, request} = known;
  const {sightings, looksDays} = request;
  const instants = [...new Set(sightings.map(({atDays}) => atDays))];
  const told = instants.slice(-MOST_STEPS);
  const asOf = (untilDays: number) =>
    forecastLot({
      ...request,
      doubts: false,
      sightings: sightings.filter(({atDays}) => atDays <= untilDays),
      looksDays: looksDays.filter(atDays => atDays <= untilDays),
    });
  const learned: LearnedStep[] = [];
  for (const atDays of told) {
    const forecast = atDays === instants.at(-1) ? outlook.forecast : asOf(atDays);
    const ids = sightings.filter(seen => seen.atDays === atDays).map(({entry}) => entry);
    const entries = desk.state.entries.filter(({id}) => ids.includes(id));
    learned.push({
      atDays,
      entries: ids,
      said: entries.map(entry => lineOf(entry, desk)),
      ...summaryOf(forecast),
    });
  }
  const beforeDays = instants[instants.length - told.length - 1] ?? Number.NEGATIVE_INFINITY;
  return {
    outlook,
    gaps: course.stretches.filter(
      ({basis, fromDays, toDays}) =>
        !READ.has(basis) && fromDays < request.nowDays && toDays <= course.expectedFromDays,
    ),
    futures: {
      number: course.futures?.orders.length ?? 0,
      days: course.futures?.days.length ?? 0,
      ofEarlierYears: course.futures?.ofEarlierYears ?? 0,
    },
    figures: await figuresBehind(outlook, desk),
    fromTheStart: told.length === instants.length,
    before: summaryOf(instants.length === 0 ? outlook.forecast : asOf(beforeDays)),
    learned,
    doubts: outlook.forecast.doubts,
  };
}

function summaryOf({candidates, pace, half, animal}: LotForecast): Why['before'] {
  const {p10, p50, p90} = half ?? animal;
  return {candidates, pace, window: {p10, p50, p90}};
}
