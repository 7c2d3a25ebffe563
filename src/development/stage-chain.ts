// A profile as the chain its animals go through: stages in order, each with its dose.
import type {TaxonProfile} from '../records/schema/index.ts';
import {compareStages, type Stage} from '../records/stage.ts';
import {type RateModelSpec, rateModel} from '../thermal/rate-model.ts';
import {type DoseCourse, doseAt, doseCourseOf, type Temperatures} from './dose-course.ts';
import {keptAlong} from './kept-along.ts';
import {kernelOf} from './kernel.ts';
import type {Measure} from './measure.ts';
import type {Spread} from './spread.ts';

export interface ChainStage {
  readonly name: Stage;
  /** In degree-days where the model counts in them, else in shares of the stage. */
  readonly course: DoseCourse;
  /** The dose that the mean animal needs, in the units of the course. */
  readonly required: number;
  readonly spread: Spread;
  /** The dose that one animal needs, as a measure. */
  readonly kernel: Measure;
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
export const chainOfTaxon = keptAlong(
  ({stages}: TaxonProfile, course): Chain =>
    chainOf(stages.map(({stage, rate, cv, family}) => stageAlong(course, stage, rate, {cv, family}))),
);

/** Stages put into the order of development. */
export function chainOf(stages: readonly ChainStage[]): Chain {
  const ordered = stages.toSorted((a, b) => compareStages(a.name, b.name));
  return {stages: ordered, inStep: ordered.every(({course}) => course === ordered[0]!.course)};
}

/** How long the mean animal takes from one stage through another, in the mean temperatures of a span. */
export function daysThrough(
  {stages}: Chain,
  {from, to}: {readonly from: Stage; readonly to: Stage | undefined},
  {fromDays, toDays}: {readonly fromDays: number; readonly toDays: number},
): number {
  const through = stages.filter(
    ({name}) => compareStages(name, from) >= 0 && (to === undefined || compareStages(name, to) <= 0),
  );
  return (through.length === 0 ? stages : through).reduce((sum, {course, required}) => {
    const perDay = (doseAt(course, toDays) - doseAt(course, fromDays)) / (toDays - fromDays);
    return sum + required / perDay;
  }, 0);
}

/** One stage along a course. Stages with the same thresholds share their course: the constant is set beside it. */
export function stageAlong(
  course: Temperatures,
  name: Stage,
  rate: RateModelSpec,
  spread: Spread,
): ChainStage {
  const daysAt20 = 1 / rateModel(rate).ratePerDay(20);
  const kernel = kernelOf(spread);
  if (rate.kind !== 'degree-day')
    return {name, course: doseCourseOf(course, rate), required: 1, spread, kernel, daysAt20, lowerC: null};
  const degreeDays = doseCourseOf(course, {...rate, degreeDays: 1});
  return {name, course: degreeDays, required: rate.degreeDays, spread, kernel, daysAt20, lowerC: rate.lower};
}
