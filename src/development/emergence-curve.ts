// The mixture over everything unknown: how likely each statistic is reached by an instant.
import {answeringDoses} from './answering-dose.ts';
import {type DoseCourse, doseAt, reachedAt} from './dose-course.ts';
import {layLine} from './pace-blend.ts';
import type {Prospects} from './prospects.ts';
import type {Span} from './quantiles.ts';
import {addHeightsAt, heightAt, layEvenly, type Ramps, raise, rampsBetween} from './ramps.ts';
import type {PaceLine, PacePoint} from './scenario.ts';
import {smoothCurves} from './smooth-curves.ts';
import type {Chain} from './stage-chain.ts';
import type {Part, Statistic} from './statistics.ts';

/** Chance that the statistic is reached by an instant. */
export type EmergenceCurves = (statistic: Statistic, atDays: number) => number;

/** Nodes of a curve over the doses that matter. */
const NODES = 1536;

/** What lines come to whose animals run through any future alike. */
interface Curve {
  readonly chain: Chain;
  /** Of the last stage. */
  readonly course: DoseCourse;
  /** The dose when the lot began. */
  readonly origin: number;
  /** In the order of the statistics wanted. */
  readonly shares: readonly Ramps[];
  readonly laid: number;
  /** The mean of the lines, as they weigh. */
  readonly pace: number;
  /** The place of the candidate that weighs most in it. */
  readonly candidate: number;
}

/** The curves of a lot with every future of its course. */
export interface CurvesAhead {
  /** Each future as likely as any other. */
  readonly curves: EmergenceCurves;
  /** How many futures there are; 0 where only one course is known. */
  readonly futures: number;
  /** The chance in one of the futures. */
  inFuture(future: number, statistic: Statistic, atDays: number): number;
  /**
   * The chance that an animal is out which needs another dose than the mean one, from an instant on.
   * @param times how many times the dose, by the candidate's place
   */
  needing(times: (candidate: number) => number, sinceDays: number): (atDays: number) => number;
}

/**
 * The curves of a lot, all lines taken together, whatever their weights sum to.
 * @param wanted the statistics that will be asked for
 */
export function emergenceCurves(
  lines: readonly PaceLine[],
  prospects: ReadonlyMap<PacePoint, Prospects>,
  span: Span,
  wanted: readonly Statistic[],
): CurvesAhead {
  const curves = curvesOf(lines, prospects, wanted);
  const mean = meanCurves(curves, wanted);
  const begin = Math.max(...curves.map(({course}) => course.ahead?.fromDays ?? Number.POSITIVE_INFINITY));
  if (!(begin < span.untilDays))
    return {
      curves: mean,
      futures: 0,
      inFuture: (_, statistic, atDays) => mean(statistic, atDays),
      needing: needingAlong(curves, () => null, wanted),
    };
  const whole = curves.reduce((sum, {laid}) => sum + laid, 0);
  const answers = curves.map(curve =>
    answeringDoses(curve.chain, curve.pace, curve.course.ahead!, risingSpan(curve, begin, span)),
  );
  const averaged = (atDays: number): Float64Array => {
    const sums = new Float64Array(wanted.length);
    curves.forEach(({shares, origin}, i) => {
      addHeightsAt(sums, shares, answers[i]!.inAll(atDays), origin, 1 / (answers[i]!.futures * whole));
    });
    return sums;
  };
  const ahead = smoothCurves(
    averaged,
    {fromDays: begin, untilDays: span.untilDays},
    {
      fromDays: Math.min(...answers.map(({within}) => within.fromDays)),
      untilDays: Math.max(...answers.map(({within}) => within.untilDays)),
    },
  );
  return {
    curves: (statistic, atDays) =>
      atDays <= begin ? mean(statistic, atDays) : ahead(wanted.indexOf(statistic), atDays),
    futures: Math.min(...answers.map(({futures}) => futures)),
    inFuture(future, statistic, atDays) {
      if (atDays <= begin) return mean(statistic, atDays);
      let sum = 0;
      curves.forEach(({shares, origin}, i) => {
        sum += heightAt(shares[wanted.indexOf(statistic)]!, answers[i]!.inFuture(future, atDays) - origin);
      });
      return sum / whole;
    },
    needing: needingAlong(
      curves,
      (curve, atDays) => (atDays <= begin ? null : answers[curve]!.inAll(atDays)),
      wanted,
    ),
  };
}

/**
 * What is left of the dose at an instant is needed so many times.
 * @param answers the doses of a curve in every future; null where there is but one course
 */
function needingAlong(
  curves: readonly Curve[],
  answers: (curve: number, atDays: number) => Float64Array | null,
  wanted: readonly Statistic[],
): CurvesAhead['needing'] {
  const which = wanted.indexOf('animal');
  const whole = curves.reduce((sum, {laid}) => sum + laid, 0);
  return (times, sinceDays) => atDays => {
    let sum = 0;
    curves.forEach(({shares, origin, course, candidate}, i) => {
      const since = doseAt(course, sinceDays);
      const doses = answers(i, atDays) ?? [doseAt(course, atDays)];
      for (const dose of doses) {
        const needed = since + (dose - since) / times(candidate);
        sum += heightAt(shares[which]!, needed - origin) / doses.length;
      }
    });
    return sum / whole;
  };
}

/** What rises by less than this at either end hardly rises. */
const FLAT = 1e-4;

