// What was read and can be filled in for one unit while nothing in it changed.
import type {Unit} from '../records/state.ts';
import type {Course} from './course.ts';
import type {CourseInput} from './course-input.ts';
import {heldToEdges} from './held-edges.ts';
import type {Instruments, Reading} from './instruments.ts';
import {meanDay, repeated, spreadOfDays} from './mean-day.ts';
import {neighbourReadings} from './neighbours.ts';
import {along, cover, joined, type Source, type Span, unknown} from './part.ts';
import {regimeOf, type Standing, sameClimate, sameLogger, shared} from './regime.ts';
import {setPointsOf, stepping} from './set-points.ts';

/** The same logger's days around a gap. */
const AROUND_DAYS = 3;

/** All that is known of a unit as it stood, the best first: what was read, then what fills the gaps. */
export function knownSources(input: CourseInput, instruments: Instruments, standing: Standing): Source[] {
  const {unit} = standing;
  const setPoints = setPointsOf(unit);
  return [
    ...readSources(input, instruments, standing),
    meanDayAround(input, instruments, standing),
    ...(setPoints === undefined ? [] : [stepping(setPoints, unit, input.civil, {basis: 'set-points'})]),
    unknown,
  ];
}

/** What was read in a unit or beside it. A person's readings serve only where no logger reads. */
export function readSources(input: CourseInput, instruments: Instruments, standing: Standing): Source[] {
  const {logger, extremes, hand} = ownSources(input, instruments, standing, sameLogger);
  const regime = regimeOf(input.room.units, standing, sameClimate);
  const beside = neighbourReadings(input, instruments, standing, regime);
  return [logger, extremes, beside, hand];
}

/** The last instant at which anything was read in the unit itself; −∞ where nothing was. */
export function lastReadDays(input: CourseInput, instruments: Instruments, standing: Standing): number {
  const {logger} = standing.unit;
  if (logger === undefined) return Number.NEGATIVE_INFINITY;
  const tenure = regimeOf(input.room.units, standing, sameLogger);
  const traces = [instruments.automatic, instruments.extremes, instruments.hand].map(read =>
    read(logger, tenure, standing.fromDays),
  );
  return Math.max(...traces.map(({atDays}) => atDays.at(-1) ?? Number.NEGATIVE_INFINITY));
}

/** One course of what sources know of a span; unknown where they know nothing. */
export function recordOf(sources: readonly Source[], span: Span): Course {
  return joined(cover(span, [...sources, unknown]), span.toDays);
}

/** The mean day of what the unit itself read in the days around, under the same regime. */
function meanDayAround(input: CourseInput, instruments: Instruments, standing: Standing): Source {
  const {logger, extremes, hand} = ownSources(input, instruments, standing, sameClimate);
  const regime = regimeOf(input.room.units, standing, sameClimate);
  const reachDays = reachOf(input, standing);
  const within: Source = hole => {
    const around = {fromDays: hole.fromDays - AROUND_DAYS, toDays: hole.toDays + AROUND_DAYS};
    const window = shared(regime, around);
    const record = recordOf([logger, extremes, hand], window);
    const day = meanDay(record, input.civil, window);
    if (day === undefined) return [];
    const sdC = spreadOfDays(record, input.civil, window);
    return repeated(day, input.civil, {basis: 'mean-day', ...(sdC === undefined ? {} : {sdC})})(hole);
  };
  return ({fromDays, toDays}) => {
    if (toDays - fromDays <= 2 * reachDays) return within({fromDays, toDays});
    const ends = [
      {fromDays, toDays: fromDays + reachDays},
      {fromDays: toDays - reachDays, toDays},
    ];
    return reachDays > 0 ? ends.flatMap(within) : [];
  };
}

/** So far from what was read the days around still tell something. Common practice, no source. */
const USUAL_REACH_DAYS = 7;

function reachOf({room}: CourseInput, {unit: {logger}}: Standing): number {
  return room.loggers.get(logger ?? '')?.at(-1)?.value.maxFillDays ?? USUAL_REACH_DAYS;
}

function ownSources(
  input: CourseInput,
  instruments: Instruments,
  standing: Standing,
  same: (a: Unit, b: Unit) => boolean,
): {readonly logger: Source; readonly extremes: Source; readonly hand: Source} {
  const {logger, offsetC = 0} = standing.unit;
  if (logger === undefined) return {logger: () => [], extremes: () => [], hand: () => []};
  const regime = regimeOf(input.room.units, standing, same);
  const edges = shared(regime, {fromDays: input.fromDays, toDays: input.nowDays});
  const source = (read: Reading, basis: 'logger' | 'extremes' | 'hand') =>
    along(heldToEdges(read(logger, regime, standing.fromDays), edges), {basis, of: logger}, offsetC);
  return {
    logger: source(instruments.automatic, 'logger'),
    extremes: source(instruments.extremes, 'extremes'),
    hand: source(instruments.hand, 'hand'),
  };
}
