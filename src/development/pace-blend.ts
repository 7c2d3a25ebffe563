// The pace is continuous: what lies between two of its points is laid between what is known at them.
import {LEVELS} from './levels.ts';
import type {PaceLine} from './scenario.ts';
import type {Part, Statistic} from './statistics.ts';

/** Lays a mass evenly between two doses. */
export type Lay = (statistic: Statistic, from: number, to: number, mass: number) => void;

/** So many pieces are set in between two points. */
const BETWEEN = 3;

/**
 * Lay the parts of a line in the dose of the last stage's course. Between two points each level of each part moves on
 * a straight line on the dose axis of its pace, and the masses between levels move with it; a mass that is spread by
 * levels and by pace at once is laid as wide as both together.
 * @returns what was laid of each whole statistic: what the points weigh
 */
export function layLine({points, member}: PaceLine, parts: readonly (readonly Part[])[], lay: Lay): number {
  const {required} = member.chain.stages.at(-1)!;
  const scales = points.map(({tempo}) => required / tempo.pace);
  const whole = points.reduce((sum, {weight}) => sum + weight, 0);
  const pieces = piecesBetween(points);
  const inPieces = pieces.reduce((sum, {weight}) => sum + weight, 0);
  if (inPieces === 0) {
    points.forEach(({weight}, i) => {
      const scale = scales[i]!;
      for (const part of parts[i]!) layPart(part, part, [scale, scale], 0, scale, weight, lay);
    });
    return whole;
  }
  for (const {after, along, weight} of pieces) {
    const [here, next] = [scales[after]!, scales[after + 1]!];
    const scale = here ** (1 - along) * next ** along;
    for (const [part, other] of pairsOf(parts[after]!, parts[after + 1]!))
      layPart(part, other, [here, next], along, scale, (weight * whole) / inPieces, lay);
  }
  return whole;
}

interface Piece {
  /** The point it comes after, by its place. */
  readonly after: number;
  /** How far it is from there to the next, from 0 to 1. */
  readonly along: number;
  readonly weight: number;
}

/**
 * What lies between neighbours. ln weight runs between them as a parabola that bends as it does at their places. What
 * the pieces of a line weigh is near to what its points do, not the same.
 */
function piecesBetween(points: PaceLine['points']): Piece[] {
  const ln = points.map(({weight}) => Math.log(weight));
  const pieces: Piece[] = [];
  for (let after = 0; after + 1 < points.length; after++) {
    const [here, next] = [ln[after]!, ln[after + 1]!];
    if (here === Number.NEGATIVE_INFINITY || next === Number.NEGATIVE_INFINITY) continue;
    const bend = bendAround(ln, after);
    for (let piece = 0; piece < BETWEEN; piece++) {
      const along = (piece + 0.5) / BETWEEN;
      const lnWeight = here + along * (next - here) + (along * (1 - along) * bend) / 2;
      pieces.push({after, along, weight: Math.exp(lnWeight) / BETWEEN});
    }
  }
  return pieces;
}

/** By how much ln weight falls off a straight line over the gap after a point; 0 for one without likely neighbours. */
function bendAround(ln: readonly number[], after: number): number {
  const bendAt = (i: number) => 2 * ln[i]! - (ln[i - 1] ?? Number.NaN) - (ln[i + 1] ?? Number.NaN);
  const bends = [bendAt(after), bendAt(after + 1)].filter(Number.isFinite);
  return bends.length === 0 ? 0 : Math.max(0, bends.reduce((sum, bend) => sum + bend, 0) / bends.length);
}

/** The same part at two points; where one of them has none, the other's with no share in it. */
function pairsOf(here: readonly Part[], next: readonly Part[]): (readonly [Part, Part])[] {
  const same = (parts: readonly Part[], {statistic, of}: Part) =>
    parts.find(part => part.statistic === statistic && part.of === of);
  return [
    ...here.map(part => [part, same(next, part) ?? {...part, share: 0}] as const),
    ...next.filter(part => !same(here, part)).map(part => [{...part, share: 0}, part] as const),
  ];
}

function layPart(
  {statistic, share: shareHere, levels: here}: Part,
  {share: shareNext, levels: next}: Part,
  [scaleHere, scaleNext]: readonly [number, number],
  along: number,
  scale: number,
  weight: number,
  lay: Lay,
) {
  const mass = weight * (shareHere + along * (shareNext - shareHere));
  let before = (here[0]! + along * (next[0]! - here[0]!)) * scale;
  for (let level = 1; level < LEVELS.length; level++) {
    const after = (here[level]! + along * (next[level]! - here[level]!)) * scale;
    if (!Number.isFinite(after)) return;
    const middle = (before + after) / 2;
    const byPace = (next[level]! * scaleNext - here[level]! * scaleHere) / BETWEEN;
    const reach = Math.sqrt((after - before) ** 2 + byPace ** 2) / 2;
    lay(statistic, middle - reach, middle + reach, mass * MASSES[level]!);
    before = after;
  }
}

/** The probability between each level and the one before; what lies outside the levels goes to the outermost. */
const MASSES = LEVELS.map((level, i) => {
  if (i === 0) return 0;
  const from = i === 1 ? 0 : LEVELS[i - 1]!;
  return (i === LEVELS.length - 1 ? 1 : level) - from;
});
