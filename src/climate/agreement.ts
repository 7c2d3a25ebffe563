// Two loggers in one place: how far apart they read, whether that grows, and how well they follow one another.
import type {TemperatureTrace} from '../thermal/trace.ts';
import {differencesFrom, learnedOffset} from './learned-offset.ts';

export interface Agreement {
  /** Days in which both read. */
  readonly overlapDays: number;
  /** Mean of one less the other, over time. */
  readonly offset: number;
  /** How fast that changes, per 30 days, with its standard error from daily means; null below three days. */
  readonly drift: number | null;
  readonly driftSe: number | null;
  /** Nineteen of twenty differences lie between these: Bland and Altman 1986, Lancet 327, 307–310. */
  readonly limits: readonly [number, number];
  /** Standard deviation of the differences about their line: what no correction takes away. */
  readonly scatter: number;
  /** Readings compared. */
  readonly n: number;
}

const FEWEST = 3;
const DRIFT_DAYS = 30;

/** @returns undefined where they never read together */
export function agreementOf(one: TemperatureTrace, other: TemperatureTrace): Agreement | undefined {
  const differences = differencesFrom(one, other);
  const rows = Array.from(one.atDays.keys()).filter(row => !Number.isNaN(differences[row]!));
  if (rows.length < FEWEST) return undefined;
  const {offsetC, overlapDays} = learnedOffset(one, other);
  const y = rows.map(row => differences[row]!);
  const n = rows.length;
  const mean = meanOf(y);
  const spread = Math.sqrt(y.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1));
  const line = lineThrough(daily(rows, one.atDays, differences));
  const scatter = Math.sqrt(
    rows.reduce((sum, row) => sum + (differences[row]! - line.at(one.atDays[row]!)) ** 2, 0) /
      Math.max(1, n - 2),
  );
  return {
    overlapDays,
    offset: Number.isNaN(offsetC) ? mean : offsetC,
    drift: line.slopeSe === undefined ? null : line.slope * DRIFT_DAYS,
    driftSe: line.slopeSe === undefined ? null : line.slopeSe * DRIFT_DAYS,
    limits: [mean - 1.96 * spread, mean + 1.96 * spread],
    scatter,
    n,
  };
}

interface Point {
  readonly x: number;
  readonly y: number;
}

/** A mean a day: readings of one hour are no two findings. */
function daily(rows: readonly number[], atDays: Float64Array, values: Float64Array): Point[] {
  const days = new Map<number, Point[]>();
  for (const row of rows) {
    const day = Math.floor(atDays[row]!);
    const points = days.get(day) ?? [];
    points.push({x: atDays[row]!, y: values[row]!});
    days.set(day, points);
  }
  return [...days.values()].map(points => ({
    x: meanOf(points.map(({x}) => x)),
    y: meanOf(points.map(({y}) => y)),
  }));
}

/** Least squares; the error of the slope needs three points. */
function lineThrough(points: readonly Point[]) {
  const [x, y] = [meanOf(points.map(point => point.x)), meanOf(points.map(point => point.y))];
  const sxx = points.reduce((sum, point) => sum + (point.x - x) ** 2, 0);
  const sxy = points.reduce((sum, point) => sum + (point.x - x) * (point.y - y), 0);
  const slope = sxx > 0 ? sxy / sxx : 0;
  const at = (instant: number) => y + slope * (instant - x);
  const rest = points.reduce((sum, point) => sum + (point.y - at(point.x)) ** 2, 0);
  const slopeSe = points.length < 3 ? undefined : Math.sqrt(rest / (points.length - 2) / sxx);
  return {slope, at, slopeSe};
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
