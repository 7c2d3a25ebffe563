// A lot played out animal by animal, as the model says it: a check on the forecast that shares nothing with it.

export interface PlayedStage {
  readonly stage: string;
  readonly lower: number;
  /** Above it the rate stays what it is there. */
  readonly upper?: number;
  readonly degreeDays: number;
  readonly cv: number;
}

/** One thing that the animals may be. */
export interface PlayedKind {
  readonly weight: number;
  readonly paceSd: number;
  readonly stages: readonly PlayedStage[];
}

export interface PlayedLot {
  readonly atDays: number;
  readonly founders: Readonly<Record<string, number>>;
  readonly progress: readonly [number, number];
  readonly ages: 'mixed' | 'one-brood';
  readonly kinds: readonly PlayedKind[];
  /** °C at an instant, in days since 1970. */
  readonly temperatureAt: (days: number) => number;
}

/** Of many such lots, in order of time: when an animal taken at random, the first, half and 95 per cent were out. */
export interface PlayedOut {
  readonly animal: Float64Array;
  readonly first: Float64Array;
  readonly half: Float64Array;
  readonly last: Float64Array;
  /** Shares of the animals by the stage they are in at the instant asked for. */
  readonly stagesThen: Readonly<Record<string, number>>;
}

/** A stage's progress is reckoned in steps of ten minutes, by the temperature in the middle of each. */
const STEPS_A_DAY = 144;
const HORIZON_DAYS = 300;

/** @param thenDays the instant at which the stages are wanted */
export function playOut(lot: PlayedLot, lots: number, seed: number, thenDays: number): PlayedOut {
  const {atDays, founders, progress, ages, kinds} = lot;
  const chance = new Chance(seed);
  const warmth = kinds.map(({stages}) => stages.map(stage => degreeDaysBy(stage, lot)));
  const columns = () => new Float64Array(lots);
  const out = {animal: columns(), first: columns(), half: columns(), last: columns()};
  const there: Record<string, number> = {};
  let animals = 0;

  for (let i = 0; i < lots; i++) {
    const which = kindAt(kinds, (i + 0.5) / lots);
    const {stages, paceSd} = kinds[which]!;
    const pace = Math.exp(paceSd * chance.normal());
    const instants: number[] = [];
    for (const [name, count] of Object.entries(founders)) {
      const founding = stages.findIndex(({stage}) => stage === name);
      const broodAge = chance.uniform();
      for (let n = 0; n < count; n++) {
        const age = ages === 'one-brood' ? broodAge : chance.uniform();
        let share = 1 - (progress[0] + age * (progress[1] - progress[0]));
        let at = 0;
        let stageThen = 'adult';
        for (let s = founding; s < stages.length; s++) {
          const {stage, degreeDays, cv} = stages[s]!;
          at = reach(warmth[which]![s]!, at, (degreeDays * share * chance.lognormal(cv)) / pace);
          if (stageThen === 'adult' && atDays + at > thenDays) stageThen = stage;
          share = 1;
        }
        there[stageThen] = (there[stageThen] ?? 0) + 1;
        animals++;
        instants.push(atDays + at);
      }
    }
    out.animal[i] = instants[Math.floor(chance.uniform() * instants.length)]!;
    instants.sort((a, b) => a - b);
    out.first[i] = instants[0]!;
    out.half[i] = instants[Math.ceil(instants.length / 2) - 1]!;
    out.last[i] = instants[Math.ceil((instants.length * 95) / 100) - 1]!;
  }
  for (const column of Object.values(out)) column.sort();
  const stagesThen = Object.fromEntries(Object.entries(there).map(([stage, n]) => [stage, n / animals]));
  return {...out, stagesThen};
}

/** Degree-days since the lot began, by step. */
function degreeDaysBy(
  {lower, upper = Number.POSITIVE_INFINITY}: PlayedStage,
  {temperatureAt, atDays}: PlayedLot,
) {
  const sums = new Float64Array(HORIZON_DAYS * STEPS_A_DAY + 1);
  for (let i = 1; i < sums.length; i++) {
    const temperature = Math.min(temperatureAt(atDays + (i - 0.5) / STEPS_A_DAY), upper);
    sums[i] = sums[i - 1]! + Math.max(0, temperature - lower) / STEPS_A_DAY;
  }
  return sums;
}

/** When so many degree-days more than at `from` are gathered; days since the lot began. */
function reach(sums: Float64Array, from: number, degreeDays: number): number {
  let low = Math.floor(from * STEPS_A_DAY);
  const wanted = sums[low]! + (from * STEPS_A_DAY - low) * (sums[low + 1]! - sums[low]!) + degreeDays;
  let high = sums.length - 1;
  if (!(sums[high]! > wanted)) throw new RangeError('the horizon is too near for these animals');
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (sums[middle]! > wanted) high = middle;
    else low = middle;
  }
  return (low + (wanted - sums[low]!) / (sums[high]! - sums[low]!)) / STEPS_A_DAY;
}

/** Numbers that are the same for the same seed. */
class Chance {
  #state: number;
  #spare: number | undefined;

  constructor(seed: number) {
    this.#state = seed | 1;
  }

  /** In (0, 1): a Weyl sequence scrambled by multiplying and shifting (splitmix32, from memory). */
  uniform(): number {
    this.#state = (this.#state + 0x9e3779b9) | 0;
    let z = this.#state;
    z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return ((z ^ (z >>> 15)) >>> 0) / 2 ** 32 + 2 ** -33;
  }

  /** Box and Muller's pair, the second kept for the next time. */
  normal(): number {
    const spare = this.#spare;
    this.#spare = undefined;
    if (spare !== undefined) return spare;
    const radius = Math.sqrt(-2 * Math.log(this.uniform()));
    const angle = 2 * Math.PI * this.uniform();
    this.#spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  }

  /** Mean 1, coefficient of variation `cv`. */
  lognormal(cv: number): number {
    if (cv === 0) return 1;
    const variance = Math.log(1 + cv * cv);
    return Math.exp(Math.sqrt(variance) * this.normal() - variance / 2);
  }
}

/** The kind of the lot played at this point, from 0 to 1, of all: each as often as it weighs. */
function kindAt(kinds: readonly PlayedKind[], point: number): number {
  let rest = point * kinds.reduce((sum, {weight}) => sum + weight, 0);
  for (const [i, {weight}] of kinds.entries()) {
    if (rest < weight) return i;
    rest -= weight;
  }
  return kinds.length - 1;
}

/** The value below which this share of a column lies. */
export function quantileOf(column: Float64Array, share: number): number {
  const place = share * (column.length - 1);
  const below = column[Math.floor(place)]!;
  return below + (place - Math.floor(place)) * (column[Math.ceil(place)]! - below);
}

/** The share of a column that lies before an instant. */
export function shareBefore(column: Float64Array, days: number): number {
  return column.filter(at => at < days).length / column.length;
}
