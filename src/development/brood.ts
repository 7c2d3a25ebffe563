// The ages that broods share: one more unknown of the lot.
import type {FounderClass} from './founders.ts';

/** One way the broods may be: the progress of each class that shares one; undefined for classes of mixed ages. */
export type BroodAges = readonly (number | undefined)[];

/** Along with a pace that is unknown, so few ages blur into one; without one they must be close themselves. */
const AGES = 24;
const AGES_AT_ONE_PACE = 240;

/**
 * Ages of the broods, each as likely: an even lattice over the progress of every class that shares one (each further
 * class turned by another irrational, so that no two run together). A single animal needs none.
 */
export function broodAgesOf(classes: readonly FounderClass[], paceIsKnown: boolean): readonly BroodAges[] {
  const shares = classes.map(({oneBrood, count, progress: [from, to]}) => oneBrood && count > 1 && from < to);
  const broods = shares.filter(Boolean).length;
  if (broods === 0) return [classes.map(() => undefined)];
  const ages = (paceIsKnown ? AGES_AT_ONE_PACE : AGES) * (broods > 1 ? 3 : 1);
  return Array.from({length: ages}, (_, age) => {
    let dimension = 0;
    return classes.map(({progress: [from, to]}, c) => {
      if (!shares[c]) return undefined;
      const turn = dimension === 0 ? 1 / ages : latticeTurn(dimension, broods - 1);
      dimension++;
      return from + (to - from) * (((age + 0.5) * turn) % 1);
    });
  });
}

/** Powers of 1/g with g the root of g^(d+1) = g + 1: the plastic-number lattice of any dimension. */
function latticeTurn(dimension: number, dimensions: number): number {
  let root = 1.5;
  for (let i = 0; i < 40; i++) root = (1 + root) ** (1 / (dimensions + 1));
  return root ** -dimension;
}
