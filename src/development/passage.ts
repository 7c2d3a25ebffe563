// The way from stage to stage: those that leave one enter the next, and leave that when its dose W is reached.
import {carry} from './dose-course.ts';
import {convolve, emptyMeasure, lay, type Measure, trimmed} from './measure.ts';
import type {Tempo} from './tempo.ts';

/** Shares of one animal below this are let go at the ends of a measure. */
const NEGLIGIBLE = 1e-6;

/**
 * How those that leave a stage leave the next one: each cell's ends go through their instants to the next dose axis,
 * the mass is laid between them, and W is added. Those that would leave after the course ends are not followed.
 * Null where none are left.
 * @param from only those that leave after this dose
 * @param to and before this one
 */
export function passOn(
  tempo: Tempo,
  stage: number,
  leaving: Measure,
  from = Number.NEGATIVE_INFINITY,
  to = Number.POSITIVE_INFINITY,
): Measure | null {
  const {kernel} = tempo.chain.stages[stage + 1]!;
  const entering = entriesOf(tempo, stage, leaving, from, to, kernel.step);
  return entering === null ? null : trimmed(convolve(entering, kernel), NEGLIGIBLE);
}

let edges = new Float64Array(512);

function entriesOf(
  tempo: Tempo,
  stage: number,
  leaving: Measure,
  from: number,
  to: number,
  nextStep: number,
): Measure | null {
  const {step, first, length, cells, mass, scale} = leaving;
  const lowest = (first - 0.5) * step;
  const begin = Math.max(0, Math.floor((from - lowest) / step));
  const end = Math.min(length, Math.ceil((to - lowest) / step));
  const count = end - begin;
  if (count <= 0) return null;

  if (edges.length <= count) edges = new Float64Array(2 * count);
  for (let i = 0; i <= count; i++) edges[i] = Math.min(to, Math.max(from, lowest + (begin + i) * step));
  toNextAxis(tempo, stage, count + 1);
  let reached = count;
  while (reached > 0 && edges[reached] === Number.POSITIVE_INFINITY) reached--;
  if (reached === 0) return null;

  const firstCell = Math.floor(edges[0]! / nextStep);
  const entries = emptyMeasure(nextStep, firstCell, Math.floor(edges[reached]! / nextStep) - firstCell + 2);
  for (let i = 0; i < reached; i++) {
    const cell = lowest + (begin + i) * step;
    const inside = (Math.min(to, cell + step) - Math.max(from, cell)) / step;
    const entering = scale * inside * cells[mass + begin + i]!;
    if (entering > 0)
      lay(
        entries.cells,
        entries.mass,
        edges[i]! / nextStep - firstCell,
        edges[i + 1]! / nextStep - firstCell,
        entering,
      );
  }
  return entries;
}

/** The first edges, from doses of a stage to the next stage's doses at the same instants. */
function toNextAxis({chain, pace, origins}: Tempo, stage: number, count: number) {
  const here = chain.stages[stage]!;
  const next = chain.stages[stage + 1]!;
  if (here.course === next.course) {
    const ratio = here.required / next.required;
    for (let i = 0; i < count; i++) edges[i] = edges[i]! * ratio;
    return;
  }
  const [inCourse, origin] = [here.required / pace, origins[stage]!];
  for (let i = 0; i < count; i++) edges[i] = origin + edges[i]! * inCourse;
  carry(here.course, next.course, edges, count);
  const [inNext, nextOrigin] = [pace / next.required, origins[stage + 1]!];
  for (let i = 0; i < count; i++) edges[i] = (edges[i]! - nextOrigin) * inNext;
}
