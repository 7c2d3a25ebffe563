// How each nonlinear rate model is sought: its shape by free numbers, its height solved for, and where to begin.
import {growth} from '../exponential-fall.ts';
import {faultOf, type RateModelSpec, rateModel} from '../rate-model.ts';
import {type Observed, type Weights, weightedMean} from './observed.ts';

/** The models that are fitted by least squares. */
export type CurveKind = Exclude<RateModelSpec['kind'], 'degree-day' | 'table'>;

export interface Curve {
  /** How many numbers the rows must fix. */
  readonly parameters: number;
  /** Values to begin with, for each free number. */
  readonly starts: readonly (readonly number[])[];
  /** The model at these numbers, as high as fits the rows best; undefined where there is none. */
  spec(free: readonly number[]): RateModelSpec | undefined;
}

/** Degrees by which a limit may lie beyond the rows; further, they say nothing of it. */
const FURTHEST_C = 60;
const NEAREST_C = 1e-4;
const BEYOND_C = [0.7, 2.5, 7, 18] as const;

/** @param rows in any order; at each of them development was seen */
export function curveOf(kind: CurveKind, rows: readonly Observed[], weights: Weights): Curve {
  const coldest = Math.min(...rows.map(({temperature}) => temperature));
  const warmest = Math.max(...rows.map(({temperature}) => temperature));
  const below = (free: number) => coldest - beyond(free);
  const above = (free: number) => warmest + beyond(free);
  const distances = BEYOND_C.map(Math.log);
  const scaled = (unit: RateModelSpec) => heightOf(unit, rows, weights);

  switch (kind) {
    case 'briere-1':
      return {
        parameters: 3,
        starts: [distances, distances],
        spec: ([l = 0, u = 0]) => {
          const shape = {kind, lower: below(l), upper: above(u)} as const;
          return whole(scaled({...shape, a: 1}), a => ({...shape, a}));
        },
      };
    case 'briere-2':
      return {
        parameters: 4,
        starts: [distances, distances, [0, 0.7, 1.6]],
        spec: ([l = 0, u = 0, m = 0]) => {
          const shape = {kind, lower: below(l), upper: above(u), m: within(Math.exp(m), 0.05, 1e4)} as const;
          return whole(scaled({...shape, a: 1}), a => ({...shape, a}));
        },
      };
    case 'lactin-1':
      return {
        parameters: 3,
        starts: exponentialStarts(distances),
        spec: free => sound({kind, ...exponentials(free, above)}),
      };
    case 'lactin-2':
      return {
        parameters: 4,
        starts: exponentialStarts(distances),
        spec: free => {
          const shape = {kind, ...exponentials(free, above)} as const;
          const g = growth(shape);
          const left = rows.map(({temperature, days}) => 1 / days - g(temperature));
          return sound({...shape, lambda: weightedMean(left, weights)});
        },
      };
    case 'logan-6':
      return {
        parameters: 4,
        starts: exponentialStarts(distances),
        spec: free => {
          const shape = {kind, ...exponentials(free, above)} as const;
          return whole(scaled({...shape, psi: 1}), psi => ({...shape, psi}));
        },
      };
    case 'schoolfield':
      return schoolfieldCurve(rows, scaled, coldest, warmest);
  }
}

/** Six numbers want seven rows; with fewer, the slowing by cold is left out. */
export const SCHOOLFIELD_ROWS = 7;

function schoolfieldCurve(
  rows: readonly Observed[],
  scaled: (unit: RateModelSpec) => number,
  coldest: number,
  warmest: number,
): Curve {
  const kelvin = (celsius: number) => celsius + 273.15;
  const enthalpy = (free: number) => 1000 * within(Math.exp(free), 1, 2000);
  const heat = (free: readonly number[]) => ({
    ha: enthalpy(free[0]!),
    th: kelvin(warmest + within(free[1]!, -15, 30)),
    hh: enthalpy(free[2]!),
  });
  const activation = [10, 17, 25].map(Math.log);
  const inactivation = [50, 90, 160].map(Math.log);
  const half = [-4, -1, 2];
  const made = (shape: Omit<Extract<RateModelSpec, {kind: 'schoolfield'}>, 'kind' | 'rho25'>) => {
    const unit = {kind: 'schoolfield', rho25: 1, ...shape} as const;
    return faultOf(unit) === undefined ? whole(scaled(unit), rho25 => ({...unit, rho25})) : undefined;
  };
  if (new Set(rows.map(({temperature}) => temperature)).size < SCHOOLFIELD_ROWS)
    return {parameters: 4, starts: [activation, half, inactivation], spec: free => made(heat(free))};
  return {
    parameters: 6,
    starts: [activation, half, inactivation, [-4, 0, 4], [50, 110].map(Math.log)],
    spec: free =>
      made({
        ...heat(free),
        tl: kelvin(coldest + within(free[3]!, -30, 15)),
        hl: -enthalpy(free[4]!),
      }),
  };
}

/** ρ, Tm, and δ as a share of 1/ρ, which it stays below. */
function exponentials(free: readonly number[], above: (free: number) => number) {
  const rho = within(Math.exp(free[0]!), 1e-5, 1);
  const share = 1 / (1 + Math.exp(-free[2]!));
  return {rho, upper: above(free[1]!), delta: within(share, 1e-6, 1 - 1e-9) / rho};
}

function exponentialStarts(distances: readonly number[]): number[][] {
  return [[0.005, 0.05, 0.11, 0.16].map(Math.log), [...distances], [-4.5, -3, 0, 2, 4.5]];
}

function beyond(free: number): number {
  return within(Math.exp(free), NEAREST_C, FURTHEST_C);
}

function within(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

/** The factor that brings a curve of unit height nearest to the rows: Σ w·u·r / Σ w·u². */
function heightOf(unit: RateModelSpec, rows: readonly Observed[], weights: Weights): number {
  const {ratePerDay} = rateModel(unit);
  let [product, square] = [0, 0];
  rows.forEach(({temperature, days}, i) => {
    const value = ratePerDay(temperature);
    product += (weights[i]! * value) / days;
    square += weights[i]! * value * value;
  });
  return product / square;
}

function whole(height: number, spec: (height: number) => RateModelSpec): RateModelSpec | undefined {
  return height > 0 && Number.isFinite(height) ? sound(spec(height)) : undefined;
}

function sound(spec: RateModelSpec): RateModelSpec | undefined {
  return faultOf(spec) === undefined ? spec : undefined;
}
