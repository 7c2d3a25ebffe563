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

/** When it was last done, at the latest at `limit`; undefined when it never was. */
export function lastIn(deeds: readonly Deed[], limit: Instant): Instant | undefined {
  return deeds.findLast(({at, skipped}) => skipped === undefined && at <= limit)?.at;
}

export interface Ledger {
  /** Deeds for a lot, in order of time: done for it by name, or for the whole unit while it lived there. */
  ofLot(task: string, lot: Lot): readonly Deed[];
  /** Deeds for a unit, in order of time: done for it by name, or for a lot that lived in it. */
  ofUnit(task: string, unit: string): readonly Deed[];
}

export function ledgerOf({care, lots}: Pick<RoomState, 'care' | 'lots'>): Ledger {
  const forLot: Index = new Map();
  const forUnit: Index = new Map();
  const forWholeUnit: Index = new Map();

  for (const deed of care) {
    const {lot} = deed;
    const unit = deed.unit ?? unitAt(lots.get(lot ?? ''), deed.at);
    if (lot !== undefined) add(forLot, lot, deed);
    if (unit !== undefined) add(forUnit, unit, deed);
    if (unit !== undefined && lot === undefined) add(forWholeUnit, unit, deed);
  }

  return {
    ofUnit: (task, unit) => find(forUnit, unit, task),
    ofLot(task, lot) {
      const own = find(forLot, lot.code, task);
      if (!lot.stays.some(({unit}) => forWholeUnit.get(unit)?.has(task))) return own;
      const shared = lot.stays.flatMap(({unit, from, to = Number.POSITIVE_INFINITY}) =>
        find(forWholeUnit, unit, task).filter(({at}) => from <= at && at <= to),
      );
      return [...own, ...shared].sort((a, b) => a.at - b.at);
    },
  };
}

/** Deeds by code, then by task. */
type Index = Map<string, Map<string, CareDone[]>>;

const NONE: readonly Deed[] = [];

function find(index: Index, code: string, task: string): readonly Deed[] {
  return index.get(code)?.get(task) ?? NONE;
}

function add(index: Index, code: string, deed: CareDone): void {
  let byTask = index.get(code);
  if (byTask === undefined) {
    byTask = new Map();
    index.set(code, byTask);
  }
  const others = byTask.get(deed.task);
  if (others === undefined) byTask.set(deed.task, [deed]);
  else others.push(deed);
}
