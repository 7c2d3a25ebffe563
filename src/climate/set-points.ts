// A unit's set points as a course: one temperature, or day and night by its lights.
import type {Civil} from '../records/civil.ts';
import type {Unit} from '../records/state.ts';
import {timesOfDay} from './civil-times.ts';
import type {Mark, Source, Span} from './part.ts';

export type Phase = 'day' | 'night';

/** A temperature by day and by night. */
export type ByPhase = Readonly<Record<Phase, number>>;

export interface PhaseSpan extends Span {
  readonly phase: Phase;
}

/** What the unit is set to; undefined at ambient temperature and where nothing is said. */
export function setPointsOf({setPoints}: Unit): ByPhase | undefined {
  if (setPoints === undefined || 'ambient' in setPoints) return undefined;
  if ('constant' in setPoints) return {day: setPoints.constant, night: setPoints.constant};
  return {day: setPoints.day, night: setPoints.night};
}

/** Steps between day and night temperature; straight where both are the same. */
export function stepping({day, night}: ByPhase, unit: Unit, civil: Civil, mark: Mark): Source {
  return span => {
    const phases = day === night ? [{...span, phase: 'day' as const}] : phasesOf(unit, civil, span);
    return [
      {
        ...mark,
        ...span,
        atDays: phases.flatMap(phase => [phase.fromDays, phase.toDays]),
        temperatureC: phases.flatMap(({phase}) => (phase === 'day' ? [day, day] : [night, night])),
      },
    ];
  };
}

/** Day and night in a span, by the lights of the set points, else of the unit; all day where neither is given. */
export function phasesOf(unit: Unit, civil: Civil, {fromDays, toDays}: Span): PhaseSpan[] {
  const lights = lightsOf(unit);
  if (lights === undefined || lights.on === lights.off) return [{fromDays, toDays, phase: 'day'}];
  const span = {fromDays, toDays};
  const switches = [
    ...timesOfDay(civil, lights.on, span).map(at => ({at, phase: 'day' as const})),
    ...timesOfDay(civil, lights.off, span).map(at => ({at, phase: 'night' as const})),
  ].sort((a, b) => a.at - b.at);
  return switches.flatMap(({at, phase}, i) => {
    const begin = Math.max(at, fromDays);
    const end = Math.min(switches[i + 1]?.at ?? toDays, toDays);
    return end > begin ? [{fromDays: begin, toDays: end, phase}] : [];
  });
}

/** When the lights of a unit are on in a span; undefined where nothing is said of its lights. */
export function litSpans(unit: Unit, civil: Civil, span: Span): readonly Span[] | undefined {
  if (lightsOf(unit) === undefined) return undefined;
  return phasesOf(unit, civil, span).filter(({phase}) => phase === 'day');
}

function lightsOf({setPoints, light}: Unit): {readonly on: string; readonly off: string} | undefined {
  if (setPoints !== undefined && 'lightsOn' in setPoints)
    return {on: setPoints.lightsOn, off: setPoints.lightsOff};
  return light;
}
