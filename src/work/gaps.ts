// Where units in which animals live were not read lately, and what stands in for the readings.
import type {CourseBasis, Stretch} from '../climate/course.ts';
import {FILLED} from '../climate/course-summary.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {openLots, valueAt} from '../records/state.ts';
import {coursesOf} from './courses.ts';
import type {Desk} from './desk.ts';
import {trustedReadings} from './trusted-readings.ts';
import {filledWithWords} from './why-words.ts';

export interface ReadingGap {
  readonly unit: string;
  readonly logger: string;
  readonly from: Instant;
  readonly to: Instant;
  /** Nothing was read since. */
  readonly open: boolean;
  readonly filledBy: CourseBasis;
  /** "another logger, R, +0.8 ± 0.4 °C" */
  readonly words: string;
}

/** What is read by a person, or fetched from a logger, comes once a day: a pause up to now is no gap before that. */
const COMES_DAILY = 26 / 24;

/** The gaps of units with living lots and a logger of their own that ended since an instant, or go on. */
export async function readingGaps(desk: Desk, since: Instant): Promise<ReadingGap[]> {
  const {state, now} = desk;
  const nowDays = now / MS_PER_DAY;
  const began = new Map<string, Instant>();
  for (const {stays} of openLots(state)) {
    const stay = stays.at(-1);
    if (stay !== undefined) began.set(stay.unit, Math.min(began.get(stay.unit) ?? stay.from, stay.from));
  }
  // A gap that ended since may have begun before.
  const fromDays = Math.min(since / MS_PER_DAY, nowDays) - LONGEST_DAYS;
  const courseOf = coursesOf(desk, fromDays);
  const whole = new Map<string, Promise<boolean>>();
  const isWhole = (logger: string) => {
    const known = whole.get(logger) ?? readThroughout(logger, fromDays, desk);
    whole.set(logger, known);
    return known;
  };
  const gaps = await Promise.all(
    [...began].map(async ([unit, livedSince]): Promise<ReadingGap[]> => {
      const history = state.units.get(unit);
      const {logger} = history === undefined ? {} : valueAt(history, now);
      if (logger === undefined || (await isWhole(logger))) return [];
      const begin = Math.max(fromDays, livedSince / MS_PER_DAY);
      if (begin >= nowDays) return [];
      const {stretches} = await courseOf([{unit, from: begin * MS_PER_DAY}], {
        fromDays: begin,
        nowDays,
        toDays: nowDays,
      });
      const readUntil = lastReadOf(logger, desk);
      return stretches.flatMap(stretch => gapOf(stretch, {unit, logger, since, readUntil}));
    }),
  );
  return gaps.flat().sort((a, b) => a.from - b.from);
}

const LONGEST_DAYS = 30;

/** Courses are composed only where a logger paused: most read throughout. */
async function readThroughout(logger: string, fromDays: number, desk: Desk): Promise<boolean> {
  const history = desk.state.loggers.get(logger);
  if (history === undefined) return false;
  const nowDays = desk.now / MS_PER_DAY;
  const longest = valueAt(history, desk.now).maxGapHours / 24;
  const {atDays} = await trustedReadings(desk, logger, fromDays, nowDays);
  const [first = Infinity, last = -Infinity] = [atDays[0], atDays.at(-1)];
  if (first - fromDays > longest || nowDays - last > COMES_DAILY) return false;
  return atDays.every((at, row) => row === 0 || at - atDays[row - 1]! <= longest);
}

/** The last instant at which a logger read anything, by itself or by hand. */
function lastReadOf(logger: string, {room, state}: Desk): Instant {
  const own = <Of extends {readonly logger: string}>(all: readonly Of[]) =>
    all.filter(each => each.logger === logger);
  return Math.max(
    Math.round((room.span(logger)?.toDays ?? 0) * MS_PER_DAY),
    ...own(state.extremes).map(({to}) => to),
    ...own(state.handReadings).map(({at}) => at),
  );
}

interface Seen {
  readonly unit: string;
  readonly logger: string;
  readonly since: Instant;
  readonly readUntil: Instant;
}

function gapOf(stretch: Stretch, {unit, logger, since, readUntil}: Seen): ReadingGap[] {
  const {fromDays, toDays, basis} = stretch;
  const [from, to] = [Math.round(fromDays * MS_PER_DAY), Math.round(toDays * MS_PER_DAY)];
  const open = readUntil < to;
  if ((!FILLED.has(basis) && basis !== 'unknown') || to < since) return [];
  if (open && toDays - fromDays < COMES_DAILY) return [];
  return [{unit, logger, from, to, open, filledBy: basis, words: filledWithWords(stretch)}];
}
