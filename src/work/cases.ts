// From a lot to what it is forecast from: its animals, its profiles, its course, the rounds on which it is looked at.
import {openTimeOf} from '../care/calendar.ts';
import {holdHoursOf} from '../care/hold-time.ts';
import type {Course} from '../climate/course.ts';
import {type Held, heldFutures, USUAL_FUTURES} from '../climate/futures.ts';
import {forecastLot} from '../development/forecast.ts';
import type {ForecastRequest, SeenAnimals} from '../development/request.ts';
import type {Day} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import {type Line, lineOf, ownLineOf, type SeenInLine, staysOf} from '../records/lineage.ts';
import {Refusal} from '../records/refusal.ts';
import type {Profile} from '../records/schema/index.ts';
import {seasonLagDays} from '../records/season.ts';
import {total} from '../records/stage.ts';
import type {Lot, RoomState} from '../records/state.ts';
import {coursesOf} from './courses.ts';
import {midnights} from './day-bounds.ts';
import type {Desk} from './desk.ts';
import {type Experience, experienceOf, type LotLesson} from './experience.ts';
import {profilesOf} from './profiles.ts';

/** How far ahead emergence is looked for. */
const HORIZON_DAYS = 400;

export interface CaseQuestion {
  /** A scenario: held at this temperature from where readings end. */
  readonly holdC?: number | undefined;
  /** How many futures the dates are taken over; 0: the one course expected. Default 50. */
  readonly futures?: number | undefined;
  /** How far ahead emergence is looked for; 0 where all is past. Default 400. */
  readonly horizonDays?: number | undefined;
  /** What finished lots taught; none: as published. */
  readonly lessons: readonly LotLesson[] | Promise<readonly LotLesson[]>;
  /** Without what was seen of the animals before they came into the lot. */
  readonly alone?: boolean | undefined;
  /** Civil days for whose noon the shares of the stages are wanted. */
  readonly sharesOn?: readonly Day[] | undefined;
}

/** What is supposed to be otherwise than it is, for one lot. */
export interface Otherwise {
  /** Where it lived and will live. */
  readonly stays?: Lot['stays'];
  readonly holdC?: number;
  /** By the water as measured, however seldom, or by the air. */
  readonly waterAs?: 'measured' | 'air';
  /** Temperatures, each held in one of as many futures. */
  readonly heldEach?: readonly Held[];
  readonly asked?: Partial<
    Pick<ForecastRequest, 'chances' | 'inFutures' | 'doubts' | 'outAtDays' | 'sightings' | 'looksDays'>
  >;
}

/** What a lot is forecast from. */
export interface Case {
  readonly request: ForecastRequest;
  readonly course: Course;
  readonly unit: string;
  readonly experience: readonly Experience[];
}

/** Brings lots to what they are forecast from. */
export function caser(
  desk: Desk,
  lots: readonly Lot[],
  {
    holdC,
    futures = USUAL_FUTURES,
    horizonDays = HORIZON_DAYS,
    sharesOn = [],
    alone = false,
    lessons,
  }: CaseQuestion,
): (lot: Lot, otherwise?: Otherwise) => Promise<Case> {
  const {state, civil, now} = desk;
  if (holdC !== undefined) refuseImpossible(holdC);
  if (lots.length === 0) return () => Promise.reject(new RangeError('no lot was named'));
  const lineFor = (lot: Lot) => (alone ? ownLineOf(lot) : lineOf(lot, state.lots));
  const sources = lots.flatMap(lot => hiddenSourceOf(lot, state) ?? []);
  const fromDays = Math.min(...[...lots, ...sources].map(lot => beginningOf(lineFor(lot))));
  const nowDays = now / MS_PER_DAY;
  const toDays = nowDays + horizonDays;
  const courses = coursesOf(desk, fromDays);
  const profiles = profilesOf(
    lots.flatMap(({candidates}) => candidates.map(({profile}) => profile)),
    state,
  );
  const open = openTimeOf(state.calendar, civil);
  const rounds = open.roundsBetween(fromDays * MS_PER_DAY, toDays * MS_PER_DAY);
  const shared = {
    nowDays,
    roundsDays: rounds.map(inDays),
    closesDays: rounds.map((_, i) => inDays(open.lastMoment((rounds[i + 1] ?? rounds[i]! + 1) - 1)!)),
    dayBoundsDays: midnights(civil, fromDays, toDays),
    sharesAtDays: sharesOn.map(day => inDays(civil.at(day, '12:00'))),
  };
  const caseOf = async (lot: Lot, otherwise: Otherwise = {}): Promise<Case> => {
    const line = lineFor(lot);
    const stays =
      otherwise.stays === undefined ? line.stays : staysOf({...lot, stays: otherwise.stays}, state.lots);
    const held = otherwise.holdC ?? holdC;
    const span = {
      fromDays: beginningOf(line),
      nowDays,
      toDays,
      holdC: held,
      futures,
      waterAs: otherwise.waterAs,
    };
    const course = heldInTurn(await courses(stays, span), otherwise.heldEach);
    const known = await profiles;
    const experience = experienceOf(lot, known, await lessons);
    const before = {...span, toDays: nowDays, holdC: undefined, futures: 0};
    const elsewhere = await Promise.all(
      line.elsewhere.map(async ([code, theirs]) => [code, await courses(theirs, before)] as const),
    );
    const source = alone ? undefined : hiddenSourceOf(lot, state);
    const asked = {
      ...requestFor(lot, line, known, experience),
      holdHours: holdHoursOf(lot, state, known),
    };
    const request = {
      ...asked,
      ...(source === undefined ? {} : {candidates: taughtBy((await caseOf(source)).request, asked, lot)}),
      ...shared,
      seasonLagDays: seasonLagDays(state, lot.sample),
      course,
      elsewhere: new Map(elsewhere),
      ...otherwise.asked,
    };
    return {request, course, unit: stays.at(-1)!.unit, experience};
  };
  return caseOf;
}

