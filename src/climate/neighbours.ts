// Other loggers that can stand in for a silent one: of the same unit, or of a unit at the same place.
import type {Unit} from '../records/state.ts';
import type {CourseInput} from './course-input.ts';
import {heldToEdges} from './held-edges.ts';
import type {Instruments} from './instruments.ts';
import {learnedOffset} from './learned-offset.ts';
import {along, cover, type Source, type Span} from './part.ts';
import {regimesOf, type Standing, sameClimate, shared} from './regime.ts';

/** A logger in the span in which it stood where it is, and how near that is: the larger the nearer. */
export interface Neighbour extends Span {
  readonly logger: string;
  readonly near: number;
}

/** An offset is learned from the week before and after a gap, more for a longer gap. */
const LEARNING_DAYS = 7;

/**
 * Fills a span from the nearest logger that read in it, moved by its mean difference from the unit's own logger
 * where both read. Nothing is filled for longer than both read together (common practice, no source).
 * @param regime of the unit: what was learned outside it does not hold
 */
export function neighbourReadings(
  {room, fromDays, nowDays}: CourseInput,
  instruments: Instruments,
  {code, unit}: Standing,
  regime: Span,
): Source {
  const {logger: own, offsetC = 0} = unit;
  if (own === undefined) return () => [];
  const neighbours = neighboursOf(room.units, code, unit);
  return hole => {
    const around = Math.max(LEARNING_DAYS, hole.toDays - hole.fromDays);
    const window = shared(regime, {fromDays: hole.fromDays - around, toDays: hole.toDays + around});
    const automatic = instruments.automatic(own, window, hole.fromDays);
    // A minimum–maximum thermometer is compared by the course drawn from its extremes.
    const ownTrace =
      automatic.atDays.length > 0 ? automatic : instruments.extremes(own, window, hole.fromDays);
    const sources = neighbours
      .filter(neighbour => neighbour.fromDays < hole.toDays && hole.fromDays < neighbour.toDays)
      .flatMap(neighbour => {
        const span = shared(window, neighbour);
        const trace = instruments.automatic(neighbour.logger, span, hole.fromDays);
        const learned = learnedOffset(ownTrace, trace);
        if (!(learned.overlapDays >= hole.toDays - hole.fromDays)) return [];
        const held = heldToEdges(trace, shared(span, {fromDays, toDays: nowDays}));
        const movedC = learned.offsetC + offsetC;
        const mark = {basis: 'other-logger', of: neighbour.logger, movedC, sdC: learned.sdC} as const;
        return [along(held, mark, movedC)];
      });
    return cover(hole, sources);
  };
}

/** The nearest first: the unit's own other loggers, then loggers of units by how much of their place is the same. */
export function neighboursOf(units: CourseInput['room']['units'], code: string, unit: Unit): Neighbour[] {
  const elsewhere = [...units].flatMap(([other, history]) =>
    other === code ? [] : regimesOf(history, sameClimate).map(regime => ({...regime, code: other})),
  );
  const ownOthers = new Set((units.get(code) ?? []).flatMap(({value}) => value.logger ?? []));
  const formerly = [...ownOthers]
    .filter(logger => !elsewhere.some(regime => regime.unit.logger === logger))
    .map(logger => ({logger, near: Number.POSITIVE_INFINITY, fromDays: -Infinity, toDays: Infinity}));
  const beside = elsewhere.flatMap(({unit: {logger, place}, fromDays, toDays}) =>
    logger === undefined ? [] : [{logger, near: samePlace(place, unit.place), fromDays, toDays}],
  );
  return [...formerly, ...beside]
    .filter(({logger, near}) => logger !== unit.logger && near > 0)
    .sort((a, b) => b.near - a.near || (a.logger < b.logger ? -1 : 1));
}

/** How many steps two places share, from large to small: "rack A/2" and "rack A/3" share one, themselves more. */
export function samePlace(a: string, b: string): number {
  const [left, right] = [a, b].map(place => place.split('/').map(step => step.trim()));
  const differs = left!.findIndex((step, i) => step !== right![i]);
  return differs === -1 ? left!.length + (left!.length === right!.length ? 1 : 0) : differs;
}
