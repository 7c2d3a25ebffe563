// The forecast against the model played out animal by animal.
import {expect, test} from 'vitest';
import {forecastLot} from '../../src/development/forecast.ts';
import {profileOf, requestOf, START, wave} from './lots.ts';
import {quantile, type SimulatedStage, simulateLots} from './simulated.ts';

const stage = (name: string, lower: number, degreeDays: number, cv: number): SimulatedStage => ({
  name,
  lower,
  degreeDays,
  cv,
});
/** One threshold, as a species measured in one study. */
const alike = [stage('larva-4', 7, 60, 0.1), stage('larva-5', 7, 80, 0.1), stage('pupa', 7, 120, 0.06)];
/** A threshold for every stage. */
const unlike = [stage('larva-4', 5, 80, 0.15), stage('larva-5', 8, 100, 0.12), stage('pupa', 11, 110, 0.08)];

const varying = (stages: readonly SimulatedStage[], change: Partial<SimulatedStage>) =>
  stages.map(known => ({...known, ...change}));

interface Shape {
  readonly title: string;
  readonly stages: Readonly<Record<string, number>>;
  readonly kind: readonly SimulatedStage[];
  readonly paceSd?: number;
  readonly progress?: readonly [number, number];
  readonly ages?: 'mixed' | 'one-brood';
  readonly meanC?: number;
}

const shapes: readonly Shape[] = [
  {title: 'twelve larvae of two instars', stages: {'larva-4': 8, 'larva-5': 4}, kind: alike},
  {title: 'unlike thresholds, three stages', stages: {'larva-4': 8, 'larva-5': 4, pupa: 3}, kind: unlike},
  {title: 'one animal', stages: {'larva-5': 1}, kind: alike},
  {title: 'two hundred animals', stages: {'larva-4': 120, 'larva-5': 80}, kind: alike},
  {
    title: 'two hundred animals of known pace',
    stages: {'larva-4': 120, 'larva-5': 80},
    kind: unlike,
    paceSd: 0,
  },
  {title: 'pupae only', stages: {pupa: 11}, kind: unlike},
  {title: 'pupae about to emerge', stages: {pupa: 11}, kind: unlike, progress: [0.9, 0.95]},
  {title: 'freshly moulted larvae', stages: {'larva-4': 11}, kind: unlike, progress: [0, 0.2]},
  {title: 'little spread', stages: {'larva-4': 20}, kind: varying(alike, {cv: 0.02}), progress: [0, 0]},
  {title: 'much spread', stages: {'larva-4': 20, pupa: 5}, kind: varying(unlike, {cv: 0.3})},
  {title: 'no spread at all', stages: {'larva-4': 20}, kind: varying(alike, {cv: 0}), progress: [0, 0]},
  {title: 'no spread, unlike thresholds', stages: {'larva-4': 20}, kind: varying(unlike, {cv: 0})},
  {title: 'gamma doses', stages: {'larva-4': 9}, kind: varying(unlike, {cv: 0.2, family: 'gamma'})},
  {title: 'Weibull doses', stages: {'larva-4': 9}, kind: varying(unlike, {cv: 0.2, family: 'weibull'})},
  {title: 'normal doses', stages: {'larva-4': 9}, kind: varying(unlike, {cv: 0.2, family: 'normal'})},
  {title: 'one brood', stages: {'larva-4': 20}, kind: unlike, ages: 'one-brood'},
  {title: 'two broods', stages: {'larva-4': 20, 'larva-5': 5}, kind: alike, ages: 'one-brood'},
  {title: 'one brood of known pace', stages: {'larva-4': 20}, kind: alike, ages: 'one-brood', paceSd: 0},
  {title: 'cold nights without development', stages: {'larva-5': 6}, kind: unlike, meanC: 12},
];

/** Lots so many that their own chance stays well below what is asked; TORTURE=1 plays as many as acceptance does. */
const ANIMALS = process.env.TORTURE ? 8_000_000 : 120_000;
const CLOSE_DAYS = process.env.TORTURE ? 0.06 : 0.15;
/** A simulated quantile is itself only known to so many standard errors of its chance. */
const ERRORS = 3.5;
/** In a night without development an instant says little: there the chance must agree as near. */
const CLOSE_CHANCE = 0.002;

test.each(shapes)('forecastLot agrees with played-out lots: $title', shape => {
  const {stages, kind, paceSd = 0.1, progress = [0, 1], ages = 'mixed', meanC = 20} = shape;
  const course = wave(meanC, 4, {days: 200});
  const cohort = {atDays: START + 0.3, stages, progress, ages};
  const forecast = forecastLot(requestOf([cohort], course, profileOf(kind, {paceSd})));
  const animals = Object.values(stages).reduce((sum, n) => sum + n, 0);
  const lots = Math.min(400_000, Math.max(4000, Math.round(ANIMALS / animals)));
  const played = simulateLots(lots, 7, course, [cohort], () => ({stages: kind, paceSd}));

  for (const name of ['animal', 'first', 'half', 'last'] as const)
    for (const [point, instant] of Object.entries(forecast[name]!)) {
      const chance = Number(point.slice(1)) / 100;
      const error = CLOSE_CHANCE + ERRORS * Math.sqrt((chance * (1 - chance)) / lots);
      const earliest = quantile(played[name], chance - error) - CLOSE_DAYS;
      const latest = quantile(played[name], chance + error) + CLOSE_DAYS;
      expect(instant, `${name}.${point} against ${earliest} to ${latest}`).toBeGreaterThan(earliest);
      expect(instant, `${name}.${point} against ${earliest} to ${latest}`).toBeLessThan(latest);
    }
});
