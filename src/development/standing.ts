// Where the animals of one path stand at one pace: for every stage, when those now in it will leave it.
import type {FounderClass, Passages} from './founders.ts';
import {remainingOf} from './founding.ts';
import {type Measure, massUpTo, measureOf, shifted, together, wholeOf, withoutBelow} from './measure.ts';
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
}

/** Less than this of a path's animals is let go. */
const NEGLIGIBLE = 1e-9;

/** As they were found. */
export function standingOf(tempo: Tempo, {atDays, stage, progress}: FounderClass, brood?: number): Standing {
  const within = brood === undefined ? progress : ([brood, brood] as const);
  const leaving: (Measure | null)[] = tempo.chain.stages.map(() => null);
  for (const place of placesOf(tempo.chain, stage, within)) {
    const {spread} = tempo.chain.stages[place.index]!;
    leaving[place.index] = shifted(
      remainingOf({spread, progress: place.progress}),
      ownDose(tempo, place.index, atDays),
      place.weight,
    );
  }
  return {atDays, notOutDays: atDays, leaving};
}

/** The same animals later, nobody having looked. */
export function later(tempo: Tempo, standing: Standing, atDays: number): Standing {
  const last = standing.leaving.length - 1;
  const leaving: (Measure | null)[] = [];
  let coming: Measure | null = null;
  for (let stage = 0; stage <= last; stage++) {
    const staying = standing.leaving[stage]!;
    const all: Measure | null =
      coming === null ? staying : staying === null ? coming : together(coming, staying);
    coming = null;
    if (all === null || stage === last) {
      leaving.push(all);
      continue;
    }
    const then = ownDose(tempo, stage, atDays);
    const since = ownDose(tempo, stage, standing.atDays);
    if (wholeOf(all) - massUpTo(all, since) > NEGLIGIBLE) coming = passOn(tempo, stage, all, [since, then]);
    leaving.push(wholeOf(all) - massUpTo(all, then) > NEGLIGIBLE ? withoutBelow(all, then) : null);
  }
  return {...standing, atDays, leaving};
}

/** For every stage the share of animals now in it; what is missing to one is out. */
export function sharesIn(tempo: Tempo, standing: Standing): Float64Array {
  return Float64Array.from(standing.leaving, (leaving, stage) =>
    leaving === null ? 0 : wholeOf(leaving) - massUpTo(leaving, ownDose(tempo, stage, standing.atDays)),
  );
}

/** The share that came out between an instant, not before they were last known not to be out, and now. */
export function shareOut(tempo: Tempo, {leaving, atDays, notOutDays}: Standing, sinceDays: number): number {
  const last = leaving.length - 1;
  const measure = leaving[last]!;
  if (measure === null) return 0;
  const from = ownDose(tempo, last, Math.max(sinceDays, notOutDays));
  return massUpTo(measure, ownDose(tempo, last, atDays)) - massUpTo(measure, from);
}

/** Those of whom something was seen that has these chances in each stage, and that are not out. */
export function given(tempo: Tempo, standing: Standing, chances: ArrayLike<number>): Standing {
  const shares = sharesIn(tempo, standing);
  let whole = 0;
  for (let stage = 0; stage < shares.length; stage++) whole += shares[stage]! * chances[stage]!;
  const leaving = standing.leaving.map((measure, stage) => {
    const scale = chances[stage]! / whole;
    if (measure === null || shares[stage]! * scale < NEGLIGIBLE) return null;
    return shifted(measure, 0, scale);
  });
  return {atDays: standing.atDays, notOutDays: standing.atDays, leaving};
}

/** How they go on from here if nobody looks again. */
export function passagesFrom(tempo: Tempo, {leaving: holding, atDays, notOutDays}: Standing): Passages {
  const startsBy: number[] = [];
  const leaving: (Measure | null)[] = [];
  const last = holding.length - 1;
  let begun = 0;
  let before: Measure | null = null;
  holding.forEach((measure, stage) => {
    const from = ownDose(tempo, stage, stage === last ? notOutDays : atDays);
    const staying: Measure | null = measure === null ? null : beyond(measure, from);
    const coming: Measure | null = before === null ? null : passOn(tempo, stage - 1, before);
    begun += staying === null ? 0 : wholeOf(staying);
    before = coming && staying ? together(coming, staying) : (staying ?? coming);
    // Laying them together spreads some back over the cell they stand in: nobody was out by then.
    if (before !== null && stage === last) before = allBeyond(before, from);
    startsBy.push(begun);
    leaving.push(before);
  });
  return {startsBy, leaving};
}

/** What a measure holds beyond a dose, in cells from there on. */
function beyond(measure: Measure, from: number): Measure {
  const {step, first, mass} = measure;
  const passed = from / step - first + 0.5;
  if (passed <= 0) return measure;
  const cells = new Float64Array(Math.max(1, Math.ceil(mass.length - passed)));
  let below = massUpTo(measure, from);
  for (let i = 0; i < cells.length; i++) {
    const upTo = massUpTo(measure, from + (i + 1) * step);
    cells[i] = upTo - below;
    below = upTo;
  }
  return measureOf(step, from / step + 0.5, cells);
}

/** The same whole, all of it beyond a dose. */
function allBeyond(measure: Measure, from: number): Measure {
  const cut = beyond(measure, from);
  return cut === measure || wholeOf(cut) < NEGLIGIBLE
    ? measure
    : shifted(cut, 0, wholeOf(measure) / wholeOf(cut));
}
