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
  const journeys = nodesBetween(ahead.fromDays, untilDays).map(atDays => ({
    atDays,
    legs: legsBack(chain, pace, ahead.fromDays, atDays),
  }));
  return ahead.starts.map((_, future) => {
    const arrivals = journeys.map(({legs}) => arrival(chain, legs, ahead.fromDays, future));
    return atDays => doseAt(last, between(arrivals, journeys, atDays));
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

function nodesBetween(fromDays: number, untilDays: number): number[] {
  const nodes = Math.max(2, Math.min(MOST_NODES, Math.ceil((untilDays - fromDays) / CLOSEST_DAYS) + 1));
  const step = Math.max(CLOSEST_DAYS, (untilDays - fromDays) / (nodes - 1));
  return Array.from({length: nodes}, (_, i) => fromDays + i * step);
}

/** Straight between arrivals; before the first and after the last both run alike. */
function between(
  arrivals: readonly number[],
  nodes: readonly {readonly atDays: number}[],
  atDays: number,
): number {
  let low = 0;
  let high = arrivals.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (arrivals[middle]! > atDays) high = middle;
    else low = middle + 1;
  }
  if (low === 0) return atDays;
  const before = arrivals[low - 1]!;
  const from = nodes[low - 1]!.atDays;
  const after = arrivals[low];
  if (after === undefined || after === Number.POSITIVE_INFINITY) return from + (atDays - before);
  return after > before ? from + ((atDays - before) / (after - before)) * (nodes[low]!.atDays - from) : from;
}
