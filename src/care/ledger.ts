// What was really done, and what was skipped, found by task and by lot or unit.
import type {Instant} from '../records/entry.ts';
import type {CareDone, Lot, RoomState} from '../records/state.ts';
import {unitAt} from './occupancy.ts';

/** Something that happened for a lot or unit, and who did it. */
export interface Deed {
  readonly at: Instant;
  readonly by: string;
  /** Given when it could not be done. */
  readonly skipped?: string | undefined;
}

export interface Ledger {
  /** Deeds for a lot, in order of time: done for it by name, or for the whole unit while it lived there. */
  ofLot(task: string, lot: Lot): readonly Deed[];
  /** Deeds for a unit, in order of time: done for it by name, or for a lot that lived in it. */
  ofUnit(task: string, unit: string): readonly Deed[];
}

export function ledgerOf({care, lots}: Pick<RoomState, 'care' | 'lots'>): Ledger {
  const forLot = new Map<string, CareDone[]>();
  const forUnit = new Map<string, CareDone[]>();
  const forWholeUnit = new Map<string, CareDone[]>();

  for (const deed of care) {
    const {task, lot} = deed;
    const unit = deed.unit ?? unitAt(lots.get(lot ?? ''), deed.at);
    if (lot !== undefined) add(forLot, `${task} ${lot}`, deed);
    if (unit !== undefined) add(forUnit, `${task} ${unit}`, deed);
    if (unit !== undefined && lot === undefined) add(forWholeUnit, `${task} ${unit}`, deed);
  }

  return {
    ofUnit: (task, unit) => forUnit.get(`${task} ${unit}`) ?? [],
    ofLot(task, lot) {
      const own = forLot.get(`${task} ${lot.code}`) ?? [];
      const shared = lot.stays.flatMap(({unit, from, to = Number.POSITIVE_INFINITY}) =>
        (forWholeUnit.get(`${task} ${unit}`) ?? []).filter(({at}) => from <= at && at <= to),
      );
      return shared.length === 0 ? own : [...own, ...shared].sort((a, b) => a.at - b.at);
    },
  };
}

function add(index: Map<string, CareDone[]>, key: string, deed: CareDone): void {
  const others = index.get(key);
  if (others === undefined) index.set(key, [deed]);
  else others.push(deed);
}
