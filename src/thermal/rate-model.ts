// Every rate model there is, by its specification.
import {type Briere1Spec, briere1, briere1Fault, briere1Landmarks} from './briere-1.ts';
import {type Briere2Spec, briere2, briere2Fault, briere2Landmarks} from './briere-2.ts';
import {type DegreeDaySpec, degreeDay, degreeDayFault, degreeDayLandmarks} from './degree-day.ts';
import {type Lactin1Spec, lactin1, lactin1Fault, lactin1Landmarks} from './lactin-1.ts';
import {type Lactin2Spec, lactin2, lactin2Fault, lactin2Landmarks} from './lactin-2.ts';
import {type Logan6Spec, logan6, logan6Fault, logan6Landmarks} from './logan-6.ts';
import type {Fault, Landmarks, RateModel} from './rate.ts';
import {type SchoolfieldSpec, schoolfield, schoolfieldFault, schoolfieldLandmarks} from './schoolfield.ts';
import {type TableSpec, table, tableFault, tableLandmarks} from './table.ts';

/** A rate model as written down, in a profile or on the command line. */
export type RateModelSpec =
  | DegreeDaySpec
  | TableSpec
  | Briere1Spec
  | Briere2Spec
  | Lactin1Spec
  | Lactin2Spec
  | Logan6Spec
  | SchoolfieldSpec;

export type RateModelKind = RateModelSpec['kind'];

type SpecOf<Kind extends RateModelKind> = Extract<RateModelSpec, {readonly kind: Kind}>;

interface Entry<Spec> {
  readonly model: (spec: Spec) => RateModel;
  readonly landmarks: (spec: Spec) => Landmarks;
  readonly fault: (spec: Spec) => Fault | undefined;
}

const entries: {readonly [Kind in RateModelKind]: Entry<SpecOf<Kind>>} = {
  'degree-day': {model: degreeDay, landmarks: degreeDayLandmarks, fault: degreeDayFault},
  table: {model: table, landmarks: tableLandmarks, fault: tableFault},
  'briere-1': {model: briere1, landmarks: briere1Landmarks, fault: briere1Fault},
  'briere-2': {model: briere2, landmarks: briere2Landmarks, fault: briere2Fault},
  'lactin-1': {model: lactin1, landmarks: lactin1Landmarks, fault: lactin1Fault},
  'lactin-2': {model: lactin2, landmarks: lactin2Landmarks, fault: lactin2Fault},
  'logan-6': {model: logan6, landmarks: logan6Landmarks, fault: logan6Fault},
  schoolfield: {model: schoolfield, landmarks: schoolfieldLandmarks, fault: schoolfieldFault},
};

/** Hand a specification and its entry to something that works on any kind. */
function withEntry<Result>(
  spec: RateModelSpec,
  use: <Spec extends RateModelSpec>(entry: Entry<Spec>, spec: Spec) => Result,
): Result {
  switch (spec.kind) {
    case 'degree-day':
      return use(entries[spec.kind], spec);
    case 'table':
      return use(entries[spec.kind], spec);
    case 'briere-1':
      return use(entries[spec.kind], spec);
    case 'briere-2':
      return use(entries[spec.kind], spec);
    case 'lactin-1':
      return use(entries[spec.kind], spec);
    case 'lactin-2':
      return use(entries[spec.kind], spec);
    case 'logan-6':
      return use(entries[spec.kind], spec);
    case 'schoolfield':
      return use(entries[spec.kind], spec);
  }
}

/** The model that a specification describes. @throws RangeError where its numbers make no model. */
export function rateModel(spec: RateModelSpec): RateModel {
  return withEntry(spec, (entry, own) => entry.model(own));
}

/** Where development begins, is fastest and ends. @throws RangeError where the numbers make no model. */
export function landmarksOf(spec: RateModelSpec): Landmarks {
  return withEntry(spec, (entry, own) => entry.landmarks(own));
}

/** The first parameter that lies outside the model's domain; undefined where all make a model. */
export function faultOf(spec: RateModelSpec): Fault | undefined {
  return withEntry(spec, (entry, own) => entry.fault(own));
}
