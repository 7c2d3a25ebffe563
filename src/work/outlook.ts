// When adults will emerge from each lot: the lot, its course and its profiles brought to the forecast.
import type {Course} from '../climate/course.ts';
import {type CourseSummary, summaryOf} from '../climate/course-summary.ts';
import {temperatureItself} from '../climate/mean-day.ts';
import type {WaterOffset} from '../climate/water-offset.ts';
import type {LotForecast} from '../development/answer.ts';
import {forecastLot} from '../development/forecast.ts';
import {Refusal} from '../records/refusal.ts';
import {type Lot, openLots} from '../records/state.ts';
import {doseBetween} from '../thermal/dose.ts';
import {type Case, type CaseQuestion, caser, type Otherwise} from './cases.ts';
import type {Desk} from './desk.ts';
import {type EstimatedWarmth, estimatedWarmth} from './estimated-warmth.ts';
import type {Experience} from './experience.ts';
import {lessonsUsed} from './lessons.ts';
import {type Overdue, overdueOf} from './overdue.ts';

const WEEK_DAYS = 7;

/** One lot and what is to be expected of it. */
export interface Outlook {
  readonly lot: Lot;
  /** Where it lives. */
  readonly unit: string;
  readonly forecast: LotForecast;
  readonly readings: CourseSummary;
  /** By how much it is past its time; null where it is not late. */
  readonly overdue: Overdue | null;
  /** What of its degree-days was filled in; null where nothing was, or it does not count in degree-days. */
  readonly estimated: EstimatedWarmth | null;
  /** What the room's own finished lots taught of its candidates, and is made use of. */
  readonly experience: readonly Experience[];
  /** What its water taught, and when half would be out by what is not gone by; null without measurements of it. */
  readonly water: (WaterOffset & {readonly otherwiseDays: number | null}) | null;
  /** The mean temperature of the first week to come, °C; null where it is not known. */
  readonly expectedC: number | null;
}

export interface OutlookQuestion extends Partial<Omit<CaseQuestion, 'lessons'>> {
  /** Default: those that the room is set to use. */
  readonly lessons?: CaseQuestion['lessons'] | undefined;
  /** Default: every open lot. */
  readonly codes?: readonly string[] | undefined;
}

export type OutlookOf = (lot: Lot, otherwise?: Otherwise) => Promise<Outlook>;

/**
 * Forecasts of lots, in the order of their codes as asked or as recorded.
 * @throws Refusal for a code that is no lot
 */
export async function outlooks(desk: Desk, question: OutlookQuestion = {}): Promise<Outlook[]> {
  const lots =
    question.codes === undefined ? openLots(desk.state) : question.codes.map(code => lotOf(desk, code));
  const outlookOf = outlooker(desk, lots, question);
  return Promise.all(lots.map(lot => outlookOf(lot)));
}

/**
 * Forecasts lot by lot, for whoever wants each as soon as it is known. What the lots share is read and composed once,
 * when the first of them asks for it.
 */
export function outlooker(
  desk: Desk,
  lots: readonly Lot[],
  question: Omit<OutlookQuestion, 'codes'> = {},
): OutlookOf {
  const caseOf = casesOf(desk, lots, question);
  return async (lot, otherwise = {}) => {
    const known = await caseOf(lot, otherwise);
    const outlook = outlookFrom(lot, known, desk);
    const {water} = known.course;
    if (water === undefined || question.holdC !== undefined || Object.keys(otherwise).length > 0)
      return outlook;
    const other = await caseOf(lot, {waterAs: water.used ? 'air' : 'measured'});
    return {...outlook, water: {...water, otherwiseDays: halfOf(forecastLot(other.request))}};
  };
}

/** The forecasts alone, lot by lot: what a care list or a look back needs, at the cost of a single run each. */
export function forecaster(
  desk: Desk,
  lots: readonly Lot[],
  question: Omit<OutlookQuestion, 'codes'> = {},
): (lot: Lot) => Promise<LotForecast> {
  const caseOf = casesOf(desk, lots, question);
  return async lot => forecastLot((await caseOf(lot)).request);
}

function casesOf(desk: Desk, lots: readonly Lot[], question: Omit<OutlookQuestion, 'codes'>) {
  return caser(desk, lots, {...question, lessons: question.lessons ?? lessonsUsed(desk)});
}

/** When half are out, or one of hidden animals. */
export function halfOf({half, animal}: LotForecast): number | null {
  return (half ?? animal).p50;
}

export function outlookFrom(lot: Lot, known: Case, desk: Desk): Outlook {
  const {request, course, unit, experience} = known;
  const forecast = forecastLot(request);
  const readings = summaryOf(course, request.nowDays);
  const expectedC = meanOf(course, course.expectedFromDays, course.expectedFromDays + WEEK_DAYS);
  return {
    lot,
    unit,
    forecast,
    readings,
    overdue: overdueOf(lot, known, forecast, readings.coverage, desk),
    estimated: estimatedWarmth(course, forecast, request, expectedC) ?? null,
    expectedC,
    experience,
    water: null,
  };
}

function meanOf(course: Course, fromDays: number, toDays: number): number | null {
  const {dose, coveredDays} = doseBetween(course, temperatureItself, fromDays, toDays);
  return coveredDays > 0 ? dose / coveredDays : null;
}

/** @throws Refusal for a code that is no lot */
export function lotOf({state}: Desk, code: string, where = 'forecast'): Lot {
  const lot = state.lots.get(code);
  if (lot === undefined)
    throw new Refusal(`there is no lot "${code}"`, where, 'teneral list lots shows the lots there are.');
  return lot;
}
