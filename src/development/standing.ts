// Where the animals of one kind of past stand at one pace: for every stage, when those now in it will leave it.
import type {FounderClass} from './founders.ts';
import {remainingOf} from './founding.ts';
import {
  emptyMeasure,
  type Measure,
  massBeyond,
  massUpTo,
  shifted,
  summed,
  together,
  wholeOf,
  withoutBelow,
} from './measure.ts';
import {passOn} from './passage.ts';
import {placesOf} from './places.ts';
import {ownDose, type Tempo} from './tempo.ts';

/**
 * Everything that their past says about their future: of those in each stage, the doses at which they leave it. What
 * a measure holds below the dose of now is past. In the last stage it stays as long as nobody looked for adults.
 */
export interface Standing {
  readonly atDays: number;
  /** When they were last known not to be out. */
  readonly notOutDays: number;
  readonly leaving: readonly (Measure | null)[];
  /** By stage, the share that rests in it and leaves none; null where none rests. */
  readonly resting: readonly number[] | null;
}

/** Less than this of one animal is let go. */
const NEGLIGIBLE = 1e-6;

/** As they were found. */
export function standingOf(tempo: Tempo, founders: FounderClass, brood?: number): Standing {
  const {atDays, stage, progress, rests} = founders;
  const within = brood === undefined ? progress : ([brood, brood] as const);
  const leaving: (Measure | null)[] = tempo.chain.stages.map(() => null);
  const resting = rests === 0 ? null : tempo.chain.stages.map(() => 0);
  for (const place of placesOf(tempo.chain, stage, within)) {
    const {spread} = tempo.chain.stages[place.index]!;
    leaving[place.index] = shifted(
      remainingOf({spread, progress: place.progress}),
      ownDose(tempo, place.index, atDays),
      (1 - rests) * place.weight,
    );
    if (resting !== null) resting[place.index] = rests * place.weight;
  }
  return {atDays, notOutDays: atDays, leaving, resting};
}

/** The same animals later, nobody having looked. */
export function later(tempo: Tempo, standing: Standing, atDays: number): Standing {
  const last = standing.leaving.length - 1;
  const leaving: (Measure | null)[] = [];
  let coming: Measure | null = null;
  for (let stage = 0; stage <= last; stage++) {
    const all: Measure | null = both(coming, standing.leaving[stage]!);
    coming = null;
    if (all === null || stage === last) {
      leaving.push(all);
      continue;
    }
    const since = ownDose(tempo, stage, standing.atDays);
    const now = ownDose(tempo, stage, atDays);
    const [before, after] = [massBeyond(all, since), massBeyond(all, now)];
    if (before - after > NEGLIGIBLE) coming = passOn(tempo, stage, all, since, now);
    leaving.push(after > NEGLIGIBLE ? withoutBelow(all, now) : null);
  }
  return {...standing, atDays, leaving};
}

/** For every stage the share of animals now in it; what is missing to one is out. */
export function sharesIn(tempo: Tempo, {leaving, atDays, resting}: Standing): number[] {
  return leaving.map((measure, stage) => {
    const goingOn = measure === null ? 0 : massBeyond(measure, ownDose(tempo, stage, atDays));
    return goingOn + (resting === null ? 0 : resting[stage]!);
  });
}

/** The share of all that rests. */
export function shareResting({resting}: Standing): number {
  return resting === null ? 0 : resting.reduce((sum, share) => sum + share, 0);
}

/** The share that came out between an instant, not before they were last known not to be out, and now. */
export function shareOut(tempo: Tempo, {leaving, atDays, notOutDays}: Standing, sinceDays: number): number {
  const last = leaving.length - 1;
  const measure = leaving[last]!;
  if (measure === null) return 0;
  const from = ownDose(tempo, last, Math.max(sinceDays, notOutDays));
  return massUpTo(measure, ownDose(tempo, last, atDays)) - massUpTo(measure, from);
}

/**
 * Those of whom something was seen that has these chances in each stage, and that are not out.
 * @param shares of the animals now in each stage
 */
export function given(standing: Standing, shares: ArrayLike<number>, chances: ArrayLike<number>): Standing {
  let whole = 0;
  for (let stage = 0; stage < shares.length; stage++) whole += shares[stage]! * chances[stage]!;
  const leaving = standing.leaving.map((measure, stage) => {
    const scale = chances[stage]! / whole;
    return measure === null || shares[stage]! * scale < NEGLIGIBLE ? null : shifted(measure, 0, scale);
  });
  const resting = standing.resting?.map((share, stage) => (share * chances[stage]!) / whole) ?? null;
  return {atDays: standing.atDays, notOutDays: standing.atDays, leaving, resting};
}

