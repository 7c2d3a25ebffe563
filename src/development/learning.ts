// Seeing is learning: what was seen weighs every point of the unknowns, and leaves the animals standing somewhere.
import {type BroodAges, broodAgesOf} from './brood.ts';
import type {FounderClass} from './founders.ts';
import {lnGamma} from './gamma-function.ts';
import {speedAt} from './group-members.ts';
import type {Look} from './looks.ts';
import type {CandidateMember} from './members.ts';
import {normalDensity} from './normal.ts';
import {type Path, pairCounted, pairEmerged, pairRemoved, portions} from './paths.ts';
import {type PaceLine, pacesOf} from './scenario.ts';
import {passagesFrom, standingOf} from './standing.ts';
import {type Step, type Told, tell, WORTHLESS} from './story.ts';
import {type Tempo, tempoOf} from './tempo.ts';

/** Points this much less likely than the best (in ln) are not followed further. */
const HOPELESS = 16;

export interface Learned {
  readonly lines: readonly PaceLine[];
  /** Entries of counts that were more likely worthless than not. */
  readonly leftOut: readonly string[];
}

interface Point extends Told {
  readonly z: number;
  readonly lnPrior: number;
  readonly tempo: Tempo;
}

interface Line {
  readonly member: CandidateMember;
  readonly broods: BroodAges;
  /** ln of what the line weighs before anything is seen. */
  readonly lnWeight: number;
  readonly startDays: number;
  readonly points: readonly Point[];
}

export interface Known {
  readonly members: readonly CandidateMember[];
  readonly classes: readonly FounderClass[];
  readonly looks: readonly Look[];
  readonly startDays: number;
  /** How many are alive now; null where nobody knows. */
  readonly alive: number | null;
}

/**
 * The lines of every member with what was seen weighed, and the animals as they stand after the last look. Null where
 * no point of the unknowns can explain what was seen.
 */
export function learn({members, classes, looks, startDays, alive}: Known): Learned | null {
  let lines = members.flatMap(member => linesToTell(member, classes, startDays));
  const stages = new Set(members.flatMap(({chain}) => chain.stages.map(({name}) => name))).size + 1;
  const story: Step[] = [];
  const leftOut: string[] = [];
  let paths: readonly Path[] = [];
  const waiting = new Set(classes.keys());

  const go = (step: Step) => {
    story.push(step);
    lines = lines.map(line => ({
      ...line,
      points: line.points.map(point => told(point, step, line, classes)),
    }));
  };
  for (const look of looks) {
    const joining = [...waiting].filter(place => classes[place]!.atDays <= look.atDays);
    for (const place of joining) waiting.delete(place);
    paths = [...paths, ...joining.map(place => pathOf(classes[place]!))];
    go({kind: 'later', atDays: look.atDays, joining});

    if (look.complete) {
      const branches = pairEmerged(paths, look.emerged);
      go({kind: 'emerged', counts: paths.map(({count}) => count), branches});
      paths = without(paths, branches)
        .filter(({count}) => count > 0)
        .map(path => ({...path, notOutDays: look.atDays}));
    }
    if (look.counted.length > 0 && paths.length > 0) {
      const branches = pairCounted(paths, look.counted);
      const step: Step = {kind: 'counted', branches, lnIfWorthless: lnIfWorthless(branches, stages)};
      if (isWorthless(lines, step, classes)) leftOut.push(...look.entries);
      else {
        go(step);
        paths = branches.map(branch => branched(paths[branch.from]!, branch, look.atDays));
      }
    }
    for (const removal of look.removed) paths = without(paths, pairRemoved(paths, removal));
    const kept = [...paths.keys()].filter(path => paths[path]!.count > 0);
    if (kept.length < paths.length) {
      go({kind: 'kept', paths: kept});
      paths = kept.map(path => paths[path]!);
    }
    lines = withoutHopeless(lines);
  }
  const best = bestOf(lines);
  if (best === Number.NEGATIVE_INFINITY) return null;

  const finer = lines.map(line =>
    refined(line, best, points => points.map(point => toldAll(point, story, line, classes))),
  );
  return {
    lines: finer.map(line => asPaceLine(line, paths, [...waiting], classes, alive, bestOf(finer))),
    leftOut,
  };
}

function linesToTell(member: CandidateMember, classes: readonly FounderClass[], startDays: number): Line[] {
  const ages = broodAgesOf(member, classes);
  return ages.map(broods => {
    const line = {member, broods, startDays, lnWeight: Math.log(member.weight / ages.length), points: []};
    return {...line, points: pacesOf(member).map(({z, weight}) => pointOf(line, z, Math.log(weight)))};
  });
}

function pointOf({member, lnWeight, startDays}: Line, z: number, lnPace: number): Point {
  const tempo = tempoOf(member.chain, startDays, speedAt(member, z));
  return {z, lnPrior: lnWeight + lnPace, tempo, lnChance: 0, standings: []};
}

function told(point: Point, step: Step, {broods}: Line, classes: readonly FounderClass[]): Point {
  if (point.lnChance === Number.NEGATIVE_INFINITY) return point;
  return {...point, ...tell(point, step, point.tempo, classes, broods)};
}

function toldAll(point: Point, story: readonly Step[], line: Line, classes: readonly FounderClass[]): Point {
  return story.reduce((so, step) => told(so, step, line, classes), point);
}