/** The lot of hidden animals that a lot was taken out of, of which the same is thought. */
function hiddenSourceOf({origin, candidates}: Lot, {lots}: Pick<RoomState, 'lots'>): Lot | undefined {
  if (origin.kind !== 'lot' || origin.how !== 'split') return undefined;
  const source = lots.get(origin.code);
  const isSame = JSON.stringify(source?.candidates) === JSON.stringify(candidates);
  return source !== undefined && isHidden(source) && isSame ? source : undefined;
}

/** Who animals are that were taken out of galls, wood or fruit: as what had come out there by then has it. */
function taughtBy(
  source: ForecastRequest,
  {candidates}: Pick<ForecastRequest, 'candidates'>,
  {startedAt}: Lot,
): ForecastRequest['candidates'] {
  const nowDays = inDays(startedAt);
  const then = forecastLot({
    ...source,
    nowDays,
    closed: false,
    sightings: source.sightings.filter(({atDays}) => atDays <= nowDays),
    looksDays: source.looksDays.filter(atDays => atDays <= nowDays),
  });
  return candidates.map((candidate, i) => ({
    ...candidate,
    weight: then.candidates[i]?.weight ?? candidate.weight,
  }));
}

/** A course whose futures are temperatures that might be held. */
function heldInTurn(course: Course, heldEach: Otherwise['heldEach']): Course {
  if (heldEach === undefined) return course;
  const toDays = course.atDays.at(-1) ?? course.expectedFromDays;
  // A copy, for doses are kept with the temperatures that they are of.
  const temperatureC = course.temperatureC.slice();
  return {...course, temperatureC, futures: heldFutures(heldEach, course.expectedFromDays, toDays)};
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

function requestFor(
  lot: Lot,
  line: Line,
  profiles: ReadonlyMap<string, Profile>,
  experience: readonly Experience[],
): Omit<
  ForecastRequest,
  'course' | 'nowDays' | 'roundsDays' | 'dayBoundsDays' | 'sharesAtDays' | 'holdHours'
> {
  return {
    lot: lot.code,
    cohorts: line.cohorts.map(({at, ...cohort}) => ({...cohort, atDays: inDays(at)})),
    candidates: lot.candidates.flatMap(({profile: code, weight}) => {
      const profile = profiles.get(code);
      const ownPace = experience.find(each => each.profile === code)?.pace ?? undefined;
      return profile === undefined ? [] : [{profile, weight, ownPace}];
    }),
    alive: isHidden(lot) ? null : total(lot.alive),
    closed: lot.closed !== undefined,
    sightings: line.sightings.map(seenInDays),
    looksDays: line.looks.map(inDays),
    survival: experience[0]?.survival?.share ?? null,
  };
}

/** A sighting with its instants in days. */
export function seenInDays(sighting: SeenInLine): SeenAnimals {
  const {at, ...seen} = sighting;
  if (seen.kind !== 'emergence') return {...seen, atDays: inDays(at)};
  const {since, ...emergence} = seen;
  return {...emergence, sinceDays: inDays(since), atDays: inDays(at)};
}

const beginningOf = ({cohorts}: Pick<Line, 'cohorts'>): number =>
  Math.min(...cohorts.map(({at}) => inDays(at)));
const inDays = (at: Instant): number => at / MS_PER_DAY;
