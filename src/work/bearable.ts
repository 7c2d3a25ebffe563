// The temperatures that animals bear, as the profiles of what they may be have it.
import type {Profile} from '../records/schema/index.ts';
import type {Lot} from '../records/state.ts';

export interface Limits {
  readonly low: number;
  readonly high: number;
  /** The profiles that say so. */
  readonly from: string;
}

/** "11 to 27 °C, of pieris-rapae" */
export function limitsWords({low, high, from}: Limits): string {
  return `${low} to ${high} °C, ${from.startsWith('as ') ? '' : 'of '}${from}`;
}

/** Where no profile names limits. Common practice, no source. */
const USUAL_LIMITS = {low: 10, high: 30};

/** What every one of them bears; where they have nothing in common, what the first bears; within what is kept with the lot. °C */
export function limitsOf(profiles: readonly Profile[], kept?: Lot['needs']): Limits {
  const borne = borneBy(profiles);
  if (kept?.coolestC === undefined && kept?.warmestC === undefined) return borne;
  const {coolestC = Math.min(borne.low, kept.warmestC ?? borne.low)} = kept;
  const {warmestC = Math.max(borne.high, coolestC)} = kept;
  return {low: coolestC, high: warmestC, from: 'as kept with the lot'};
}

function borneBy(profiles: readonly Profile[]): Limits {
  const named = profiles.flatMap(({profile, limits: {temperature}}) =>
    temperature?.low === undefined || temperature.high === undefined
      ? []
      : [{profile, low: temperature.low, high: temperature.high}],
  );
  const [first] = named;
  if (first === undefined) return {...USUAL_LIMITS, from: 'common practice, no source'};
  const low = Math.max(...named.map(each => each.low));
  const high = Math.min(...named.map(each => each.high));
  if (low >= high) return {low: first.low, high: first.high, from: first.profile};
  return {low, high, from: named.map(({profile}) => profile).join(', ')};
}