const lnWeightOf = ({lnPrior, lnChance}: Point): number => lnPrior + lnChance;

function bestOf(lines: readonly Line[]): number {
  let best = Number.NEGATIVE_INFINITY;
  for (const {points} of lines) for (const point of points) best = Math.max(best, lnWeightOf(point));
  return best;
}

function withoutHopeless(lines: readonly Line[]): Line[] {
  const least = bestOf(lines) - HOPELESS;
  return lines.map(line => ({
    ...line,
    points: line.points.map(point =>
      lnWeightOf(point) < least ? {...point, lnChance: Number.NEGATIVE_INFINITY, standings: []} : point,
    ),
  }));
}

/** A worthless count is any of the ways to divide n animals among S stages: ln 1/C(n + S − 1, S − 1). */
function lnIfWorthless(branches: Extract<Step, {kind: 'counted'}>['branches'], stages: number): number {
  const n = branches.reduce((sum, {count, label}) => sum + (label === undefined ? 0 : count), 0);
  return lnGamma(n + 1) + lnGamma(stages) - lnGamma(n + stages);
}

/** Is this count more likely worthless than not, over all that is still thought possible? */
function isWorthless(
  lines: readonly Line[],
  step: Extract<Step, {kind: 'counted'}>,
  classes: readonly FounderClass[],
): boolean {
  const best = bestOf(lines);
  let worthless = 0;
  let either = 0;
  for (const line of lines)
    for (const point of line.points) {
      const before = Math.exp(lnWeightOf(point) - best);
      if (before === 0) continue;
      worthless += before * WORTHLESS * Math.exp(step.lnIfWorthless);
      either += before * Math.exp(told(point, step, line, classes).lnChance - point.lnChance);
    }
  return worthless > either / 2;
}

/** Points are laid anew around what was found likely until so few of them no longer hold it all. */
const REFINEMENTS = 4;
/** Lines this much less likely than the best (in ln) may stay coarse. */
const UNIMPORTANT = 8;

/** A line with its points where the likely paces are. */
function refined(line: Line, best: number, tellAll: (points: readonly Point[]) => Point[]): Line {
  let fine = line;
  for (let round = 0; round < REFINEMENTS && line.member.lnSpeedSd > 0; round++) {
    const {points} = fine;
    const weights = points.map(point => Math.exp(lnWeightOf(point) - best));
    const whole = weights.reduce((sum, weight) => sum + weight, 0);
    if (whole < Math.exp(-UNIMPORTANT)) return fine;
    const mean = points.reduce((sum, {z}, i) => sum + z * weights[i]!, 0) / whole;
    const variance = points.reduce((sum, {z}, i) => sum + (z - mean) ** 2 * weights[i]!, 0) / whole;
    const apart = points[1]!.z - points[0]!.z;
    const sd = Math.max(Math.sqrt(variance), 0.35 * apart);
    if (sd > WIDE_ENOUGH * apart) return fine;
    fine = {...fine, points: tellAll(pointsAround(fine, mean, sd))};
  }
  return fine;
}

/** A likely range of a standard deviation holds at least about as much as the distance of two points. */
const WIDE_ENOUGH = 1.1;

function pointsAround(line: Line, mean: number, sd: number): Point[] {
  const step = 0.75 * sd;
  return Array.from({length: 13}, (_, i) => {
    const z = mean + (i - 6) * step;
    return pointOf(line, z, Math.log(normalDensity(z) * step));
  });
}

function pathOf({stage, atDays, count}: FounderClass): Path {
  return {label: stage, sinceDays: atDays, count, notOutDays: atDays};
}

function without(paths: readonly Path[], branches: readonly {from: number; count: number}[]): Path[] {
  const left = paths.map(({count}) => count);
  for (const {from, count} of branches) left[from] = left[from]! - count;
  return paths.map((path, i) => ({...path, count: left[i]!}));
}

/** A path after a count: judged in a new stage it begins there. */
function branched(
  path: Path,
  {label, count}: {label: string | undefined; count: number},
  atDays: number,
): Path {
  if (label === undefined) return {...path, count};
  return {label, count, sinceDays: label === path.label ? path.sinceDays : atDays, notOutDays: atDays};
}

/** What is expected from here on; animals that joined after the last look are as they were found. */
function asPaceLine(
  line: Line,
  paths: readonly Path[],
  waiting: readonly number[],
  classes: readonly FounderClass[],
  alive: number | null,
  best: number,
): PaceLine {
  const numbers = [...paths.map(({count}) => count), ...waiting.map(place => classes[place]!.count)];
  const counts = alive === null ? numbers : portions(numbers, alive);
  const points = line.points.map(point => {
    const weight = Math.exp(lnWeightOf(point) - best);
    if (weight === 0) return {z: point.z, weight, tempo: point.tempo, classes: []};
    const late = waiting.map(place => standingOf(point.tempo, classes[place]!, line.broods[place]));
    const standings = [...point.standings, ...late];
    return {
      z: point.z,
      weight,
      tempo: point.tempo,
      classes: standings.map((standing, i) => ({
        count: counts[i]!,
        atDays: standing.atDays,
        passages: passagesFrom(point.tempo, standing),
      })),
    };
  });
  return {member: line.member, broods: line.broods, points};
}
