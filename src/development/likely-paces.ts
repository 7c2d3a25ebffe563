// The paces of a line laid where its weight is: evenly, and as close as it asks for.

/** A pace in standard deviations of ln speed, with ln of its weight for each unit of z. */
export interface WeighedPace {
  readonly z: number;
  readonly lnWeight: number;
}

/** Where to begin: paces evenly spaced. */
export interface Lattice {
  readonly centre: number;
  readonly step: number;
  /** So many to either side. */
  readonly reach: number;
}

export interface Search<Point extends WeighedPace> {
  /** Weighs one pace; may give up and say −∞ where it falls below `least`. */
  readonly pointAt: (z: number, least: number) => Point;
  /** What is less likely is not followed; asked anew each time. */
  readonly least: () => number;
  /** Paces are laid at least so close. */
  readonly closest: number;
}

/** Paces in rising order, evenly spaced; those at the ends may be unlikely. */
export interface LaidPaces<Point> {
  readonly points: readonly Point[];
  readonly step: number;
}

/** No pace is looked for beyond. */
const FARTHEST = 5;
/** A likely range is resolved by steps of this many of its standard deviations. */
const RESOLVED = 1.5;
/** Points this much less likely than the top of their line (in ln) do not show the way to it. */
const FAR_BELOW = 12;
/** No way leads up from points this much below what is worth following. */
const TOO_DEEP = 25;
const MOST_TURNS = 40;
/** No closer: where a count is worthless on one side of a pace and not on the other, the weight leaps, and no step resolves a leap. */
const FINEST = 0.01;

/**
 * Climb to the likeliest pace, closer and closer until the weight around it is resolved, and from there to either side
 * as far as it is worth following. Null where nothing likely is found.
 */
export function laidWhereLikely<Point extends WeighedPace>(
  start: Lattice,
  search: Search<Point>,
): LaidPaces<Point> | null {
  const summit = climbed(start, search);
  if (summit === null) return null;
  const {pointAt, least, closest} = search;
  let {points, step} = summit;
  const isLikely = (point: Point) => point.lnWeight > least();
  const onwards = (z: number, by: number): Point[] => {
    const further: Point[] = [];
    for (let next = z + by; Math.abs(next) <= FARTHEST; next += by) {
      const point = pointAt(next, least());
      further.push(point);
      if (!isLikely(point)) break;
    }
    return further;
  };
  if (isLikely(points[0]!)) points = [...onwards(points[0]!.z, -step).reverse(), ...points];
  if (isLikely(points.at(-1)!)) points = [...points, ...onwards(points.at(-1)!.z, step)];
  points = points.slice(Math.max(0, points.findIndex(isLikely) - 1), points.findLastIndex(isLikely) + 2);
  while (step > closest) {
    points = points.flatMap((point, i) =>
      i + 1 < points.length ? [point, pointAt(point.z + step / 2, least())] : [point],
    );
    step /= 2;
  }
  return {points, step};
}

function climbed<Point extends WeighedPace>(
  {centre, step: firstStep, reach}: Lattice,
  {pointAt, least}: Search<Point>,
): LaidPaces<Point> | null {
  let step = firstStep;
  let top = Number.NEGATIVE_INFINITY;
  const ask = (z: number): Point => {
    const point = pointAt(z, Math.max(top - FAR_BELOW, least() - TOO_DEEP));
    top = Math.max(top, point.lnWeight);
    return point;
  };
  let points: Point[] = [];
  for (const i of fromTheMiddle(reach)) points[reach + i] = ask(centre + i * step);
  if (top === Number.NEGATIVE_INFINITY) return null;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const at = points.findIndex(({lnWeight}) => lnWeight === top);
    const {z} = points[at]!;
    if (at === 0 && z - step > -FARTHEST) points = [ask(z - step), ...points];
    else if (at === points.length - 1 && z + step < FARTHEST) points = [...points, ask(z + step)];
    else if (step / 2 < FINEST || dropAround(points, at) <= RESOLVED ** 2 / 2) break;
    else {
      const around = points.slice(Math.max(0, at - 1), at + 2);
      points = around.flatMap((point, i) => (i === 0 ? [point] : [ask(point.z - step / 2), point]));
      step /= 2;
    }
  }
  return top > least() ? {points, step} : null;
}

function fromTheMiddle(reach: number): readonly number[] {
  return [0, ...Array.from({length: reach}, (_, i) => [i + 1, -i - 1]).flat()];
}

/** How much less likely the neighbours are, on average: for a normal weight step² / (2 · variance), wherever its top. */
function dropAround(points: readonly WeighedPace[], at: number): number {
  const beside = [points[at - 1], points[at + 1]].filter(point => point !== undefined);
  const sum = beside.reduce((all, {lnWeight}) => all + points[at]!.lnWeight - lnWeight, 0);
  return sum / beside.length;
}

/** The mean and standard deviation of z; evenly spaced points of a smooth weight give them all but exactly. */
export function spreadOf(points: readonly WeighedPace[]): {readonly mean: number; readonly sd: number} {
  const best = Math.max(...points.map(({lnWeight}) => lnWeight));
  let [whole, sum, squares] = [0, 0, 0];
  for (const {z, lnWeight} of points) {
    const weight = Math.exp(lnWeight - best);
    whole += weight;
    sum += weight * z;
    squares += weight * z * z;
  }
  const mean = sum / whole;
  return {mean, sd: Math.sqrt(Math.max(0, squares / whole - mean * mean))};
}
