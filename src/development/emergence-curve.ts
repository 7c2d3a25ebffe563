// The mixture over everything unknown: how likely each statistic is reached by an instant.
import {type AnsweringDose, answeringDoses} from './answering-dose.ts';
import {type DoseCourse, doseAt, reachedAt} from './dose-course.ts';
import {layLine} from './pace-blend.ts';
import type {Span} from './quantiles.ts';
import {addHeightsAt, heightAt, layEvenly, type Ramps, raise, rampsBetween} from './ramps.ts';
import type {AnimalClass, PaceLine, PacePoint} from './scenario.ts';
import {smoothCurves} from './smooth-curves.ts';
import type {Chain} from './stage-chain.ts';
import {type Part, type Statistic, statisticParts} from './statistics.ts';

/** Chance that the statistic is reached by an instant. */
export type EmergenceCurves = (statistic: Statistic, atDays: number) => number;

/** Nodes of a curve over the doses that matter. */
const NODES = 1024;

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

/**
 * The curves of a lot along the mean course, all lines taken together, whatever their weights sum to.
 * @param wanted the statistics that will be asked for
 */
export function emergenceCurves(lines: readonly PaceLine[], wanted: readonly Statistic[]): EmergenceCurves {
  return meanCurves(curvesOf(lines, wanted), wanted);
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

export function emergenceCurvesAhead(
  lines: readonly PaceLine[],
  span: Span,
  wanted: readonly Statistic[],
): CurvesAhead {
  const curves = curvesOf(lines, wanted);
  const mean = meanCurves(curves, wanted);
  const begin = Math.max(...curves.map(({course}) => course.ahead?.fromDays ?? Number.POSITIVE_INFINITY));
  if (!(begin < span.untilDays))
    return {
      curves: mean,
      futures: 0,
      inFuture: (_, statistic, atDays) => mean(statistic, atDays),
      needing: needingAlong(
        curves.map(curve => ({...curve, doses: [atDays => doseAt(curve.course, atDays)]})),
        wanted,
      ),
    };
  const whole = curves.reduce((sum, {laid}) => sum + laid, 0);
  const through = curves.map(curve => ({
    ...curve,
    doses: answeringDoses(curve.chain, curve.pace, latestOf(curve, span)),
  }));
  const averaged = (atDays: number): Float64Array => {
    const sums = new Float64Array(wanted.length);
    for (const {shares, origin, doses} of through)
      for (const doseOf of doses)
        addHeightsAt(sums, shares, doseOf(atDays) - origin, 1 / (doses.length * whole));
    return sums;
  };
  const ahead = smoothCurves(averaged, {fromDays: begin, untilDays: span.untilDays});
  return {
    curves: (statistic, atDays) =>
      atDays <= begin ? mean(statistic, atDays) : ahead(wanted.indexOf(statistic), atDays),
    futures: Math.min(...through.map(({doses}) => doses.length)),
    inFuture(future, statistic, atDays) {
      if (atDays <= begin) return mean(statistic, atDays);
      let sum = 0;
      for (const {shares, origin, doses} of through)
        sum += heightAt(shares[wanted.indexOf(statistic)]!, doses[future]!(atDays) - origin);
      return sum / whole;
    },
    needing: needingAlong(through, wanted, begin),
  };
}

/** What is left of the dose at an instant is needed so many times; before the futures begin there is one course. */
function needingAlong(
  curves: readonly (Curve & {readonly doses: readonly AnsweringDose[]})[],
  wanted: readonly Statistic[],
  beginDays = Number.NEGATIVE_INFINITY,
): CurvesAhead['needing'] {
  const which = wanted.indexOf('animal');
  const whole = curves.reduce((sum, {laid}) => sum + laid, 0);
  return (times, sinceDays) => atDays => {
    let sum = 0;
    for (const {shares, origin, doses, course, candidate} of curves) {
      const since = doseAt(course, sinceDays);
      const along = atDays <= beginDays ? [(at: number) => doseAt(course, at)] : doses;
      for (const doseOf of along) {
        const dose = since + (doseOf(atDays) - since) / times(candidate);
        sum += heightAt(shares[which]!, dose - origin) / along.length;
      }
    }
    return sum / whole;
  };
}

/** When all that was laid is out on the mean course. */
function latestOf({shares, course, origin}: Curve, {untilDays}: Span): number {
  const {from, step, nodes} = shares.at(-1)!;
  const dose = origin + from + step * (nodes.length - 1);
  return Math.min(untilDays, reachedAt(course, dose));
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

function curvesOf(lines: readonly PaceLine[], wanted: readonly Statistic[]): readonly Curve[] {
  const alike = new Map<DoseCourse | Chain, PaceLine[]>();
  for (const line of lines) {
    const {chain} = line.member;
    const key = chain.inStep ? chain.stages.at(-1)!.course : chain;
    const group = alike.get(key);
    if (group) group.push(line);
    else alike.set(key, [line]);
  }
  return [...alike.values()].map(group => curveOf(group, wanted));
}

function curveOf(lines: readonly PaceLine[], wanted: readonly Statistic[]): Curve {
  const known = new Map<readonly AnimalClass[], readonly Part[]>();
  const partsAt = ({classes, tempo, weight}: PacePoint): readonly Part[] => {
    if (weight === 0) return [];
    const parts = known.get(classes) ?? statisticParts(tempo, classes, wanted);
    known.set(classes, parts);
    return parts;
  };
  const parts = lines.map(({points}) => points.map(partsAt));
  const [from, to] = reachOf(lines, parts);
  const shares = wanted.map(() => rampsBetween(from, to, NODES));
  let laid = 0;
  lines.forEach((line, i) => {
    laid += layLine(line, parts[i]!, (statistic, a, b, mass) =>
      layEvenly(shares[wanted.indexOf(statistic)]!, a, b, mass),
    );
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
