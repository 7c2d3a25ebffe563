// The way from stage to stage: those that leave one enter the next, and leave that when its dose W is reached.
import {doseAt, instantsOf} from './dose-course.ts';
import {kernelOf} from './kernel.ts';
import {convolve, lay, type Measure, measureOf, trimmed} from './measure.ts';
import type {Tempo} from './tempo.ts';

/** Shares of one animal below this are let go at the ends of a measure. */
const NEGLIGIBLE = 1e-8;

/**
 * How those that leave a stage leave the next one: each cell's ends go through their instants to the next dose axis,
 * the mass is laid between them, and W is added. Those that would leave after the course ends are not followed.
 * Null where none are left.
 * @param between only those that leave between two doses
 */
export function passOn(
  tempo: Tempo,
  stage: number,
  leaving: Measure,
  between: readonly [from: number, to: number] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY],
): Measure | null {
  const entering = entriesOf(tempo, stage, leaving, between);
  if (entering === null) return null;
  return trimmed(convolve(entering, kernelOf(tempo.chain.stages[stage + 1]!.spread)), NEGLIGIBLE);
}

function entriesOf(
  tempo: Tempo,
  stage: number,
  {step, first, mass}: Measure,
  [from, to]: readonly [number, number],
): Measure | null {
  const lowest = (first - 0.5) * step;
  const begin = Math.max(0, Math.floor((from - lowest) / step));
  const end = Math.min(mass.length, Math.ceil((to - lowest) / step));
  if (begin >= end) return null;

  const edges = new Float64Array(end - begin + 1);
  const nextDose = toNextAxis(tempo, stage, Math.max(from, lowest + begin * step));
  for (let i = begin; i <= end; i++)
    edges[i - begin] = nextDose(Math.min(to, Math.max(from, lowest + i * step)));
  let reached = edges.length - 1;
  while (reached > 0 && edges[reached] === Number.POSITIVE_INFINITY) reached--;
  if (reached === 0) return null;

  const next = kernelOf(tempo.chain.stages[stage + 1]!.spread).step;
  const firstCell = Math.floor(edges[0]! / next);
  const cells = new Float64Array(Math.floor(edges[reached]! / next) - firstCell + 2);
  for (let i = 0; i < reached; i++) {
    const cell = lowest + (begin + i) * step;
    const inside = (Math.min(to, cell + step) - Math.max(from, cell)) / step;
    lay(cells, next, firstCell, edges[i]!, edges[i + 1]!, mass[begin + i]! * inside);
  }
  return measureOf(next, firstCell, cells);
}

/** From a dose of a stage to the next stage's dose at the same instant, asked for in rising order. */
function toNextAxis(
  {chain, pace, origins}: Tempo,
  stage: number,
  firstDose: number,
): (dose: number) => number {
  const here = chain.stages[stage]!;
  const next = chain.stages[stage + 1]!;
  if (here.course === next.course) return dose => (dose * here.required) / next.required;
  const inCourse = (dose: number) => origins[stage]! + (dose * here.required) / pace;
  const instantAt = instantsOf(here.course, inCourse(firstDose));
  return dose => {
    const atDays = instantAt(inCourse(dose));
    if (atDays === Number.POSITIVE_INFINITY) return atDays;
    return (pace * (doseAt(next.course, atDays) - origins[stage + 1]!)) / next.required;
  };
}
