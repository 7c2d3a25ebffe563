// What a state tells of samples, lots and specimens, whatever its entries are called.
import type {Entry} from '../../src/records/entry.ts';
import type {RoomState} from '../../src/records/state.ts';

/** Two daybooks that tell the same are equal by this. */
export function told({samples, lots, specimens}: RoomState): unknown {
  return {
    samples: byCode(samples, ({bycatch, ...sample}) => ({
      ...sample,
      bycatch: bycatch.map(({entry: _, ...animal}) => animal),
    })),
    lots: byCode(lots, lot => ({
      ...lot,
      entries: records(lot.entries),
      cohorts: lot.cohorts.map(({entry: _, ...cohort}) => cohort),
      sightings: lot.sightings.map(({entry: _, ...sighting}) => sighting),
    })),
    specimens: byCode(specimens, ({entry: _, identifications, preparations, ...specimen}) => ({
      ...specimen,
      identifications: records(identifications),
      preparations: records(preparations),
    })),
  };
}

function byCode<Value>(
  all: ReadonlyMap<string, Value>,
  tell: (value: Value) => unknown,
): Map<string, unknown> {
  return new Map([...all].map(([code, value]) => [code, tell(value)]));
}

function records(entries: readonly Entry[]) {
  return entries.map(({record}) => record);
}
