// Thresholds, constants and curves from days at constant temperatures.
import {Refusal} from '../records/refusal.ts';
import {aicc, fitCurve, rssOf} from '../thermal/fit/curve-fit.ts';
import type {CurveKind} from '../thermal/fit/curves.ts';
import {type LineFit, majorAxis, rateLine} from '../thermal/fit/line.ts';
import {outsideLinearRange} from '../thermal/fit/linear-range.ts';
import {type Observed, productWeights, rateWeights, unweighted} from '../thermal/fit/observed.ts';
import {landmarksOf, type RateModelSpec, rateModel} from '../thermal/rate-model.ts';
import {curveWarnings, lineWarnings} from './fit-warnings.ts';

export const curveKinds = [
  'briere-1',
  'briere-2',
  'lactin-1',
  'lactin-2',
  'logan-6',
  'schoolfield',
] as const satisfies readonly CurveKind[];

export interface FitWishes {
  /** The line of the rates, or the reduced major axis of D·T on D. */
  readonly method: 'linear' | 'rma';
  /** By sd and n of the rows. */
  readonly weighted: boolean;
  readonly fromC?: number | undefined;
  readonly toC?: number | undefined;
}

export interface Predicted {
  readonly temperature: number;
  /** Null where the fit says that nothing develops. */
  readonly days: number | null;
}

/** As `teneral fit` answers for a line. */
export interface LineAnswer {
  readonly method: 'linear' | 'rma';
  readonly n: number;
  readonly lower: number;
  readonly lowerSe: number | null;
  readonly degreeDays: number;
  readonly degreeDaysSe: number | null;
  readonly r2: number;
  readonly predicted: readonly Predicted[];
  readonly warnings: readonly string[];
}

/** As `teneral fit --model` answers. */
export interface CurveAnswer {
  readonly model: RateModelSpec;
  readonly n: number;
  readonly rss: number;
  readonly aicc: number | null;
  readonly lower: number | null;
  readonly optimum: number | null;
  readonly upper: number | null;
  readonly predicted: readonly Predicted[];
  readonly warnings: readonly string[];
}

/** @throws Refusal where the rows fix no line */
export function lineFit(all: readonly Observed[], wishes: FitWishes, where: string): LineAnswer {
  const rows = rowsWithin(all, wishes, where);
  if (new Set(rows.map(({temperature}) => temperature)).size < 2)
    throw new Refusal(
      'one temperature fixes no line',
      where,
      'Give days at two temperatures at least; five or more tell something.',
    );
  const {lowerC, degreeDays, lowerSe, degreeDaysSe, r2} = lineOf(rows, wishes);
  if (!(degreeDays > 0 && Number.isFinite(degreeDays)))
    throw new Refusal(
      'the days do not fall as it gets warmer, so there is no threshold',
      where,
      'Leave out temperatures above the optimum with --to-c, or look whether the columns are swapped.',
    );
  const model: RateModelSpec = {kind: 'degree-day', lower: lowerC, degreeDays};
  return {
    method: wishes.method,
    n: rows.length,
    lower: lowerC,
    lowerSe,
    degreeDays,
    degreeDaysSe,
    r2,
    predicted: predictedBy(model, rows),
    warnings: lineWarnings(rows, {lowerC, degreeDays, lowerSe, degreeDaysSe, r2}, wishes.weighted),
  };
}

/** @throws Refusal where the rows are fewer than the curve's parameters, or none comes near them */
export function curveFit(
  kind: CurveKind,
  all: readonly Observed[],
  wishes: FitWishes,
  where: string,
): CurveAnswer {
  const rows = rowsWithin(all, wishes, where);
  const fit = fitCurve(kind, rows, wishes.weighted ? rateWeights(rows) : unweighted(rows));
  if (fit === undefined)
    throw new Refusal(
      `${rows.length} ${rows.length === 1 ? 'row fixes' : 'rows fix'} no ${kind} curve`,
      where,
      'Give more temperatures, some of them above the optimum, or fit a line.',
    );
  const {model, rss, parameters} = fit;
  const {lowerC, optimumC, upperC} = landmarksOf(model);
  return {
    model,
    n: rows.length,
    rss,
    aicc: fit.aicc,
    lower: lowerC,
    optimum: optimumC,
    upper: upperC,
    predicted: predictedBy(model, rows),
    warnings: curveWarnings(rows, model, parameters, wishes.weighted),
  };
}

/** One model of several for the same rows; what none could be made of is left out. */
export interface Compared {
  readonly model: RateModelSpec;
  readonly rss: number;
  readonly aicc: number | null;
  readonly lower: number | null;
  readonly optimum: number | null;
  readonly upper: number | null;
  readonly warnings: readonly string[];
}

