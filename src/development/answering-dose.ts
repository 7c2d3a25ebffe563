// Which dose of the mean course answers to an instant of one future, for animals that go through several stages.
import {doseAt, reachedAt} from './dose-course.ts';
import {doseAhead, type FutureDoses, instantAhead} from './future-doses.ts';
import type {Span} from './quantiles.ts';
import type {Chain} from './stage-chain.ts';

/** The doses of the last stage's course at which the mean course brings animals as far as an instant of each future. */
export interface Answers {
  readonly futures: number;
  inFuture(future: number, atDays: number): number;
  /** Of every future, in a row that the next call writes anew. */
  inAll(atDays: number): Float64Array;
  /** In some future the beginning of the span on the mean course is answered to at the first of these, and its end at the last. */
  readonly within: Span;
}

/** Nodes are half a day apart, or one, two, four days: no more than about so many. */
const MOST_NODES = 48;

/**
 * Where all stages count in one dose the answering dose is that of the future itself. Else the animal of middle pace
 * that emerges on the mean course at an instant is led back to now, one mean dose a stage, what remains going to the
 * youngest stage it can still be in; the same doses lead it forward through the future. Exact where the rates of the
 * stages are proportional to each other.
 * @param span the part of the mean course that matters, not before the futures begin
 */
export function answeringDoses(chain: Chain, pace: number, ahead: FutureDoses, span: Span): Answers {
  const {stages, inStep} = chain;
  const last = stages.at(-1)!.course;
  if (inStep) {
    const known = doseAt(last, ahead.fromDays);
    const instants = (atDays: number) =>
      ahead.starts.map((_, future) => instantAhead(ahead, future, doseAt(last, atDays) - known));
    return answersOf(ahead.size, (future, atDays) => known + doseAhead(ahead, future, atDays), {
      fromDays: Math.min(...instants(span.fromDays)),
      untilDays: Math.max(...instants(span.untilDays)),
    });
  }
  const step = 2 ** Math.max(-1, Math.ceil(Math.log2((span.untilDays - span.fromDays) / MOST_NODES)));
  const first = Math.floor((span.fromDays - ahead.fromDays) / step);
  const count = Math.max(2, 1 + Math.ceil((span.untilDays - ahead.fromDays) / step) - first);
  const arrivalsAt = arrivalsOf(chain, pace, ahead, step);
  const arrivals = Array.from({length: count}, (_, i) => arrivalsAt(first + i));
  const answering = {fromDays: ahead.fromDays + first * step, step, arrivals};
  return answersOf(ahead.size, (future, atDays) => doseAt(last, answerTo(answering, future, atDays)), {
    fromDays: Math.min(...arrivals[0]!),
    untilDays: Math.max(...arrivals.at(-1)!),
  });
}

function answersOf(
  futures: number,
  inFuture: (future: number, atDays: number) => number,
  within: Span,
): Answers {
  const all = new Float64Array(futures);
  const inAll = (atDays: number) => {
    for (let future = 0; future < futures; future++) all[future] = inFuture(future, atDays);
    return all;
  };
  return {futures, inFuture, inAll, within};
}

/** Paces this near to each other (in ln) share their journeys: a pace only says how a dose divides among the stages. */
const ALIKE = 0.1;

type ArrivalsAt = (node: number) => Float64Array;

const kept = new WeakMap<Chain, Map<string, ArrivalsAt>>();

/** When animals that emerge on the mean course at a node emerge in each future; lots of one unit share them. */
function arrivalsOf(chain: Chain, pace: number, ahead: FutureDoses, step: number): ArrivalsAt {
  const alike = Math.round(Math.log(pace) / ALIKE);
  const name = `${alike} ${step}`;
  const ofChain = kept.get(chain) ?? new Map<string, ArrivalsAt>();
  kept.set(chain, ofChain);
  let arrivalsAt = ofChain.get(name);
  if (arrivalsAt === undefined) {
    const nodes = new Map<number, Float64Array>();
    arrivalsAt = node => {
      let arrivals = nodes.get(node);
      if (arrivals === undefined) {
        const legs = legsBack(
          chain.stages,
          Math.exp(alike * ALIKE),
          ahead.fromDays,
          ahead.fromDays + node * step,
        );
        arrivals = Float64Array.from(ahead.starts, (_, future) =>
          arrival(chain.stages, legs, ahead.fromDays, future),
        );
        nodes.set(node, arrivals);
      }
      return arrivals;
    };
    ofChain.set(name, arrivalsAt);
  }
  return arrivalsAt;
}

interface Leg {
  readonly stage: number;
  /** In the dose of the stage's course. */
  readonly dose: number;
}

/** The doses that lead from now to an emergence on the mean course, the first leg first. */
function legsBack(
  stages: Chain['stages'],
  pace: number,
  nowDays: number,
  emergesDays: number,
): readonly Leg[] {
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

function arrival(stages: Chain['stages'], legs: readonly Leg[], nowDays: number, future: number): number {
  let atDays = nowDays;
  for (const {stage, dose} of legs) {
    const {ahead} = stages[stage]!.course;
    atDays = instantAhead(ahead!, future, doseAhead(ahead!, future, atDays) + dose);
  }
  return atDays;
}

interface Answering {
  /** Of the first node on the mean course. */
  readonly fromDays: number;
  readonly step: number;
  /** By node, when each future answers to it. */
  readonly arrivals: readonly Float64Array[];
}

/**
 * The instant of the mean course to which one of a future answers: straight between nodes; before the first and after
 * the last both run alike, as far apart as there.
 */
function answerTo({fromDays, step, arrivals}: Answering, future: number, atDays: number): number {
  const last = arrivals.length - 1;
  // A future is rarely many nodes ahead of the mean course, or behind it: walk from where that is.
  let node = Math.min(last, Math.max(0, Math.floor((atDays - fromDays) / step)));
  while (node >= 0 && arrivals[node]![future]! > atDays) node--;
  if (node < 0) return fromDays - (arrivals[0]![future]! - atDays);
  while (node < last && arrivals[node + 1]![future]! <= atDays) node++;
  const before = arrivals[node]![future]!;
  const after = node < last ? arrivals[node + 1]![future]! : Number.POSITIVE_INFINITY;
  const along =
    after === Number.POSITIVE_INFINITY ? atDays - before : (step * (atDays - before)) / (after - before);
  return fromDays + node * step + along;
}
