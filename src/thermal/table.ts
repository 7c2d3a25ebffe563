// The rate read off a published table: mean days at constant temperatures.
import {type Cubic, monotoneCubic} from './monotone-cubic.ts';
import type {Fault, Landmarks, RateModel} from './rate.ts';

/** Published mean days at constant temperatures; the rate is 0 at the limits and beyond. */
export interface TableSpec {
  readonly kind: 'table';
  readonly points: readonly {readonly temperature: number; readonly days: number}[];
  readonly lower: number;
  readonly upper: number;
}

/**
 * The model of a table: the rates 1/days and the zeros at the limits, joined by a shape-preserving cubic.
 * @throws RangeError where a point is missing, days are not above 0, or lower < temperatures < upper do not rise
 */
export function table(spec: TableSpec): RateModel {
  const fault = tableFault(spec);
  if (fault !== undefined) throw new RangeError(`table: ${fault.field} ${fault.what}`);
  const {points, lower, upper} = spec;
  const at = [lower, ...points.map(point => point.temperature), upper];
  const rates = [0, ...points.map(({days}) => 1 / days), 0];

  const cubics = monotoneCubic(at, rates);
  const areas = [0];
  cubics.forEach((cubic, i) => {
    areas.push(areas[i]! + areaUnder(cubic, at[i + 1]! - at[i]!));
  });
  const whole = areas.at(-1)!;

  return {
    ratePerDay: temperature => {
      if (!(temperature > lower && temperature < upper)) return 0;
      const i = intervalOf(at, temperature);
      return Math.max(0, heightOf(cubics[i]!, temperature - at[i]!));
    },
    antiderivative: temperature => {
      if (!(temperature > lower)) return 0;
      if (temperature >= upper) return whole;
      const i = intervalOf(at, temperature);
      return areas[i]! + areaUnder(cubics[i]!, temperature - at[i]!);
    },
  };
}

/** Between its points the curve never swings beyond them: the optimum is one of them. */
export function tableLandmarks({points, lower, upper}: TableSpec): Landmarks {
  const fastest = points.reduce((best, point) => (point.days < best.days ? point : best));
  return {lowerC: lower, optimumC: fastest.temperature, upperC: upper};
}

export function tableFault({points, lower, upper}: TableSpec): Fault | undefined {
  if (points.length === 0) return {field: 'points', what: 'must hold at least one point'};
  for (const [i, {temperature, days}] of points.entries()) {
    if (!(days > 0 && Number.isFinite(days))) return {field: `points.${i}.days`, what: 'must be above 0'};
    if (i > 0 && !(temperature > points[i - 1]!.temperature))
      return {field: `points.${i}.temperature`, what: 'must be above the temperature before it'};
  }
  if (!(lower < points[0]!.temperature))
    return {field: 'lower', what: `must be below the coldest point (${points[0]!.temperature} °C)`};
  if (!(upper > points.at(-1)!.temperature))
    return {field: 'upper', what: `must be above the warmest point (${points.at(-1)!.temperature} °C)`};
  return undefined;
}

/** The last interval that begins at or below the temperature; tables are short. */
function intervalOf(at: readonly number[], temperature: number): number {
  let i = at.length - 2;
  while (at[i]! > temperature) i--;
  return i;
}

function heightOf([c0, c1, c2, c3]: Cubic, s: number): number {
  return c0 + s * (c1 + s * (c2 + s * c3));
}

/** The quartic that begins at 0 and has the cubic as its slope. */
function areaUnder([c0, c1, c2, c3]: Cubic, s: number): number {
  return s * (c0 + s * (c1 / 2 + s * (c2 / 3 + s * (c3 / 4))));
}
