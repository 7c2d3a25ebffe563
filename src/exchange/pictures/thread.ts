// The thread: one lot as one line of text along the days. What was seen, what is computed, what is expected, and
// how likely adults are on each day.
import type {EmergenceDay, StageShares} from '../../development/answer.ts';
import type {Day} from '../../records/civil.ts';
import type {Stage} from '../../records/stage.ts';
import type {Glyphs} from './glyphs.ts';
import {joinCells, type Line, type Piece, piece} from './line.ts';
import {stageLetter} from './stage-letter.ts';

/** One column of the picture: a civil day, or several. */
export interface DayColumn {
  /** Its first day. */
  readonly day: Day;
  readonly fromDays: number;
  readonly toDays: number;
  /** Nobody comes on any of its days. */
  readonly closed: boolean;
}

export interface ThreadData {
  readonly columns: readonly DayColumn[];
  readonly nowDays: number;
  /** When the lot began. Nothing is drawn before. */
  readonly startedDays: number;
  /** When it was closed. Nothing is drawn after. */
  readonly closedDays?: number | undefined;
  /** Chance of each stage in each column, of the animals alive; undefined where nobody can say. */
  readonly shares: readonly (StageShares | undefined)[];
  /** Stages that somebody saw, and when. */
  readonly seen: readonly {readonly atDays: number; readonly stage: Stage}[];
  /** Animals that nobody can see: galls, wood, litter. */
  readonly hidden: boolean;
  readonly perDay: readonly Pick<EmergenceDay, 'fromDays' | 'toDays' | 'probability'>[];
  /** Adults that came out. */
  readonly came: readonly {readonly atDays: number; readonly count: number}[];
  /** Animals that adults that came are a share of. */
  readonly animals: number;
  readonly nextCheckDays: number | null;
}

export interface Thread {
  /** As wide as the columns and one for now. */
  readonly line: Line;
  /** Adults that came and the planned check, under their days; undefined where there are none. */
  readonly below: Line | undefined;
}

/** From these chances per day on, a day is drawn in the next darker shade. Absolute, so that lots can be compared. */
export const SHADES_FROM = [0.005, 0.04, 0.1, 0.2] as const;

export function thread(data: ThreadData, glyphs: Glyphs): Thread {
  const {columns, nowDays} = data;
  const now = nowColumn(columns, nowDays);
  const cells: Piece[] = columns.map((column, i) => cell(data, column, i, glyphs));
  const under = columns.map(column => belowCell(data, column, glyphs));
  const withNow = [...cells.slice(0, now), piece(glyphs.now, 'mark'), ...cells.slice(now)];
  const belowNow = [...under.slice(0, now), ' ', ...under.slice(now)];
  return {
    line: joinCells(withNow),
    below: under.some(text => text !== ' ') ? [piece(belowNow.join('').trimEnd())] : undefined,
  };
}

/** Where the sign for now stands: before the first column that is not over. */
export function nowColumn(columns: readonly DayColumn[], nowDays: number): number {
  const first = columns.findIndex(({toDays}) => toDays > nowDays);
  return first < 0 ? columns.length : first;
}

function cell(data: ThreadData, column: DayColumn, index: number, glyphs: Glyphs): Piece {
  const future = column.fromDays > data.nowDays;
  const empty = column.closed ? piece(glyphs.closed, 'mark') : piece(' ');
  if (column.toDays <= data.startedDays) return empty;
  if (data.closedDays !== undefined && column.fromDays > data.closedDays) return empty;

  const came = data.came.filter(within(column)).reduce((sum, {count}) => sum + count, 0);
  if (came > 0 && data.animals > 0)
    return piece(shade(Math.max(came / data.animals / lengthOf(column), SHADES_FROM[0]), glyphs)!, 'seen');
  const coming = shade(chancePerDay(data.perDay, column), glyphs);
  if (coming !== undefined) return piece(coming, 'emergence');

  const seen = data.seen.filter(within(column)).at(-1);
  if (seen !== undefined) return piece(stageLetter(seen.stage), 'seen');
  const stage = heaviest(data.shares[index]);
  if (stage === undefined)
    return data.hidden && index % 2 === 0 ? piece(glyphs.hidden, future ? 'expected' : 'plain') : empty;
  if (stage === 'adult' || (future && column.closed)) return empty;
  return piece(stageLetter(stage), future ? 'expected' : 'plain');
}

function belowCell({came, nextCheckDays}: ThreadData, column: DayColumn, glyphs: Glyphs): string {
  const count = came.filter(within(column)).reduce((sum, adults) => sum + adults.count, 0);
  if (count > 0) return count < 10 ? String(count) : '+';
  const check = nextCheckDays !== null && within(column)({atDays: nextCheckDays});
  return check ? glyphs.check : ' ';
}

function within({fromDays, toDays}: DayColumn): (thing: {readonly atDays: number}) => boolean {
  return ({atDays}) => fromDays <= atDays && atDays < toDays;
}

function lengthOf({fromDays, toDays}: DayColumn): number {
  return Math.max(1, toDays - fromDays);
}

/** Mean chance per day over the column. */
function chancePerDay(perDay: ThreadData['perDay'], column: DayColumn): number {
  let chance = 0;
  for (const {fromDays, toDays, probability} of perDay) {
    const shared = Math.min(toDays, column.toDays) - Math.max(fromDays, column.fromDays);
    if (shared > 0) chance += (probability * shared) / (toDays - fromDays);
  }
  return chance / lengthOf(column);
}

function shade(perDay: number, glyphs: Glyphs): string | undefined {
  const darkest = SHADES_FROM.findLastIndex(from => perDay >= from);
  return glyphs.shades[darkest];
}

function heaviest(shares: StageShares | undefined): Stage | undefined {
  if (shares === undefined) return undefined;
  let best: Stage | undefined;
  for (const [stage, share] of Object.entries(shares))
    if (best === undefined || share > shares[best]!) best = stage;
  return best;
}