/** Where on the mean course the curves rise, from where the futures begin. */
function risingSpan({shares, course, origin}: Curve, beginDays: number, {untilDays}: Span): Span {
  const {from, step, nodes} = shares[0]!;
  let first = nodes.length - 1;
  let last = 0;
  for (const {nodes} of shares) {
    const top = nodes.at(-1)!;
    first = Math.min(first, Math.max(0, firstAbove(nodes, FLAT * top) - 1));
    last = Math.max(last, firstAbove(nodes, (1 - FLAT) * top));
  }
  const instant = (node: number) =>
    Math.min(untilDays, Math.max(beginDays, reachedAt(course, origin + from + step * node)));
  return {fromDays: instant(first), untilDays: instant(last)};
}

/** The first of rising heights above one; the last where none is. */
function firstAbove(heights: Float64Array, height: number): number {
  let low = 0;
  let high = heights.length - 1;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (heights[middle]! > height) high = middle;
    else low = middle + 1;
  }
  return low;
}

function meanCurves(curves: readonly Curve[], wanted: readonly Statistic[]): EmergenceCurves {
  const whole = curves.reduce((sum, {laid}) => sum + laid, 0);
  return (statistic, atDays) => {
    const which = wanted.indexOf(statistic);
    let sum = 0;
    for (const {course, origin, shares} of curves)
      sum += heightAt(shares[which]!, doseAt(course, atDays) - origin);
    return sum / whole;
  };
}

function curvesOf(
  lines: readonly PaceLine[],
  prospects: ReadonlyMap<PacePoint, Prospects>,
  wanted: readonly Statistic[],
): readonly Curve[] {
  const alike = new Map<DoseCourse | Chain, PaceLine[]>();
  for (const line of lines) {
    const {chain} = line.member;
    const key = chain.inStep ? chain.stages.at(-1)!.course : chain;
    const group = alike.get(key);
    if (group) group.push(line);
    else alike.set(key, [line]);
  }
  const goesOn = shareGoingOn(lines, prospects);
  return [...alike.values()].map(group => curveOf(group, prospects, wanted, goesOn));
}

function curveOf(
  lines: readonly PaceLine[],
  prospects: ReadonlyMap<PacePoint, Prospects>,
  wanted: readonly Statistic[],
  goesOn: number,
): Curve {
  const parts = lines.map(({points}) => points.map(point => prospects.get(point)?.parts ?? []));
  const [from, to] = reachOf(lines, parts);
  const shares = wanted.map(() => rampsBetween(from, to, NODES));
  let laid = 0;
  lines.forEach((line, i) => {
    const lay = (weighed: PaceLine, these: readonly (readonly Part[])[]) =>
      layLine(weighed, these, (statistic, a, b, mass) =>
        layEvenly(shares[wanted.indexOf(statistic)]!, a, b, mass),
      );
    if (goesOn === 1) {
      laid += lay(line, parts[i]!);
      return;
    }
    const only = (isOne: boolean) =>
      parts[i]!.map(all => all.filter(({statistic}) => (statistic === 'animal') === isOne));
    lay(weighedByThoseGoingOn(line, prospects, goesOn), only(true));
    laid += lay(line, only(false));
  });
  for (const ramps of shares) raise(ramps);
  const weightOf = ({points}: PaceLine) => points.reduce((sum, {weight}) => sum + weight, 0);
  const {candidate} = lines.reduce((a, b) => (weightOf(b) > weightOf(a) ? b : a)).member;
  const {chain} = lines[0]!.member;
  return {
    chain,
    course: chain.stages.at(-1)!.course,
    origin: lines[0]!.points[0]!.tempo.origins.at(-1)!,
    shares,
    laid,
    pace: meanPace(lines),
    candidate,
  };
}

/** The share of the animals that goes on. */
function shareGoingOn(lines: readonly PaceLine[], prospects: ReadonlyMap<PacePoint, Prospects>): number {
  if (lines.every(({member}) => member.rests.length === 0)) return 1;
  const points = lines.flatMap(line => line.points);
  const whole = points.reduce((sum, {weight}) => sum + weight, 0);
  return points.reduce((sum, point) => sum + point.weight * (prospects.get(point)?.goesOn ?? 0), 0) / whole;
}

/** An animal that emerges is the likelier of a point, the more of its animals go on there than over all. */
function weighedByThoseGoingOn(
  line: PaceLine,
  prospects: ReadonlyMap<PacePoint, Prospects>,
  overAll: number,
): PaceLine {
  const times = (point: PacePoint) => (prospects.get(point)?.goesOn ?? 0) / overAll;
  return {...line, points: line.points.map(point => ({...point, weight: point.weight * times(point)}))};
}

function meanPace(lines: readonly PaceLine[]): number {
  const points = lines.flatMap(line => line.points);
  const whole = points.reduce((sum, {weight}) => sum + weight, 0);
  if (whole === 0) return 1;
  return points.reduce((sum, {weight, tempo}) => sum + weight * tempo.pace, 0) / whole;
}

/** The doses of the course between which all parts lie. */
function reachOf(
  lines: readonly PaceLine[],
  parts: readonly (readonly (readonly Part[])[])[],
): readonly [from: number, to: number] {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  lines.forEach(({points, member}, line) => {
    const {required} = member.chain.stages.at(-1)!;
    points.forEach(({tempo}, point) => {
      for (const {levels} of parts[line]![point]!)
        for (const dose of levels) {
          if (dose === Number.POSITIVE_INFINITY) break;
          from = Math.min(from, (dose * required) / tempo.pace);
          to = Math.max(to, (dose * required) / tempo.pace);
        }
    });
  });
  return from <= to ? [from, to] : [0, 1];
}
