// The ages that broods share: one more unknown of the lot.
import type {FounderClass} from './founders.ts';
import type {Member} from './group-members.ts';
import {placesOf} from './places.ts';

/** One way the broods may be: the progress of each class that shares one; undefined for classes of mixed ages. */
export type BroodAges = readonly (number | undefined)[];

const FEWEST = 8;
const MOST = 24;
const MOST_AT_ONE_PACE = 240;

/**
 * Ages of the broods, each as likely: the same even steps through the progress of every class that shares one, taken
 * in another order by each further class, so that no two run together. A single animal needs none.
 */
export function broodAgesOf(member: Member, classes: readonly FounderClass[]): readonly BroodAges[] {
  const shares = classes.map(({oneBrood, count, progress: [from, to]}) => oneBrood && count > 1 && from < to);
  const broods = shares.filter(Boolean).length;
  if (broods === 0) return [classes.map(() => undefined)];
  const needed = Math.max(...classes.map((founders, c) => (shares[c] ? agesFor(member, founders) : 0)));
  const ages = needed * Math.min(broods, 3);
  const strides = stridesThrough(ages, broods);
  return Array.from({length: ages}, (_, age) => {
    let brood = 0;
    return classes.map(({progress: [from, to]}, c) =>
      shares[c] ? from + ((to - from) * (((age * strides[brood++]!) % ages) + 0.5)) / ages : undefined,
    );
  });
}

/**
 * How many ages blur into one: two of them lie less apart than half the spread that an unknown pace gives to what the
 * brood still has to go, at least a quarter of its stage.
 */
function agesFor({chain, lnSpeedSd}: Member, {stage, progress}: FounderClass): number {
  if (lnSpeedSd === 0) return MOST_AT_ONE_PACE;
  const places = placesOf(chain, stage, progress);
  const daysIn = (index: number) => chain.stages[index]!.daysAt20;
  const own = places.reduce((sum, {index, progress: [from, to]}) => sum + daysIn(index) * (to - from), 0);
  const last = places.at(-1)!.index;
  const after = chain.stages.slice(last + 1).reduce((sum, {daysAt20}) => sum + daysAt20, 0);
  const needed = Math.ceil((2 * own) / (lnSpeedSd * (after + own / 4)));
  return Math.min(MOST, Math.max(FEWEST, Number.isFinite(needed) ? needed : MOST));
}

/**
 * Strides that visit every one of n places, one for each dimension: whole numbers without a factor in common with n,
 * nearest to n over the powers of g, the root of g^d = g + 1 (the golden ratio for two dimensions).
 */
function stridesThrough(n: number, dimensions: number): readonly number[] {
  let root = 1.5;
  for (let i = 0; i < 60; i++) root = (1 + root) ** (1 / dimensions);
  return Array.from({length: dimensions}, (_, d) => {
    let stride = d === 0 ? 1 : Math.max(1, Math.round(n / root ** d));
    while (commonFactor(stride, n) !== 1) stride++;
    return stride;
  });
}

function commonFactor(a: number, b: number): number {
  return b === 0 ? a : commonFactor(b, a % b);
}
