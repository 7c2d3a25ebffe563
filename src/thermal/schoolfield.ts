// The enzyme curve: an Arrhenius rise, slowed by inactivation in the cold and in the heat.
import type {Fault, Landmarks, RateModel} from './rate.ts';
import {tabulated} from './tabulated.ts';

/** Temperatures in K, enthalpies in cal/mol. Each inactivation has both its parameters or neither. */
export interface SchoolfieldSpec {
  readonly kind: 'schoolfield';
  /** Rate per day at the reference temperature, were there no inactivation. */
  readonly rho25: number;
  /** Enthalpy of activation. */
  readonly ha: number;
  /** Where half is inactivated by cold, and its enthalpy, below 0. */
  readonly tl?: number | undefined;
  readonly hl?: number | undefined;
  /** Where half is inactivated by heat, and its enthalpy. */
  readonly th?: number | undefined;
  readonly hh?: number | undefined;
  /** Reference temperature; default 298.15 K. */
  readonly refK?: number | undefined;
}

/** Gas constant, cal/(mol·K). */
const GAS = 1.987;
const KELVIN = 273.15;
/** Beyond these temperatures the rate stays as there: no animal lives. */
const COLDEST_C = -100;
const HOTTEST_C = 120;
/** Between these, an inactivation of the wrong sign would matter. */
const LIVING_K = [220, 380] as const;

/**
 * With K = T + 273.15:
 * r = ρ·(K/ref)·exp[HA/R·(1/ref − 1/K)] / (1 + exp[HL/R·(1/TL − 1/K)] + exp[HH/R·(1/TH − 1/K)]).
 * Schoolfield, Sharpe & Magnuson 1981, Journal of Theoretical Biology 88:719–731, equation 4 (from memory). It has no
 * antiderivative in closed form; a table of it is made.
 * @throws RangeError where the parameters lie outside the domain
 */
export function schoolfield(spec: SchoolfieldSpec): RateModel {
  const fault = schoolfieldFault(spec);
  if (fault !== undefined) throw new RangeError(`schoolfield: ${fault.field} ${fault.what}`);
  const {rho25, ha, tl, hl, th, hh, refK = 298.15} = spec;
  const inactivated = (kelvin: number, halfK: number | undefined, enthalpy: number | undefined) =>
    halfK === undefined || enthalpy === undefined ? 0 : Math.exp((enthalpy / GAS) * (1 / halfK - 1 / kelvin));
  const rate = (temperature: number) => {
    const kelvin = temperature + KELVIN;
    const active = rho25 * (kelvin / refK) * Math.exp((ha / GAS) * (1 / refK - 1 / kelvin));
    return active / (1 + inactivated(kelvin, tl, hl) + inactivated(kelvin, th, hh));
  };
  const area = tabulated(rate, COLDEST_C, HOTTEST_C);
  const within = (temperature: number) => Math.min(HOTTEST_C, Math.max(COLDEST_C, temperature));
  return {
    ratePerDay: temperature => rate(within(temperature)),
    antiderivative: temperature => {
      const inside = within(temperature);
      return area(inside) + (temperature - inside) * rate(inside);
    },
  };
}

/** The rate never is 0. Its optimum is sought where animals live. */
export function schoolfieldLandmarks(spec: SchoolfieldSpec): Landmarks {
  return {lowerC: null, optimumC: spec.th === undefined ? null : optimumOf(schoolfield(spec)), upperC: null};
}

export function schoolfieldFault(spec: SchoolfieldSpec): Fault | undefined {
  const {rho25, ha, tl, hl, th, hh, refK} = spec;
  if (!(rho25 > 0)) return {field: 'rho25', what: 'must be above 0'};
  if (!(ha > 0)) return {field: 'ha', what: 'must be above 0'};
  if (refK !== undefined && !(refK > 0)) return {field: 'refK', what: 'must be above 0 K'};
  if ((tl === undefined) !== (hl === undefined))
    return {field: tl === undefined ? 'tl' : 'hl', what: 'is missing: tl and hl are given together'};
  if ((th === undefined) !== (hh === undefined))
    return {field: th === undefined ? 'th' : 'hh', what: 'is missing: th and hh are given together'};
  if (tl !== undefined && !(tl > 0)) return {field: 'tl', what: 'must be above 0 K'};
  if (th !== undefined && !(th > 0)) return {field: 'th', what: 'must be above 0 K'};
  const living = (kelvin: number) => kelvin > LIVING_K[0] && kelvin < LIVING_K[1];
  if (tl !== undefined && hl !== undefined && living(tl) && !(hl < 0))
    return {field: 'hl', what: 'must be below 0, else cold would not slow development'};
  if (th !== undefined && hh !== undefined && living(th) && !(hh > 0))
    return {field: 'hh', what: 'must be above 0, else heat would not slow development'};
  if (tl !== undefined && th !== undefined && living(th) && !(th > tl))
    return {field: 'th', what: `must be above tl (${tl} K)`};
  return undefined;
}

/** Temperatures between which an optimum is sought, °C, and how finely. */
const SOUGHT_C = [-10, 60] as const;
const STEPS = 280;

/** The fastest temperature by narrowing in thirds; null where the rate rises to the end. */
function optimumOf({ratePerDay}: RateModel): number | null {
  const step = (SOUGHT_C[1] - SOUGHT_C[0]) / STEPS;
  let best = 0;
  for (let i = 1; i <= STEPS; i++)
    if (ratePerDay(SOUGHT_C[0] + i * step) > ratePerDay(SOUGHT_C[0] + best * step)) best = i;
  if (best === 0 || best === STEPS) return null;
  let [low, high] = [SOUGHT_C[0] + (best - 1) * step, SOUGHT_C[0] + (best + 1) * step];
  while (high - low > 1e-7) {
    const third = (high - low) / 3;
    if (ratePerDay(low + third) < ratePerDay(high - third)) low += third;
    else high -= third;
  }
  return (low + high) / 2;
}
