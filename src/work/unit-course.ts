// What a unit's climate was and is expected to be, with the thresholds of the animals that live in it.
import type {Course} from '../climate/course.ts';
import {type CourseSummary, summaryOf} from '../climate/course-summary.ts';
import type {Series} from '../climate/series.ts';
import {heaviestFirst} from '../records/candidates.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {Profile} from '../records/schema/index.ts';
import {inOrder, type Stage} from '../records/stage.ts';
import {type Lot, openLots, type Unit, valueAt} from '../records/state.ts';
import {landmarksOf} from '../thermal/rate-model.ts';
import {coursesOf} from './courses.ts';
import type {Desk} from './desk.ts';
import {profilesOf} from './profiles.ts';

/** Between these temperatures a lot develops, under its likeliest candidate. */
export interface Threshold {
  readonly lot: string;
  readonly stage: Stage;
  /** Null where the rate never ends, by what the profile says. */
  readonly lowerC: number | null;
  readonly upperC: number | null;
}

export interface UnitCourse {
  readonly unit: Unit;
  readonly course: Course;
  readonly summary: CourseSummary;
  /** Readings of the unit's logger, with its humidity where it reads any; undefined without a logger. */
  readonly read: Series | undefined;
  readonly lots: readonly Lot[];
  readonly thresholds: readonly Threshold[];
}

/** @throws Refusal where there is no such unit */
export async function unitCourse(
  desk: Desk,
  code: string,
  fromDays: number,
  toDays: number,
): Promise<UnitCourse> {
  const {state, now, room} = desk;
  const history = state.units.get(code);
  if (history === undefined)
    throw new Refusal(
      `there is no unit "${code}"`,
      'climate',
      'teneral list units shows the units there are.',
    );
  const unit = valueAt(history, now);
  const nowDays = now / MS_PER_DAY;
  const stays = [{unit: code, from: fromDays * MS_PER_DAY}];
  const course = await coursesOf(desk, fromDays)(stays, {fromDays, nowDays, toDays});
  const lots = livingIn(desk, code);
  return {
    unit,
    course,
    summary: summaryOf(course, nowDays),
    read: unit.logger === undefined ? undefined : await room.series(unit.logger, fromDays, toDays),
    lots,
    thresholds: await thresholdsOf(lots, desk),
  };
}

/** The open lots of a unit. */
export function livingIn({state}: Desk, unit: string): Lot[] {
  return openLots(state).filter(({stays}) => stays.at(-1)?.unit === unit);
}

async function thresholdsOf(lots: readonly Lot[], {state}: Desk): Promise<Threshold[]> {
  const likeliest = lots.flatMap(lot => {
    const [first] = heaviestFirst(lot.candidates);
    return first === undefined ? [] : [{lot, code: first.profile}];
  });
  const profiles = await profilesOf(
    likeliest.map(({code}) => code),
    state,
  );
  return likeliest.flatMap(({lot, code}) => {
    const profile = profiles.get(code);
    const stage = inOrder(lot.alive)[0]?.[0];
    return profile === undefined || stage === undefined ? [] : limitsOf(profile, lot, stage);
  });
}

function limitsOf(profile: Profile, {code: lot}: Lot, stage: Stage): Threshold[] {
  if ('undated' in profile) return [];
  if ('variation' in profile) return [{lot, stage, lowerC: profile.variation.lowerC.mean, upperC: null}];
  const kind = stage.split('-')[0];
  const found =
    profile.stages.find(each => each.stage === stage) ??
    profile.stages.find(each => each.stage.split('-')[0] === kind);
  if (found === undefined) return [];
  const {lowerC, upperC} = landmarksOf(found.rate);
  return [{lot, stage, lowerC, upperC}];
}
