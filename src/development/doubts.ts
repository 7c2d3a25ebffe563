// What the width of a window is made of: who they are, which kind of a group, how fast, how unlike, how warm.
import {type DoseCourse, reachedAt} from './dose-course.ts';
import {massUpTo} from './measure.ts';
import type {PaceLine, PacePoint} from './scenario.ts';
import {emergenceOf} from './standing.ts';

/** Parts of the variance of the emergence of one animal, in days squared. They add up to about the whole. */
export interface Doubts {
  /** Which candidate they are. */
  readonly candidate: number;
  /** Which member of its group. */
  readonly kind: number;
  /** How fast this lot goes. */
  readonly pace: number;
  /** How old each animal is, and how unlike they are. */
  readonly animals: number;
  /** How warm it will be. */
  readonly temperature: number;
}

interface Mean {
  readonly weight: number;
  readonly mean: number;
}

/** @param mediansDays when half of the animals are out in each of the futures; none where only one course is known */
export function doubtsOf(lines: readonly PaceLine[], mediansDays: readonly number[]): Doubts {
  const byCandidate = new Map<number, {kinds: Mean[]; pace: number; animals: number}>();
  for (const line of lines) {
    const {course} = line.member.chain.stages.at(-1)!;
    const points = line.points.flatMap(point => (point.weight > 0 ? (momentsOf(point, course) ?? []) : []));
    if (points.length === 0) continue;
    const own = meanOf(points);
    const so = byCandidate.get(line.member.candidate) ?? {kinds: [], pace: 0, animals: 0};
    so.kinds.push(own);
    so.pace += own.weight * spreadOf(points);
    so.animals += points.reduce((sum, {weight, variance}) => sum + weight * variance, 0);
    byCandidate.set(line.member.candidate, so);
  }
  const candidates = [...byCandidate.values()].map(({kinds}) => ({
    ...meanOf(kinds),
    spread: spreadOf(kinds),
  }));
  const whole = candidates.reduce((sum, {weight}) => sum + weight, 0);
  const all = [...byCandidate.values()];
  const share = (of: (one: (typeof all)[number]) => number) =>
    whole === 0 ? 0 : all.reduce((sum, one) => sum + of(one), 0) / whole;
  return {
    candidate: spreadOf(candidates),
    kind: whole === 0 ? 0 : candidates.reduce((sum, {weight, spread}) => sum + weight * spread, 0) / whole,
    pace: share(({pace}) => pace),
    animals: share(({animals}) => animals),
    temperature: spreadOf(mediansDays.map(mean => ({weight: 1, mean}))),
  };
}

/** Mean and variance of the instant at which the animals of one point emerge; undefined where none does. */
function momentsOf(
  {tempo, weight, classes}: PacePoint,
  course: DoseCourse,
): (Mean & {readonly variance: number}) | undefined {
  const last = tempo.chain.stages.length - 1;
  const {required} = tempo.chain.stages[last]!;
  let mass = 0;
  let sum = 0;
  let squares = 0;
  for (const {count, standing} of classes) {
    const leaving = emergenceOf(tempo, standing);
    if (leaving === null) continue;
    const {step, first, length} = leaving;
    let below = 0;
    for (let i = 0; i < length; i++) {
      const upTo = massUpTo(leaving, (first + i + 0.5) * step);
      const at = reachedAt(course, tempo.origins[last]! + ((first + i) * step * required) / tempo.pace);
      if (at === Number.POSITIVE_INFINITY) break;
      const own = count * (upTo - below);
      below = upTo;
      mass += own;
      sum += own * at;
      squares += own * (at - course.fromDays) ** 2;
    }
  }
  if (!(mass > 0)) return undefined;
  const mean = sum / mass;
  return {weight, mean, variance: Math.max(0, squares / mass - (mean - course.fromDays) ** 2)};
}

function meanOf(parts: readonly Mean[]): Mean {
  const weight = parts.reduce((sum, part) => sum + part.weight, 0);
  return {weight, mean: parts.reduce((sum, part) => sum + part.weight * part.mean, 0) / weight};
}

/** The variance between the means. */
function spreadOf(parts: readonly Mean[]): number {
  if (parts.length === 0) return 0;
  const {weight, mean} = meanOf(parts);
  return parts.reduce((sum, part) => sum + part.weight * (part.mean - mean) ** 2, 0) / weight;
}