/** The same animals where from then on they live through something else. */
export function moved(from: Tempo, to: Tempo, standing: Standing): Standing {
  if (from === to) return standing;
  const {atDays} = standing;
  const leaving = standing.leaving.map((measure, stage) => {
    const by = ownDose(to, stage, atDays) - ownDose(from, stage, atDays);
    return measure === null ? null : shifted(measure, by, 1);
  });
  return {...standing, leaving};
}

/** Animals of several standings at one instant taken as one kind, each with its share. */
export function blended(standings: readonly Standing[], shares: readonly number[]): Standing {
  const [heaviest, ...others] = [...standings.keys()].sort((a, b) => shares[b]! - shares[a]!);
  const {leaving} = standings[heaviest!]!;
  const scaled = (measure: Measure | null, place: number) =>
    measure === null ? null : shifted(measure, 0, shares[place]!);
  return {
    ...standings[heaviest!]!,
    leaving: leaving.map((measure, stage) =>
      others.reduce(
        (so, place) => both(so, scaled(standings[place]!.leaving[stage]!, place)),
        scaled(measure, heaviest!),
      ),
    ),
    resting: standings.every(({resting}) => resting === null)
      ? null
      : leaving.map((_, stage) =>
          standings.reduce((sum, {resting}, place) => sum + shares[place]! * (resting?.[stage] ?? 0), 0),
        ),
  };
}

/** When animals leave each stage if nobody looks again; null where none do before the course ends. */
export interface Journey {
  readonly leaving: readonly (Measure | null)[];
  /** By stage, the share that stood in it when the journey began. */
  readonly began: readonly number[];
}

export function journeyOf(tempo: Tempo, {leaving: standing, atDays, notOutDays}: Standing): Journey {
  const last = standing.length - 1;
  const leaving: (Measure | null)[] = [];
  const began: number[] = [];
  let out: Measure | null = null;
  for (let stage = 0; stage <= last; stage++) {
    const from = ownDose(tempo, stage, stage === last ? notOutDays : atDays);
    const measure = standing[stage]!;
    const here = measure === null ? null : beyond(measure, from);
    out = both(out === null ? null : passOn(tempo, stage - 1, out), here);
    // Laying them together spreads some back over the cell they stand in: nobody was out by then.
    if (out !== null && stage === last) out = allBeyond(out, from);
    leaving.push(out);
    began.push(here === null ? 0 : wholeOf(here));
  }
  return {leaving, began};
}

/** When they emerge; null where none do before the course ends. */
export function emergenceOf(tempo: Tempo, standing: Standing): Measure | null {
  return journeyOf(tempo, standing).leaving.at(-1)!;
}

/** Adds so many animals on a journey, and those that rest, to the stages they are in at an instant, and to those out. */
export function inStages(
  tempo: Tempo,
  {leaving, began}: Journey,
  {resting}: Standing,
  atDays: number,
  count: number,
  animals: Float64Array,
) {
  let entered = 0;
  for (let stage = 0; stage < leaving.length; stage++) {
    const measure = leaving[stage]!;
    const left = measure === null ? 0 : massUpTo(measure, ownDose(tempo, stage, atDays));
    const here = Math.max(0, entered + began[stage]! - left) + (resting === null ? 0 : resting[stage]!);
    animals[stage] = animals[stage]! + count * here;
    entered = left;
  }
  animals[leaving.length] = animals[leaving.length]! + count * entered;
}

function both(a: Measure | null, b: Measure | null): Measure | null {
  return a === null ? b : b === null ? a : together(a, b);
}

/** What a measure holds beyond a dose, in cells from there on. */
function beyond(measure: Measure, from: number): Measure {
  const {step, first, length} = measure;
  const passed = from / step - first + 0.5;
  if (passed <= 0) return measure;
  const cut = emptyMeasure(step, from / step + 0.5, Math.max(1, Math.ceil(length - passed)));
  let below = massUpTo(measure, from);
  for (let i = 0; i < cut.length; i++) {
    const upTo = massUpTo(measure, from + (i + 1) * step);
    cut.cells[cut.mass + i] = upTo - below;
    below = upTo;
  }
  return summed(cut);
}

/** The same whole, all of it beyond a dose. */
function allBeyond(measure: Measure, from: number): Measure {
  const cut = beyond(measure, from);
  return cut === measure || wholeOf(cut) < NEGLIGIBLE
    ? measure
    : shifted(cut, 0, wholeOf(measure) / wholeOf(cut));
}
