// Every rate model there is, by its specification.
import {type DegreeDaySpec, degreeDay} from './degree-day.ts';
import type {RateModel} from './rate.ts';
import {type TableSpec, table} from './table.ts';

/** A rate model as written down, in a profile or on the command line. */
export type RateModelSpec = DegreeDaySpec | TableSpec;

/** The model that a specification describes. @throws RangeError where its numbers make no model. */
export function rateModel(spec: RateModelSpec): RateModel {
  switch (spec.kind) {
    case 'degree-day':
      return degreeDay(spec);
    case 'table':
      return table(spec);
  }
}
