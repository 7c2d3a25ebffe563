// Which dose of the mean course answers to an instant of one future, for animals that go through several stages.
import {doseAt, reachedAt} from './dose-course.ts';
import {doseAhead, instantAhead} from './future-doses.ts';
import type {Chain} from './stage-chain.ts';

/** From an instant of a future to the dose of the last stage's course at which the mean course brings animals as far. */
export type AnsweringDose = (atDays: number) => number;

const MOST_NODES = 24;
const CLOSEST_DAYS = 1;

/**
 * The answering doses of every future; none where only one course is known. Where all stages count in one dose it is
 * the dose of the future itself. Else the animal of middle pace that emerges on the mean course at an instant is led
 * back to now, one mean dose a stage, what remains going to the youngest stage it can still be in; the same doses lead
 * it forward through the future. Exact where the rates of the stages are proportional to each other.
 * @param untilDays the latest instant of the mean course that matters
 */
export function answeringDoses(chain: Chain, pace: number, untilDays: number): readonly AnsweringDose[] {
  const last = chain.stages.at(-1)!.course;
  const {ahead} = last;
  if (ahead === undefined) return [];
  if (chain.inStep) {
    const known = doseAt(last, ahead.fromDays);
    return ahead.starts.map((_, future) => atDays => known + doseAhead(ahead, future, atDays));
  }
  const nodes = nodesBetween(ahead.fromDays, untilDays);
  const journeys = Array.from({length: nodes.count}, (_, i) =>
    legsBack(chain, pace, ahead.fromDays, ahead.fromDays + i * nodes.step),
  );
  return ahead.starts.map((_, future) => {
    const arrivals = new Float64Array(nodes.count);
    for (let i = 0; i < nodes.count; i++) arrivals[i] = arrival(chain, journeys[i]!, ahead.fromDays, future);
    return atDays => doseAt(last, between(arrivals, ahead.fromDays, nodes.step, atDays));
  });
}

interface Leg {
  readonly stage: number;
  /** In the dose of the stage's course. */
  readonly dose: number;
}

/** The doses that lead from now to an emergence on the mean course, the first leg first. */
function legsBack({stages}: Chain, pace: number, nowDays: number, emergesDays: number): readonly Leg[] {
  const legs: Leg[] = [];
  let atDays = emergesDays;
  for (let stage = stages.length - 1; stage >= 0; stage--) {
    const {course, required} = stages[stage]!;
    const here = doseAt(course, atDays);
    const sinceNow = here - doseAt(course, nowDays);
    const whole = required / pace;
    if (sinceNow <= whole || stage === 0) {
      legs.unshift({stage, dose: sinceNow});
      break;
    }
    legs.unshift({stage, dose: whole});
    atDays = reachedAt(course, here - whole);
  }
  return legs;
}

function arrival({stages}: Chain, legs: readonly Leg[], nowDays: number, future: number): number {
  let atDays = nowDays;
  for (const {stage, dose} of legs) {
    const {ahead} = stages[stage]!.course;
    atDays = instantAhead(ahead!, future, doseAhead(ahead!, future, atDays) + dose);
  }
  return atDays;
}

function nodesBetween(fromDays: number, untilDays: number): {readonly count: number; readonly step: number} {
  const count = Math.max(2, Math.min(MOST_NODES, Math.ceil((untilDays - fromDays) / CLOSEST_DAYS) + 1));
  return {count, step: Math.max(CLOSEST_DAYS, (untilDays - fromDays) / (count - 1))};
}

/** Straight between arrivals of even nodes; before the first and after the last both run alike. */
function between(arrivals: Float64Array, fromDays: number, step: number, atDays: number): number {
  if (atDays < arrivals[0]!) return atDays;
  // A future is rarely many nodes ahead of the mean course, or behind it: walk from where that is.
  let node = Math.min(arrivals.length - 1, Math.max(0, Math.floor((atDays - fromDays) / step)));
  while (arrivals[node]! > atDays) node--;
  while (node + 1 < arrivals.length && arrivals[node + 1]! <= atDays) node++;
  const from = fromDays + node * step;
  const before = arrivals[node]!;
  const after = arrivals[node + 1] ?? Number.POSITIVE_INFINITY;
  if (after === Number.POSITIVE_INFINITY) return from + (atDays - before);
  return from + ((atDays - before) / (after - before)) * step;
}
