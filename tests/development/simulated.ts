// The model of emergence played out animal by animal: slow, independent of what it checks, seeded.

export interface SimulatedStage {
  readonly name: string;
  readonly lower: number;
  readonly degreeDays: number;
  readonly cv: number;
  readonly family?: 'lognormal' | 'gamma' | 'weibull' | 'normal';
}

/** One kind of animal, drawn anew for every lot. */
export interface SimulatedKind {
  readonly stages: readonly SimulatedStage[];
  readonly paceSd: number;
}

export interface SimulatedCohort {
  readonly atDays: number;
  readonly stages: Readonly<Record<string, number>>;
  readonly progress: readonly [number, number];
  readonly ages: 'mixed' | 'one-brood';
}

export type Draw = () => number;

/** Uniform on [0, 1), the same for the same seed (mulberry32). */
export function drawFrom(seed: number): Draw {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

export function normal(draw: Draw): number {
  return Math.sqrt(-2 * Math.log(1 - draw())) * Math.cos(2 * Math.PI * draw());
}

/** Gamma of scale 1 by squeezing a cubed normal (Marsaglia & Tsang 2000, from memory). */
function gamma(draw: Draw, shape: number): number {
  if (shape < 1) return gamma(draw, shape + 1) * draw() ** (1 / shape);
  const d = shape - 1 / 3;
  for (;;) {
    const x = normal(draw);
    const v = (1 + x / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(1 - draw()) < x * x * 0.5 + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** One dose W: mean 1, coefficient of variation `cv`. */
export function dose(draw: Draw, {cv, family = 'lognormal'}: Pick<SimulatedStage, 'cv' | 'family'>): number {
  if (cv === 0) return 1;
  switch (family) {
    case 'lognormal': {
      const sd = Math.sqrt(Math.log(1 + cv * cv));
      return Math.exp(sd * normal(draw) - (sd * sd) / 2);
    }
    case 'gamma':
      return gamma(draw, 1 / cv ** 2) * cv ** 2;
    case 'weibull': {
      // Shapes k with Γ(1+2/k)/Γ(1+1/k)² − 1 = cv², and Γ(1+1/k); computed once with another program (SciPy).
      const [shape, mean] = WEIBULL[cv] ?? [Number.NaN, Number.NaN];
      return (-Math.log(1 - draw())) ** (1 / shape) / mean;
    }
    case 'normal':
      for (;;) {
        const w = 1 + cv * normal(draw);
        if (w > 0) return w;
      }
  }
}

const WEIBULL: Readonly<Record<number, readonly [shape: number, mean: number]>> = {
  0.05: [24.94977517665563, 0.9783977681643458],
  0.1: [12.153434194956391, 0.958738134198109],
  0.2: [5.797400065742826, 0.9259470928922112],
  0.3: [3.713772366429594, 0.9026379769693939],
};

/** Temperatures at instants, joined by straight lines. */
export interface SimulatedCourse {
  readonly atDays: Float64Array;
  readonly temperatureC: Float64Array;
}

const NODES_PER_DAY = 48;

/** Degree-days above a threshold at every half hour, by the trapezoid rule over minutes-fine steps. */
function degreeDayTable({atDays, temperatureC}: SimulatedCourse, lower: number): Float64Array {
  const FINE = 4;
  const nodes = Math.floor((atDays.at(-1)! - atDays[0]!) * NODES_PER_DAY) + 1;
  const table = new Float64Array(nodes);
  let piece = 0;
  const rateAt = (day: number) => {
    while (piece < atDays.length - 2 && atDays[piece + 1]! < day) piece++;
    const width = atDays[piece + 1]! - atDays[piece]!;
    const along = width === 0 ? 0 : (day - atDays[piece]!) / width;
    return Math.max(
      0,
      temperatureC[piece]! + along * (temperatureC[piece + 1]! - temperatureC[piece]!) - lower,
    );
  };
  const step = 1 / NODES_PER_DAY / FINE;
  let before = rateAt(atDays[0]!);
  for (let i = 1; i < nodes; i++) {
    let sum = 0;
    for (let k = 1; k <= FINE; k++) {
      const after = rateAt(atDays[0]! + (i - 1) / NODES_PER_DAY + k * step);
      sum += ((before + after) / 2) * step;
      before = after;
    }
    table[i] = table[i - 1]! + sum;
  }
  return table;
}

export class Simulation {
  readonly #course: SimulatedCourse;
  readonly #tables = new Map<number, Float64Array>();

  constructor(course: SimulatedCourse) {
    this.#course = course;
  }

  /** When an animal that is in a stage at an instant, with so much of it to go, leaves each stage from there on. */
  leaves(
    kind: SimulatedKind,
    pace: number,
    stage: number,
    atDays: number,
    toGo: number,
    draw: Draw,
  ): number[] {
    const instants: number[] = [];
    let at = atDays;
    for (let s = stage; s < kind.stages.length; s++) {
      const {lower, degreeDays} = kind.stages[s]!;
      const need = (s === stage ? toGo : dose(draw, kind.stages[s]!)) * (degreeDays / pace);
      at = this.#reach(lower, at, need);
      instants.push(at);
    }
    return instants;
  }

  #reach(lower: number, fromDays: number, need: number): number {
    if (!Number.isFinite(fromDays)) return fromDays;
    let table = this.#tables.get(lower);
    if (table === undefined) {
      table = degreeDayTable(this.#course, lower);
      this.#tables.set(lower, table);
    }
    const origin = this.#course.atDays[0]!;
    const position = (fromDays - origin) * NODES_PER_DAY;
    const node = Math.floor(position);
    const start = table[node]! + (position - node) * ((table[node + 1] ?? table[node]!) - table[node]!);
    const target = start + need;
    let low = node;
    let high = table.length - 1;
    if (table[high]! < target) return Number.POSITIVE_INFINITY;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (table[middle]! >= target) high = middle;
      else low = middle;
    }
    return origin + (low + (target - table[low]!) / (table[high]! - table[low]!)) / NODES_PER_DAY;
  }
}

export interface Simulated {
  readonly animal: number[];
  readonly first: number[];
  readonly half: number[];
  readonly last: number[];
}

/** Lots played out: a random animal's, the first's, half's and 95 per cent's emergence of each, sorted. */
export function simulateLots(
  lots: number,
  seed: number,
  course: SimulatedCourse,
  cohorts: readonly SimulatedCohort[],
  kindOf: (draw: Draw) => SimulatedKind,
): Simulated {
  const draw = drawFrom(seed);
  const simulation = new Simulation(course);
  const sets: Simulated = {animal: [], first: [], half: [], last: []};
  for (let lot = 0; lot < lots; lot++) {
    const kind = kindOf(draw);
    const pace = Math.exp(kind.paceSd * normal(draw));
    const out: number[] = [];
    for (const {atDays, stages, progress, ages} of cohorts)
      for (const [name, count] of Object.entries(stages)) {
        const stage = kind.stages.findIndex(known => known.name === name);
        const brood = draw();
        for (let i = 0; i < count; i++) {
          const share = ages === 'one-brood' ? brood : draw();
          const u = progress[0] + (progress[1] - progress[0]) * share;
          const toGo = dose(draw, kind.stages[stage]!) * (1 - u);
          out.push(simulation.leaves(kind, pace, stage, atDays, toGo, draw).at(-1)!);
        }
      }
    sets.animal.push(out[Math.floor(draw() * out.length)]!);
    out.sort((a, b) => a - b);
    sets.first.push(out[0]!);
    sets.half.push(out[Math.ceil(out.length / 2) - 1]!);
    sets.last.push(out[Math.ceil(0.95 * out.length - 1e-9) - 1]!);
  }
  for (const set of Object.values(sets)) set.sort((a: number, b: number) => a - b);
  return sets;
}

export function quantile(sorted: readonly number[], chance: number): number {
  const position = chance * (sorted.length - 1);
  const below = sorted[Math.floor(position)]!;
  const above = sorted[Math.ceil(position)]!;
  return below + (position - Math.floor(position)) * (above - below);
}
