// The mixture over everything unknown: how likely each statistic is reached by an instant.
import {type DoseCourse, doseAt} from './dose-course.ts';
import {layLine} from './pace-blend.ts';
import {heightAt, layEvenly, type Ramps, raise, rampsBetween} from './ramps.ts';
import type {AnimalClass, PaceLine} from './scenario.ts';
import {type Part, STATISTICS, type Statistic, statisticParts} from './statistics.ts';

/** Chance that the statistic is reached by an instant. */
export type EmergenceCurves = (statistic: Statistic, atDays: number) => number;

/** Nodes of a curve over the doses that matter. */
const NODES = 2048;

/** What lines whose last stage counts in the same dose come to. */
interface Curve {
  readonly course: DoseCourse;
  /** The dose when the lot began. */
  readonly origin: number;
  readonly shares: Readonly<Record<Statistic, Ramps>>;
  readonly laid: number;
}

/** The curves of a lot, all lines taken together, whatever their weights sum to. */
export function emergenceCurves(lines: readonly PaceLine[]): EmergenceCurves {
  const byCourse = new Map<DoseCourse, PaceLine[]>();
  for (const line of lines) {
    const {course} = line.member.chain.stages.at(-1)!;
    const group = byCourse.get(course);
    if (group) group.push(line);
    else byCourse.set(course, [line]);
  }
  const curves = [...byCourse].map(([course, group]) => curveOf(course, group));
  const whole = curves.reduce((sum, {laid}) => sum + laid, 0);
  return (statistic, atDays) => {
    let sum = 0;
    for (const {course, origin, shares} of curves)
      sum += heightAt(shares[statistic], doseAt(course, atDays) - origin);
    return sum / whole;
  };
}

function curveOf(course: DoseCourse, lines: readonly PaceLine[]): Curve {
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
  return {course, origin: lines[0]!.points[0]!.tempo.origins.at(-1)!, shares, laid};
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
