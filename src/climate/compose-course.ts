// The course of a lot: its units by time, their loggers by time, gaps filled, and what is to be expected.
import {MS_PER_DAY} from '../records/entry.ts';
import {valueAt} from '../records/state.ts';
import type {Course} from './course.ts';
import type {CourseInput} from './course-input.ts';
import {expectedSources} from './expected.ts';
import {futuresOf} from './futures.ts';
import {type Instruments, instrumentsOf} from './instruments.ts';
import {cover, joined, type Span, unknown} from './part.ts';
import {regimesOf, type Standing, shared, unchanged} from './regime.ts';
import {knownSources, lastReadDays} from './unit-record.ts';
import {withWaterOffsets} from './water-offset.ts';

/**
 * The temperature course from one instant to another, without gaps.
 *
 * Up to now, or to where readings end if that is later: what the unit's own logger read, extremes as a sine, another
 * logger with its learned offset, a person's readings, the mean day of the days around, the set points; where none
 * of these is known it is unknown. From there on: held as asked, else the set points corrected by the unit's own
 * record, else its recent days again. A lot is taken to stay where it is.
 */
export function composeCourse(asked: CourseInput): Course {
  const instruments = instrumentsOf(asked);
  const {units, water} = withWaterOffsets(asked, instruments);
  const input = {...asked, room: {...asked.room, units}};
  const expectedFromDays = expectationFrom(input, instruments);
  const past = {fromDays: input.fromDays, toDays: expectedFromDays};
  const known = standings(input, past).flatMap(standing =>
    cover(standing, knownSources(input, instruments, standing)),
  );
  const future = {fromDays: expectedFromDays, toDays: input.toDays};
  const last = standingAt(input, expectedFromDays);
  const expected = last === undefined ? [] : expectedSources(input, instruments, last);
  const course = joined(
    [...cover(past, [() => known, unknown]), ...cover(future, [...expected, unknown])],
    expectedFromDays,
  );
  const futures = last === undefined ? undefined : futuresOf(input, instruments, last);
  return {
    ...course,
    ...(futures === undefined ? {} : {futures}),
    ...(water === undefined ? {} : {water}),
  };
}

function expectationFrom(input: CourseInput, instruments: Instruments): number {
  const now = standingAt(input, input.nowDays);
  const lastRead = now === undefined ? Number.NEGATIVE_INFINITY : lastReadDays(input, instruments, now);
  const from = Math.max(input.nowDays, lastRead);
  return Math.min(Math.max(from, input.fromDays), input.toDays);
}

/** Where the lot stood in a span, cut wherever it moved and wherever its unit or the unit's logger changed. */
function standings({stays, room}: CourseInput, span: Span): Standing[] {
  return stays.flatMap((stay, i) => {
    const history = room.units.get(stay.unit) ?? [];
    const next = stays[i + 1];
    const here = shared(span, {
      fromDays: i === 0 ? span.fromDays : stay.from / MS_PER_DAY,
      toDays: next === undefined ? span.toDays : next.from / MS_PER_DAY,
    });
    return regimesOf(history, unchanged)
      .flatMap(regime => cutAt(regime, changesOf(room.loggers, regime.unit.logger)))
      .map(regime => ({...regime, ...shared(here, regime), code: stay.unit}))
      .filter(({fromDays, toDays}) => toDays > fromDays);
  });
}

/** The unit in which the lot is at an instant, as it stands there, from that instant on. */
function standingAt({stays, room}: CourseInput, atDays: number): Standing | undefined {
  const at = atDays * MS_PER_DAY;
  const stay = stays.findLast(({from}) => from <= at) ?? stays[0];
  const history = stay === undefined ? undefined : room.units.get(stay.unit);
  if (stay === undefined || history === undefined) return undefined;
  return {code: stay.unit, unit: valueAt(history, at), fromDays: atDays, toDays: Number.POSITIVE_INFINITY};
}

function changesOf(loggers: CourseInput['room']['loggers'], logger: string | undefined): number[] {
  const history = logger === undefined ? undefined : loggers.get(logger);
  return (history ?? []).slice(1).map(({from}) => from / MS_PER_DAY);
}

function cutAt<Part extends Span>(whole: Part, cuts: readonly number[]): Part[] {
  const within = cuts.filter(at => whole.fromDays < at && at < whole.toDays);
  const edges = [whole.fromDays, ...within, whole.toDays];
  return edges.slice(1).map((toDays, i) => ({...whole, fromDays: edges[i]!, toDays}));
}
