// The mixture over everything unknown: how likely each statistic is reached by an instant.
import {answeringDoses} from './answering-dose.ts';
import {type DoseCourse, doseAt, reachedAt} from './dose-course.ts';
import {layLine} from './pace-blend.ts';
import type {Span} from './quantiles.ts';
import {heightAt, layEvenly, type Ramps, raise, rampsBetween} from './ramps.ts';
import type {AnimalClass, PaceLine} from './scenario.ts';
import {smoothCurves} from './smooth-curves.ts';
import type {Chain} from './stage-chain.ts';
import {type Part, STATISTICS, type Statistic, statisticParts} from './statistics.ts';

/** Chance that the statistic is reached by an instant. */
export type EmergenceCurves = (statistic: Statistic, atDays: number) => number;

/** Nodes of a curve over the doses that matter. */
const NODES = 2048;

/** What lines come to whose animals run through any future alike. */
interface Curve {
  readonly chain: Chain;
  /** Of the last stage. */
  readonly course: DoseCourse;
  /** The dose when the lot began. */
  readonly origin: number;
  readonly shares: Readonly<Record<Statistic, Ramps>>;
  readonly laid: number;
  /** The mean of the lines, as they weigh. */
  readonly pace: number;
}

/** The curves of a lot along the mean course, all lines taken together, whatever their weights sum to. */
export function emergenceCurves(lines: readonly PaceLine[]): EmergenceCurves {
  return meanCurves(curvesOf(lines));
}

/** The curves of a lot with every future of its course. */
export interface CurvesAhead {
  /** Each future as likely as any other. */
  readonly curves: EmergenceCurves;
  /** How many futures there are; 0 where only one course is known. */
  readonly futures: number;
  /** The chance in one of the futures. */
  inFuture(future: number, statistic: Statistic, atDays: number): number;
}

export function emergenceCurvesAhead(lines: readonly PaceLine[], span: Span): CurvesAhead {
  const curves = curvesOf(lines);
  const mean = meanCurves(curves);
  const begin = Math.max(...curves.map(({course}) => course.ahead?.fromDays ?? Number.POSITIVE_INFINITY));
  if (!(begin < span.untilDays))
    return {curves: mean, futures: 0, inFuture: (_, statistic, atDays) => mean(statistic, atDays)};
  const whole = curves.reduce((sum, {laid}) => sum + laid, 0);
  const through = curves.map(curve => ({
    ...curve,
    doses: answeringDoses(curve.chain, curve.pace, latestOf(curve, span)),
  }));
  const sums = new Float64Array(STATISTICS.length);
  const averaged = (atDays: number): Float64Array => {
    sums.fill(0);
    for (const {shares, origin, doses} of through)
      for (const doseOf of doses) {
        const dose = doseOf(atDays) - origin;
        STATISTICS.forEach((statistic, i) => {
          sums[i] = sums[i]! + heightAt(shares[statistic], dose) / doses.length;
        });
      }
    return sums.map(sum => sum / whole);
  };
  const ahead = smoothCurves(averaged, {fromDays: begin, untilDays: span.untilDays});
  return {
    curves: (statistic, atDays) =>
      atDays <= begin ? mean(statistic, atDays) : ahead(STATISTICS.indexOf(statistic), atDays),
    futures: Math.min(...through.map(({doses}) => doses.length)),
    inFuture(future, statistic, atDays) {
      if (atDays <= begin) return mean(statistic, atDays);
      let sum = 0;
      for (const {shares, origin, doses} of through)
        sum += heightAt(shares[statistic], doses[future]!(atDays) - origin);
      return sum / whole;
    },
  };
}

/** When all that was laid is out on the mean course. */
function latestOf({shares, course, origin}: Curve, {untilDays}: Span): number {
  const {from, step, nodes} = shares.last;
  const dose = origin + from + step * (nodes.length - 1);
  return Math.min(untilDays, reachedAt(course, dose));
}

function meanCurves(curves: readonly Curve[]): EmergenceCurves {
  const whole = curves.reduce((sum, {laid}) => sum + laid, 0);
  return (statistic, atDays) => {
    let sum = 0;
    for (const {course, origin, shares} of curves)
      sum += heightAt(shares[statistic], doseAt(course, atDays) - origin);
    return sum / whole;
  };
}

function curvesOf(lines: readonly PaceLine[]): readonly Curve[] {
  const alike = new Map<DoseCourse | Chain, PaceLine[]>();
  for (const line of lines) {
    const {chain} = line.member;
    const key = chain.inStep ? chain.stages.at(-1)!.course : chain;
    const group = alike.get(key);
    if (group) group.push(line);
    else alike.set(key, [line]);
  }
  return [...alike.values()].map(curveOf);
}

function curveOf(lines: readonly PaceLine[]): Curve {
  const known = new Map<readonly AnimalClass[], readonly Part[]>();
  const partsOf = (classes: readonly AnimalClass[]) => {
    const parts = known.get(classes) ?? statisticParts(classes);
    known.set(classes, parts);
    return parts;
  };
  const parts = lines.map(({points}) =>
    points.map(({classes, weight}) => (weight === 0 ? [] : partsOf(classes))),
  );
  const [from, to] = reachOf(lines, parts);
  const room = () => rampsBetween(from, to, NODES);
  const shares = {animal: room(), first: room(), half: room(), last: room()};
  let laid = 0;
  lines.forEach((line, i) => {
    laid += layLine(line, parts[i]!, (statistic, a, b, mass) => layEvenly(shares[statistic], a, b, mass));
  });
  for (const statistic of STATISTICS) raise(shares[statistic]);
  const {chain} = lines[0]!.member;
  return {
    chain,
    course: chain.stages.at(-1)!.course,
    origin: lines[0]!.points[0]!.tempo.origins.at(-1)!,
    shares,
    laid,
    pace: meanPace(lines),
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
