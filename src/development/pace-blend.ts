// The pace is continuous: what lies between two of its points is laid between what is known at them.
import {LEVELS} from './levels.ts';
import type {PaceLine} from './scenario.ts';
import type {Part, Statistic} from './statistics.ts';

/** Lays a mass evenly between two doses. */
export type Lay = (statistic: Statistic, from: number, to: number, mass: number) => void;

/** So many pieces are set in between two points. */
const BETWEEN = 4;

/**
 * Lay the parts of a line in the dose of the last stage's course. Between two points each level of each part moves on
 * a straight line on the dose axis of its pace, and the masses between levels move with it; a mass that is spread by
 * levels and by pace at once is laid as wide as both together.
 * @returns what was laid of each whole statistic
 */
export function layLine({points, member}: PaceLine, parts: readonly (readonly Part[])[], lay: Lay): number {
  const {required} = member.chain.stages.at(-1)!;
  const scales = points.map(({tempo}) => required / tempo.pace);
  if (points.length === 1) {
    const {weight} = points[0]!;
    for (const part of parts[0]!) layPart(part, part, [scales[0]!, scales[0]!], 0, scales[0]!, weight, lay);
    return weight;
  }
  let laid = 0;
  for (let i = 0; i + 1 < points.length; i++) {
    const here = points[i]!;
    const next = points[i + 1]!;
    if (here.weight === 0 || next.weight === 0) continue;
    for (let piece = 0; piece < BETWEEN; piece++) {
      const along = (piece + 0.5) / BETWEEN;
      // Weights and paces run along their logarithms, as a normal curve does.
      const weight = (here.weight ** (1 - along) * next.weight ** along) / BETWEEN;
      const scale = scales[i]! ** (1 - along) * scales[i + 1]! ** along;
      parts[i]!.forEach((part, p) => {
        layPart(part, parts[i + 1]![p]!, [scales[i]!, scales[i + 1]!], along, scale, weight, lay);
      });
      laid += weight;
    }
  }
  return laid;
}

function layPart(
  {statistic, share, levels: here}: Part,
  {levels: next}: Part,
  [scaleHere, scaleNext]: readonly [number, number],
  along: number,
  scale: number,
  weight: number,
  lay: Lay,
) {
  const mass = weight * share;
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
