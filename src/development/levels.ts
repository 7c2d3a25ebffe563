// A distribution as the doses at fixed levels of probability: the form in which neighbours are averaged.
import type {Measure} from './measure.ts';

const CELLS = 24;
/** What lies beyond the outermost levels. */
const OUTSIDE = 2e-4;

/** Levels of probability, closer together towards both ends. */
export const LEVELS = Float64Array.from(
  {length: CELLS + 1},
  (_, i) => OUTSIDE + (1 - 2 * OUTSIDE) * ((1 - Math.cos((Math.PI * i) / CELLS)) / 2),
);

/** How far apart in probability two points may be for a straight line between them: less towards the ends. */
const straight = (share: number) => 0.02 + 0.4 * share * (1 - share);

const HALVINGS = 16;

/**
 * The doses at which a distribution function reaches each level; Infinity where it never does.
 * @param nodes rising doses from where it is 0, at which it is asked; between two it is asked again where it rises steeply
 */
export function levelsOf(share: (dose: number) => number, nodes: ArrayLike<number>): Float64Array {
  const doses = new Float64Array(LEVELS.length).fill(Number.POSITIVE_INFINITY);
  let next = 0;

  const follow = (a: number, shareA: number, b: number, shareB: number, halvings: number) => {
    if (next === LEVELS.length || shareB < LEVELS[next]!) return;
    if (halvings > 0 && shareB - shareA > straight((shareA + shareB) / 2)) {
      const middle = (a + b) / 2;
      const shareMiddle = share(middle);
      follow(a, shareA, middle, shareMiddle, halvings - 1);
      follow(middle, shareMiddle, b, shareB, halvings - 1);
      return;
    }
    for (; next < LEVELS.length && LEVELS[next]! <= shareB; next++) {
      const along = shareB > shareA ? (LEVELS[next]! - shareA) / (shareB - shareA) : 1;
      doses[next] = a + Math.max(0, along) * (b - a);
    }
  };

  let dose = nodes[0]!;
  let before = share(dose);
  for (let i = 1; i < nodes.length && next < LEVELS.length; i++) {
    const after = share(nodes[i]!);
    follow(dose, before, nodes[i]!, after, HALVINGS);
    dose = nodes[i]!;
    before = after;
  }
  return doses;
}

/** The doses up to which a measure holds rising shares; Infinity where it never does. */
export function dosesAt(
  {step, first, length, scale, cells, mass, sums}: Measure,
  shares: Float64Array,
): Float64Array {
  const doses = new Float64Array(shares.length).fill(Number.POSITIVE_INFINITY);
  const base = cells[sums]!;
  let cell = 0;
  for (let i = 0; i < shares.length; i++) {
    const wanted = shares[i]! / scale + base;
    while (cell < length && cells[sums + cell + 1]! < wanted) cell++;
    if (cell === length) break;
    doses[i] = (first - 0.5 + cell + (wanted - cells[sums + cell]!) / cells[mass + cell]!) * step;
  }
  return doses;
}
