// What comes after the readings: the set points corrected by the unit's own record, or its recent days again.
import type {Unit} from '../records/state.ts';
import {dosesBetween} from '../thermal/dose.ts';
import type {Course} from './course.ts';
import type {CourseInput} from './course-input.ts';
import type {Instruments} from './instruments.ts';
import {meanDay, repeated, temperatureItself} from './mean-day.ts';
import {constant, type Source, type Span} from './part.ts';
import {regimeOf, type Standing, sameClimate, shared} from './regime.ts';
import {type ByPhase, phasesOf, setPointsOf, stepping} from './set-points.ts';
import {lastReadDays, readSources, recordOf} from './unit-record.ts';

const RECENT_DAYS = 7;
/** Set points are corrected by a day of readings or more. */
const ENOUGH_DAYS = 1;

/** Sources of the future of a unit, which stays as it stands, from where readings end. */
export function expectedSources(input: CourseInput, instruments: Instruments, standing: Standing): Source[] {
  const {holdC, civil} = input;
  if (holdC !== undefined) return [constant(holdC, {basis: 'held', of: `${holdC}`})];

  const recent = recentRecord(input, instruments, standing);
  const setPoints = setPointsOf(standing.unit);
  if (setPoints !== undefined) {
    const corrected = recent.readDays >= ENOUGH_DAYS;
    const temperatures = corrected ? correctedBy(recent, setPoints, standing.unit, civil) : setPoints;
    const of = corrected ? 'set points, corrected by recent readings' : 'set points';
    return [stepping(temperatures, standing.unit, civil, {basis: 'expected', of})];
  }
  const mark = {basis: 'expected', of: 'recent days'} as const;
  const day = meanDay(recent.course, civil, recent.span);
  if (day !== undefined) return [repeated(day, civil, mark)];
  return recent.readDays > 0 ? [constant(recent.meanC, mark)] : [];
}

interface Recent {
  readonly span: Span;
  readonly course: Course;
  readonly readDays: number;
  readonly meanC: number;
}

/** The last week before the future; where nothing was read in it, the last week in which something was. */
function recentRecord(input: CourseInput, instruments: Instruments, standing: Standing): Recent {
  const regime = regimeOf(input.room.units, standing, sameClimate);
  const sources = readSources(input, instruments, standing);
  const weekBefore = (toDays: number): Recent => {
    const span = shared(regime, {fromDays: toDays - RECENT_DAYS, toDays});
    const course = recordOf(sources, span);
    const {dose, coveredDays} = dosesBetween(
      course,
      temperatureItself,
      Float64Array.of(span.fromDays, span.toDays),
    );
    return {span, course, readDays: coveredDays[0]!, meanC: dose[0]! / coveredDays[0]!};
  };
  const last = weekBefore(standing.fromDays);
  const lastRead = lastReadDays(input, instruments, standing);
  return last.readDays > 0 || !Number.isFinite(lastRead) ? last : weekBefore(lastRead);
}

/** Set points moved by what the unit read above or below them, by day and by night. */
function correctedBy(
  {course, span}: Recent,
  setPoints: ByPhase,
  unit: Unit,
  civil: CourseInput['civil'],
): ByPhase {
  const phases = phasesOf(unit, civil, span);
  const bounds = Float64Array.of(span.fromDays, ...phases.map(({toDays}) => toDays));
  const {dose, coveredDays} = dosesBetween(course, temperatureItself, bounds);
  const meanOf = (phase: 'day' | 'night') => {
    const total = (column: Float64Array) =>
      column.reduce((sum, value, i) => (phases[i]!.phase === phase ? sum + value : sum), 0);
    const days = total(coveredDays);
    return days > 0 ? total(dose) / days : setPoints[phase];
  };
  return {day: meanOf('day'), night: meanOf('night')};
}
