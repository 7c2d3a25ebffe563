// The state of a room while it is being folded: the same shapes, still open.
import type {Instant} from './entry.ts';
import type {Lot, RoomState, Sample, Specimen, Tally} from './state.ts';

/** Fields and collections that may still be changed. */
type Open<T> = {-readonly [Field in keyof T]: OpenValue<T[Field]>};
type OpenValue<T> =
  T extends ReadonlyMap<infer Key, infer Value>
    ? Map<Key, Value>
    : T extends ReadonlySet<infer Item>
      ? Set<Item>
      : T extends readonly (infer Item)[]
        ? Item[]
        : T;

export type LotDraft = Omit<Open<Lot>, 'tally'> & {tally: Open<Tally>};
export type SpecimenDraft = Open<Specimen>;
export type SampleDraft = Open<Sample>;
export type RoomDraft = Omit<Open<RoomState>, 'samples' | 'lots' | 'specimens'> & {
  samples: Map<string, SampleDraft>;
  lots: Map<string, LotDraft>;
  specimens: Map<string, SpecimenDraft>;
};

export function emptyRoom(asOf: Instant): RoomDraft {
  return {
    asOf,
    loggers: new Map(),
    units: new Map(),
    samples: new Map(),
    lots: new Map(),
    specimens: new Map(),
    rules: new Map(),
    profiles: new Map(),
    people: new Map(),
    settings: {},
    care: [],
    acknowledged: new Map(),
    masks: [],
    handReadings: [],
    extremes: [],
    water: [],
    entries: [],
    voided: new Set(),
    history: [],
  };
}
