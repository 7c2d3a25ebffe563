// A profile as the chain its animals go through: stages in order, each with its dose.
import type {TaxonProfile} from '../records/schema/index.ts';
import {compareStages, type Stage} from '../records/stage.ts';
import {type RateModelSpec, rateModel} from '../thermal/rate-model.ts';
import {type DoseCourse, doseCourseOf, type Temperatures} from './dose-course.ts';
import type {Spread} from './spread.ts';

export interface ChainStage {
  readonly name: Stage;
  /** In degree-days where the model counts in them, else in shares of the stage. */
  readonly course: DoseCourse;
  /** The dose that the mean animal needs, in the units of the course. */
  readonly required: number;
  readonly spread: Spread;
  /** How long it takes at 20 °C; only ever compared with other stages. */
  readonly daysAt20: number;
  /** The lower threshold, °C, where the dose is in degree-days. */
  readonly lowerC: number | null;
}

export interface Chain {
  readonly stages: readonly ChainStage[];
  /** All stages count in the same dose, so that how they follow each other depends on neither pace nor temperature. */
  readonly inStep: boolean;
}

/** The chain of a taxon's own stages along a course. */
export function chainOfTaxon({stages}: TaxonProfile, course: Temperatures): Chain {
  return chainOf(stages.map(({stage, rate, cv, family}) => stageAlong(course, stage, rate, {cv, family})));
}

/** Stages put into the order of development. */
export function chainOf(stages: readonly ChainStage[]): Chain {
  const ordered = stages.toSorted((a, b) => compareStages(a.name, b.name));
  return {stages: ordered, inStep: ordered.every(({course}) => course === ordered[0]!.course)};
}

/** One stage along a course. Stages with the same thresholds share their course: the constant is set beside it. */
export function stageAlong(
  course: Temperatures,
  name: Stage,
  rate: RateModelSpec,
  spread: Spread,
): ChainStage {
  const daysAt20 = 1 / rateModel(rate).ratePerDay(20);
  if (rate.kind !== 'degree-day')
    return {name, course: doseCourseOf(course, rate), required: 1, spread, daysAt20, lowerC: null};
  const degreeDays = doseCourseOf(course, {...rate, degreeDays: 1});
  return {name, course: degreeDays, required: rate.degreeDays, spread, daysAt20, lowerC: rate.lower};
}
