// When adults will emerge from each lot: the lot, its course and its profiles brought to the forecast.
import {openTimeOf} from '../care/calendar.ts';
import type {Course} from '../climate/course.ts';
import {type CourseSummary, summaryOf} from '../climate/course-summary.ts';
import {heldFutures, USUAL_FUTURES} from '../climate/futures.ts';
import {temperatureItself} from '../climate/mean-day.ts';
import type {LotForecast} from '../development/answer.ts';
import {forecastLot} from '../development/forecast.ts';
import type {ForecastRequest, SeenAnimals} from '../development/request.ts';
import type {Day} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import {Refusal} from '../records/refusal.ts';
import type {Profile} from '../records/schema/index.ts';
import {total} from '../records/stage.ts';
import {type Lot, openLots, type Sighting} from '../records/state.ts';
import {doseBetween} from '../thermal/dose.ts';
import {coursesOf} from './courses.ts';
import {midnights} from './day-bounds.ts';
import type {Desk} from './desk.ts';
import {profilesOf} from './profiles.ts';

/** How far ahead emergence is looked for. */
const HORIZON_DAYS = 400;
const WEEK_DAYS = 7;

/** One lot and what is to be expected of it. */
export interface Outlook {
  readonly lot: Lot;
  /** Where it lives. */
  readonly unit: string;
  readonly forecast: LotForecast;
  readonly readings: CourseSummary;
  /** The mean temperature of the first week to come, °C; null where it is not known. */
  readonly expectedC: number | null;
}

export interface OutlookQuestion {
  /** Default: every open lot. */
  readonly codes?: readonly string[] | undefined;
  /** A scenario: held at this temperature from where readings end. */
  readonly holdC?: number | undefined;
  /** How many futures the dates are taken over; 0: the one course expected. Default 50. */
  readonly futures?: number | undefined;
  /** Civil days for whose noon the shares of the stages are wanted. */
  readonly sharesOn?: readonly Day[] | undefined;
}

/** What is supposed to be otherwise than it is, for one lot. */
export interface Otherwise {
  /** Where it lived and will live. */
  readonly stays?: Lot['stays'];
  readonly holdC?: number;
  /** Temperatures, each held in one of as many futures. */
  readonly heldEach?: readonly number[];
  readonly asked?: Partial<Pick<ForecastRequest, 'chances' | 'inFutures' | 'sightings' | 'looksDays'>>;
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
  {holdC, futures = USUAL_FUTURES, sharesOn = []}: Omit<OutlookQuestion, 'codes'> = {},
): OutlookOf {
  const {state, civil, now} = desk;
  if (holdC !== undefined) refuseImpossible(holdC);
  if (lots.length === 0) return () => Promise.reject(new RangeError('no lot was named'));
  const fromDays = Math.min(...lots.map(beginningOf));
  const nowDays = now / MS_PER_DAY;
  const toDays = nowDays + HORIZON_DAYS;
  const courses = coursesOf(desk, fromDays);
  const profiles = profilesOf(
    lots.flatMap(({candidates}) => candidates.map(({profile}) => profile)),
    state,
  );
  const shared = {
    nowDays,
    roundsDays: openTimeOf(state.calendar, civil)
      .roundsBetween(fromDays * MS_PER_DAY, toDays * MS_PER_DAY)
      .map(inDays),
    dayBoundsDays: midnights(civil, fromDays, toDays),
    sharesAtDays: sharesOn.map(day => inDays(civil.at(day, '12:00'))),
  };
  return async (lot, otherwise = {}) => {
    const stays = otherwise.stays ?? lot.stays;
    const held = otherwise.holdC ?? holdC;
    const span = {fromDays: beginningOf(lot), nowDays, toDays, holdC: held, futures};
    const course = heldInTurn(await courses(stays, span), otherwise.heldEach);
    const request = {...requestFor(lot, await profiles), ...shared, course};
    return {
      lot,
      unit: stays.at(-1)!.unit,
      forecast: forecastLot({...request, ...otherwise.asked}),
      readings: summaryOf(course, nowDays),
      expectedC: meanOf(course, course.expectedFromDays, course.expectedFromDays + WEEK_DAYS),
    };
  };
}

/** A course whose futures are temperatures that might be held. */
function heldInTurn(course: Course, temperaturesC: Otherwise['heldEach']): Course {
  if (temperaturesC === undefined) return course;
  const toDays = course.atDays.at(-1) ?? course.expectedFromDays;
  // A copy, for doses are kept with the temperatures that they are of.
  const temperatureC = course.temperatureC.slice();
  return {...course, temperatureC, futures: heldFutures(temperaturesC, course.expectedFromDays, toDays)};
}

function meanOf(course: Course, fromDays: number, toDays: number): number | null {
  const {dose, coveredDays} = doseBetween(course, temperatureItself, fromDays, toDays);
  return coveredDays > 0 ? dose / coveredDays : null;
}

/** No animal develops outside these, °C: whoever asks mistyped. */
const COLDEST = -20;
const HOTTEST = 60;

function refuseImpossible(holdC: number): void {
  if (COLDEST <= holdC && holdC <= HOTTEST) return;
  throw new Refusal(
    `${holdC} °C cannot be held in a rearing unit`,
    '--hold',
    `Name a temperature between ${COLDEST} and ${HOTTEST} °C.`,
  );
}

/** @throws Refusal for a code that is no lot */
export function lotOf({state}: Desk, code: string, where = 'forecast'): Lot {
  const lot = state.lots.get(code);
  if (lot === undefined)
    throw new Refusal(`there is no lot "${code}"`, where, 'teneral list lots shows the lots there are.');
  return lot;
}

function requestFor(
  lot: Lot,
  profiles: ReadonlyMap<string, Profile>,
): Omit<ForecastRequest, 'course' | 'nowDays' | 'roundsDays' | 'dayBoundsDays' | 'sharesAtDays'> {
  return {
    cohorts: lot.cohorts.map(({at, ...cohort}) => ({...cohort, atDays: inDays(at)})),
    candidates: lot.candidates.flatMap(({profile: code, weight}) => {
      const profile = profiles.get(code);
      return profile === undefined ? [] : [{profile, weight}];
    }),
    alive: isHidden(lot) ? null : total(lot.alive),
    closed: lot.closed !== undefined,
    sightings: lot.sightings.map(seenInDays),
    looksDays: lot.looks.map(inDays),
    survival: null,
    holdHours: null,
  };
}

function seenInDays(sighting: Sighting): SeenAnimals {
  const {at, ...seen} = sighting;
  if (seen.kind !== 'emergence') return {...seen, atDays: inDays(at)};
  const {since, ...emergence} = seen;
  return {...emergence, sinceDays: inDays(since), atDays: inDays(at)};
}

const beginningOf = ({cohorts}: Lot): number => Math.min(...cohorts.map(({at}) => inDays(at)));
const inDays = (at: Instant): number => at / MS_PER_DAY;
