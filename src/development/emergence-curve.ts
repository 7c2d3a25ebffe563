// The mixture over everything unknown: how likely each statistic is reached by an instant.
import {type DoseCourse, doseAt} from './dose-course.ts';
import {LEVELS} from './levels.ts';
import {heightAt, layEvenly, type Ramps, raise, rampsBetween} from './ramps.ts';
import type {PaceLine} from './scenario.ts';
import {STATISTICS, type Statistic, type StatisticLevels, statisticLevels} from './statistics.ts';

/** Chance that the statistic is reached by an instant. */
export type EmergenceCurves = (statistic: Statistic, atDays: number) => number;

/** Between two points of the pace, so many are set in by interpolation. */
const BETWEEN = 4;
/** Nodes of a curve over the doses that matter. */
const NODES = 2048;

/** The curves of the lines whose last stage counts in the same dose. */
interface Curve {
  readonly course: DoseCourse;
  readonly origin: number;
  readonly shares: Readonly<Record<Statistic, Ramps>>;
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
  const whole = lines.reduce((sum, line) => sum + pieceWeights(line), 0);
  return (statistic, atDays) => {
    let sum = 0;
    for (const {course, origin, shares} of curves)
      sum += heightAt(shares[statistic], doseAt(course, atDays) - origin);
    return sum / whole;
  };
}

/** A mass spread evenly between two doses. */
type Lay = (statistic: Statistic, from: number, to: number, mass: number) => void;

function curveOf(course: DoseCourse, lines: readonly PaceLine[]): Curve {
  const levelsAt = new Map<PaceLine['points'][number]['classes'], StatisticLevels>();
  const levelled = lines.map(line => ({
    line,
    levels: line.points.map(({classes}) => {
      const known = levelsAt.get(classes) ?? statisticLevels(classes);
      levelsAt.set(classes, known);
      return known;
    }),
  }));

  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const {line, levels} of levelled)
    line.points.forEach(({tempo}, i) => {
      for (const statistic of STATISTICS)
        for (const dose of levels[i]![statistic]) {
          if (dose === Number.POSITIVE_INFINITY) break;
          const y = (dose * requiredOf(line)) / tempo.pace;
          from = Math.min(from, y);
          to = Math.max(to, y);
        }
    });
  const origin = lines[0]!.points[0]!.tempo.origins.at(-1)!;
  const room = () => rampsBetween(from <= to ? from : 0, from <= to ? to : 1, NODES);
  const shares = {animal: room(), first: room(), half: room(), last: room()};
  for (const {line, levels} of levelled)
    layLine(line, levels, (statistic, a, b, mass) => layEvenly(shares[statistic], a, b, mass));
  for (const statistic of STATISTICS) raise(shares[statistic]);
  return {course, origin, shares};
}

/**
 * The pace is continuous: between two of its points each level of each statistic moves on a straight line on the
 * dose axis of its pace, so that the masses between levels move with it. A mass that is spread by levels and by pace
 * at once is laid as wide as both spreads together.
 */
function layLine(line: PaceLine, levels: readonly StatisticLevels[], lay: Lay) {
  const {points, member} = line;
  const required = requiredOf(line);
  if (points.length === 1) {
    const {weight, tempo} = points[0]!;
    for (const statistic of STATISTICS)
      layCells(levels[0]![statistic], levels[0]![statistic], 0, required / tempo.pace, weight, 0, (a, b, m) =>
        lay(statistic, a, b, m),
      );
    return;
  }
  for (let i = 0; i + 1 < points.length; i++) {
    const here = points[i]!;
    const next = points[i + 1]!;
    const lnPaceStep = (member.lnSpeedSd * (next.z - here.z)) / BETWEEN;
    for (let part = 0; part < BETWEEN; part++) {
      const along = (part + 0.5) / BETWEEN;
      const pace = Math.exp(member.lnSpeedSd * (here.z + along * (next.z - here.z)));
      const weight = between(here.weight, next.weight, along) / BETWEEN;
      if (weight === 0) continue;
      for (const statistic of STATISTICS)
        layCells(
          levels[i]![statistic],
          levels[i + 1]![statistic],
          along,
          required / pace,
          weight,
          lnPaceStep,
          (a, b, m) => lay(statistic, a, b, m),
        );
    }
  }
}

function layCells(
  here: Float64Array,
  next: Float64Array,
  along: number,
  scale: number,
  weight: number,
  lnPaceStep: number,
  lay: (from: number, to: number, mass: number) => void,
) {
  let before = (here[0]! + along * (next[0]! - here[0]!)) * scale;
  for (let level = 1; level < LEVELS.length; level++) {
    const after = (here[level]! + along * (next[level]! - here[level]!)) * scale;
    if (!Number.isFinite(after)) return;
    const middle = (before + after) / 2;
    const reach = Math.sqrt((after - before) ** 2 + (middle * lnPaceStep) ** 2) / 2;
    lay(middle - reach, middle + reach, weight * MASSES[level]!);
    before = after;
  }
}

/** The probability between each level and the one before; what lies outside the levels goes to the outermost. */
const MASSES = LEVELS.map((level, i) => {
  if (i === 0) return 0;
  const from = i === 1 ? 0 : LEVELS[i - 1]!;
  return (i === LEVELS.length - 1 ? 1 : level) - from;
});

/** What the pieces of a line weigh together; interpolated, that is not quite what its points do. */
function pieceWeights({points}: PaceLine): number {
  if (points.length === 1) return points[0]!.weight;
  let sum = 0;
  for (let i = 0; i + 1 < points.length; i++)
    for (let part = 0; part < BETWEEN; part++)
      sum += between(points[i]!.weight, points[i + 1]!.weight, (part + 0.5) / BETWEEN) / BETWEEN;
  return sum;
}

/** Between two weights along their logarithms, as a normal curve runs. */
function between(here: number, next: number, along: number): number {
  return here > 0 && next > 0 ? here ** (1 - along) * next ** along : 0;
}

const requiredOf = ({member}: PaceLine): number => member.chain.stages.at(-1)!.required;
