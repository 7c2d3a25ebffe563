// When a lot will have gathered so many degree-days: for tasks that keep pace with warmth.
import type {InstantAfterDegreeDays} from '../care/task.ts';
import type {Course} from '../climate/course.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {type Lot, openLots} from '../records/state.ts';
import {doseBetween} from '../thermal/dose.ts';
import type {RateModel} from '../thermal/rate.ts';
import {rateModel} from '../thermal/rate-model.ts';
import {coursesOf} from './courses.ts';
import type {Desk} from './desk.ts';

/** Care is never planned further ahead than this. */
const AHEAD_DAYS = 60;
/** Care done longer ago than this is not reckoned in warmth. */
const BACK_DAYS = 60;
const SECONDS_A_DAY = 86_400;
/** Within so short a time the temperature hardly changes. */
const SHORT_DAYS = 1 / SECONDS_A_DAY;

/** Courses are only composed where a rule of the room counts in degree-days. */
export async function warmthOf(desk: Desk): Promise<InstantAfterDegreeDays> {
  const wanted = [...desk.state.rules.values()].some(({every}) => 'degreeDays' in every);
  const courses = wanted ? await recentCourses(desk) : new Map<string, Course>();
  return (lot, from, degreeDays, lower) => {
    const course = courses.get(lot);
    if (course === undefined) return null;
    const model = rateModel({kind: 'degree-day', lower, degreeDays});
    const at = instantOfDose(course, model, from / MS_PER_DAY);
    // To the second: a visit at 09:00 is not one at 08:59:59.
    return at === null ? null : Math.round(at * SECONDS_A_DAY) * 1000;
  };
}

async function recentCourses(desk: Desk): Promise<Map<string, Course>> {
  const nowDays = desk.now / MS_PER_DAY;
  const fromDays = nowDays - BACK_DAYS;
  const courseOf = coursesOf(desk, fromDays);
  const compose = async (lot: Lot) =>
    [lot.code, await courseOf(lot.stays, {fromDays, nowDays, toDays: nowDays + AHEAD_DAYS})] as const;
  return new Map(await Promise.all(openLots(desk.state).map(compose)));
}

/** Of so much of a course its temperatures have to be known for it to be said that it stays too cold. */
const KNOWN_SHARE = 0.9;

/**
 * The instant at which a dose of 1 is gathered, infinite where it is not within the course; null where that is not known
 * far enough. The dose never falls: halve.
 */
function instantOfDose(course: Course, model: RateModel, fromDays: number): number | null {
  const doseBy = (toDays: number) => doseBetween(course, model, fromDays, toDays).dose;
  let [early, late] = [fromDays, course.atDays.at(-1) ?? fromDays];
  let [before, after] = [0, doseBy(late)];
  if (after < 1) {
    const {coveredDays} = doseBetween(course, model, fromDays, late);
    return coveredDays > 0 && coveredDays >= KNOWN_SHARE * (late - fromDays)
      ? Number.POSITIVE_INFINITY
      : null;
  }
  while (late - early > SHORT_DAYS) {
    const middle = (early + late) / 2;
    const dose = doseBy(middle);
    if (dose < 1) [early, before] = [middle, dose];
    else [late, after] = [middle, dose];
  }
  return early + ((1 - before) / (after - before)) * (late - early);
}
