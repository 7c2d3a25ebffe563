// Pieces of a course in the making: what one source knows of a span, and how sources fill what others leave open.
import {
  firstPieceEndingAfter,
  longestPauseDays,
  type TemperatureTrace,
  temperatureWithin,
} from '../thermal/trace.ts';
import type {Course, Stretch} from './course.ts';

export interface Span {
  readonly fromDays: number;
  readonly toDays: number;
}

/** A stretch with its nodes, from its first instant to its last. */
export interface Part extends Stretch {
  readonly atDays: readonly number[];
  readonly temperatureC: readonly number[];
}

/** Answers a span with what it knows of it: parts within the span, in order of time, none touching another's inside. */
export type Source = (span: Span) => readonly Part[];

/** What marks the parts of a source. */
export type Mark = Omit<Stretch, 'fromDays' | 'toDays'>;

/** All of a span, from the first source that knows; later sources are asked only for what the earlier ones left. */
export function cover(span: Span, sources: readonly Source[]): Part[] {
  const parts: Part[] = [];
  let holes = span.toDays > span.fromDays ? [span] : [];
  for (const source of sources) {
    const left: Span[] = [];
    for (const hole of holes) {
      const found = source(hole);
      parts.push(...found);
      left.push(...holesBetween(hole, found));
    }
    holes = left;
  }
  return parts.sort((a, b) => a.fromDays - b.fromDays);
}

/** What a trace knows: the runs between its gaps. */
export function along(trace: TemperatureTrace, mark: Mark, shiftC = 0): Source {
  const {atDays, temperatureC} = trace;
  const longest = longestPauseDays(trace);
  return ({fromDays, toDays}) => {
    const parts: Part[] = [];
    let at: number[] = [];
    let temperature: number[] = [];
    const finish = () => {
      if (at.length > 0)
        parts.push({...mark, fromDays: at[0]!, toDays: at.at(-1)!, atDays: at, temperatureC: temperature});
      at = [];
      temperature = [];
    };
    const add = (piece: number, instant: number) => {
      at.push(instant);
      temperature.push(temperatureWithin(trace, piece, instant) + shiftC);
    };
    for (let i = firstPieceEndingAfter(trace, fromDays); i < atDays.length - 1 && atDays[i]! < toDays; i++) {
      if (atDays[i + 1]! - atDays[i]! > longest || Number.isNaN(temperatureC[i]! + temperatureC[i + 1]!)) {
        finish();
        continue;
      }
      if (at.length === 0) add(i, Math.max(atDays[i]!, fromDays));
      // A step within a run: the second of two nodes of one instant.
      if (atDays[i + 1] === atDays[i]) {
        at.push(atDays[i + 1]!);
        temperature.push(temperatureC[i + 1]! + shiftC);
      } else add(i, Math.min(atDays[i + 1]!, toDays));
    }
    finish();
    return parts.filter(part => part.toDays > part.fromDays);
  };
}

/** One temperature throughout. */
export function constant(temperatureC: number, mark: Mark): Source {
  return ({fromDays, toDays}) => [
    {...mark, fromDays, toDays, atDays: [fromDays, toDays], temperatureC: [temperatureC, temperatureC]},
  ];
}

/** The last resort: whatever is left is unknown. */
export const unknown: Source = constant(Number.NaN, {basis: 'unknown'});

/** Touching parts as one course. */
export function joined(parts: readonly Part[], expectedFromDays: number): Course {
  const atDays: number[] = [];
  const temperatureC: number[] = [];
  const stretches: Stretch[] = [];
  for (const part of parts) {
    part.atDays.forEach((at, i) => {
      const temperature = part.temperatureC[i]!;
      if (at === atDays.at(-1) && Object.is(temperature, temperatureC.at(-1))) return;
      atDays.push(at);
      temperatureC.push(temperature);
    });
    const {atDays: _at, temperatureC: _temperature, ...stretch} = part;
    const last = stretches.at(-1);
    if (last !== undefined && isAlike(last, stretch))
      stretches[stretches.length - 1] = {...last, toDays: stretch.toDays};
    else stretches.push(stretch);
  }
  return {
    atDays: Float64Array.from(atDays),
    temperatureC: Float64Array.from(temperatureC),
    stretches,
    expectedFromDays,
  };
}

function isAlike(a: Stretch, b: Stretch): boolean {
  return a.basis === b.basis && a.of === b.of && a.movedC === b.movedC && a.sdC === b.sdC;
}

/** Below this a hole is rounding: a tenth of a millisecond. */
const NOTHING_DAYS = 1e-9;

function holesBetween({fromDays, toDays}: Span, parts: readonly Part[]): Span[] {
  const edges = [fromDays, ...parts.flatMap(part => [part.fromDays, part.toDays]), toDays];
  const holes: Span[] = [];
  for (let i = 0; i < edges.length; i += 2)
    if (edges[i + 1]! - edges[i]! > NOTHING_DAYS) holes.push({fromDays: edges[i]!, toDays: edges[i + 1]!});
  return holes;
}
