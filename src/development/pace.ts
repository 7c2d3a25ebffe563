// How fast the lot is against its profile, with what was learned.
import type {LotForecast} from './answer.ts';
import {normalShare} from './normal.ts';
import type {PaceLine} from './scenario.ts';

/** A part of the distribution of ln pace, normal. */
export interface PacePiece {
  readonly weight: number;
  readonly mean: number;
  readonly sd: number;
}

/** Next to nothing of a piece lies beyond so many of its standard deviations. */
const FAR = 6;
const CLOSE = 1e-10;

/** The pace's distribution. Of a group's speed only a part is pace: the rest is which member it is. */
export function paceOf(lines: readonly PaceLine[]): LotForecast['pace'] {
  const pieces = alikeTogether(lines.flatMap(pacePieces));
  const whole = pieces.reduce((sum, {weight}) => sum + weight, 0);
  if (!(whole > 0)) return null;
  const share = (lnPace: number) =>
    pieces.reduce((sum, {weight, mean, sd}) => sum + weight * below(lnPace, mean, sd), 0) / whole;
  const at = (chance: number) => {
    let low = Math.min(...pieces.map(({mean, sd}) => mean - FAR * sd));
    let high = Math.max(...pieces.map(({mean, sd}) => mean + FAR * sd));
    while (high - low > CLOSE) {
      const middle = (low + high) / 2;
      if (share(middle) < chance) low = middle;
      else high = middle;
    }
    return Math.exp((low + high) / 2);
  };
  return {p10: at(0.1), p50: at(0.5), p90: at(0.9)};
}

/**
 * Each point of a line as a normal piece. Where ln speed v = pace + member, both normal, ln pace given v is normal
 * with mean v · r and variance paceSd² · (1 − r), r = paceSd² / lnSpeedSd². Added is what lies between two points.
 */
export function pacePieces({member: {lnSpeedMean, lnSpeedSd, paceSd}, points}: PaceLine): PacePiece[] {
  const part = lnSpeedSd === 0 ? 0 : (paceSd / lnSpeedSd) ** 2;
  const gap = points.length > 1 ? points[1]!.z - points[0]!.z : 0;
  const between = (part * lnSpeedSd * gap) ** 2 / 12;
  const sd = Math.sqrt(paceSd ** 2 * (1 - part) + between);
  return points.map(({z, weight}) => ({weight, mean: lnSpeedMean + part * lnSpeedSd * z, sd}));
}

/** Members of a group share their paces. */
function alikeTogether(pieces: readonly PacePiece[]): readonly PacePiece[] {
  const merged = new Map<string, PacePiece>();
  for (const {weight, mean, sd} of pieces) {
    const name = `${mean} ${sd}`;
    merged.set(name, {mean, sd, weight: weight + (merged.get(name)?.weight ?? 0)});
  }
  return [...merged.values()];
}

function below(value: number, mean: number, sd: number): number {
  if (sd === 0) return value < mean ? 0 : 1;
  return normalShare((value - mean) / sd);
}
