// How fast development goes at a temperature: one interface for every model.
import {type DegreeDaySpec, degreeDay} from './degree-day.ts';
import {type TableSpec, table} from './table.ts';

export type Cutoff = 'horizontal' | 'intermediate' | 'vertical';

/** A rate model as written down, in a profile or on the command line. */
export type RateModelSpec = DegreeDaySpec | TableSpec;

/** A rate never below 0, with its exact antiderivative, so that the dose over any straight piece of a trace is exact. */
export interface RateModel {
  /** Share of the stage completed per day at this temperature. */
  ratePerDay(temperatureC: number): number;
  /** R with R' = rate: the dose over a straight piece from a to b in Δt days is (R(b) − R(a)) / (b − a) · Δt. */
  antiderivative(temperatureC: number): number;
}

/** The model that a specification describes. @throws RangeError where its numbers make no model. */
export function rateModel(spec: RateModelSpec): RateModel {
  switch (spec.kind) {
    case 'degree-day':
      return degreeDay(spec);
    case 'table':
      return table(spec);
  }
}