/** Every model through the same rows, the best supported first; those too rich for the rows come last. */
export function compared(all: readonly Observed[], wishes: FitWishes, where: string): Compared[] {
  const rows = rowsWithin(all, wishes, where);
  const weights = wishes.weighted ? rateWeights(rows) : unweighted(rows);
  const tried = <Answer>(made: () => Answer): Answer[] => {
    try {
      return [made()];
    } catch (error) {
      if (error instanceof Refusal) return [];
      throw error;
    }
  };
  const lines = tried(() => lineFit(rows, wishes, where)).map(({lower, degreeDays, warnings}): Compared => {
    const model: RateModelSpec = {kind: 'degree-day', lower, degreeDays};
    const rss = rssOf(model, rows, weights);
    return {model, rss, aicc: aicc(rss, rows.length, 2), lower, optimum: null, upper: null, warnings};
  });
  const curves = curveKinds.flatMap(kind => tried((): Compared => curveFit(kind, rows, wishes, where)));
  const rank = ({aicc}: Compared) => aicc ?? Number.POSITIVE_INFINITY;
  return [...lines, ...curves].sort((a, b) => rank(a) - rank(b) || a.rss - b.rss);
}

/** An optimum so far above the warmest row was not seen. */
const SEEN_C = 5;

/** The model to keep, and what is not sure about it. */
export interface BestModel {
  readonly model: RateModelSpec;
  readonly warnings: readonly string[];
}

/** A held line is fixed by its threshold, its constant and where it is held. */
const HELD_PARAMETERS = 3;

/**
 * A line through the straight part, unless a curve whose optimum was seen is better supported by all the rows.
 * @throws Refusal where the rows fix neither
 */
export function bestModel(all: readonly Observed[], wishes: FitWishes, where: string): BestModel {
  const rows = rowsWithin(all, wishes, where);
  const weights = wishes.weighted ? rateWeights(rows) : unweighted(rows);
  const warmest = rows.at(-1)!.temperature;
  const curve = compared(rows, wishes, where).find(
    ({model, aicc, optimum}) =>
      model.kind !== 'degree-day' && aicc !== null && optimum !== null && optimum <= warmest + SEEN_C,
  );
  const held = heldLine(rows, wishes, where);
  const support = aicc(rssOf(held.model, rows, weights), rows.length, HELD_PARAMETERS);
  return support !== null && curve !== undefined && (curve.aicc ?? support) < support ? curve : held;
}

/** The line through the straight part. Beyond it nobody saw it go on, so it is held there. */
export function heldLine(all: readonly Observed[], wishes: FitWishes, where: string): BestModel {
  const rows = rowsWithin(all, wishes, where);
  const outside = outsideLinearRange(rows);
  const inside = rows.filter(row => !outside.includes(row));
  const {lower, degreeDays, warnings} = lineFit(inside, wishes, where);
  const left = outside.map(({temperature}) => `${temperature} °C`).join(', ');
  return {
    model: {kind: 'degree-day', lower, upper: inside.at(-1)!.temperature, cutoff: 'horizontal', degreeDays},
    warnings: [
      ...(left === '' ? [] : [`${left}: outside the linear range, and left out of the line`]),
      ...warnings,
    ],
  };
}

/** @throws Refusal where no row lies within */
export function rowsWithin(
  rows: readonly Observed[],
  {fromC = Number.NEGATIVE_INFINITY, toC = Number.POSITIVE_INFINITY}: FitWishes,
  where: string,
): Observed[] {
  const within = rows.filter(({temperature}) => temperature >= fromC && temperature <= toC);
  if (within.length === 0)
    throw new Refusal(
      'no row lies within the temperatures asked for',
      where,
      `The rows are at ${rows.map(({temperature}) => temperature).join(', ')} °C.`,
    );
  return within.sort((a, b) => a.temperature - b.temperature);
}

function lineOf(rows: readonly Observed[], {method, weighted}: FitWishes): LineFit {
  if (method === 'rma') return majorAxis(rows, weighted ? productWeights(rows) : unweighted(rows));
  return rateLine(rows, weighted ? rateWeights(rows) : unweighted(rows));
}

function predictedBy(model: RateModelSpec, rows: readonly Observed[]): Predicted[] {
  const {ratePerDay} = rateModel(model);
  return rows.map(({temperature}) => {
    const rate = ratePerDay(temperature);
    return {temperature, days: rate > 0 ? 1 / rate : null};
  });
}
