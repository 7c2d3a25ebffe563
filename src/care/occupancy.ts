// Which unit a lot lives in, and since when units have been lived in without a break.
import type {Instant} from '../records/entry.ts';
import {type Lot, type RoomState, type Unit, valueAt} from '../records/state.ts';

interface Stay {
  readonly from: Instant;
  readonly to: Instant;
}

/** The unit a lot lives in, as it is now. */
export function unitOf(lot: Lot, {units, asOf}: Pick<RoomState, 'units' | 'asOf'>): Unit | undefined {
  const history = units.get(lot.stays.at(-1)?.unit ?? '');
  return history === undefined ? undefined : valueAt(history, asOf);
}

/** The unit a lot lived in at an instant. */
export function unitAt(lot: Lot | undefined, at: Instant): string | undefined {
  return lot?.stays.findLast(({from}) => from <= at)?.unit;
}

/** For each unit, when its present unbroken use began. */
export function occupiedSince(lots: Iterable<Lot>): ReadonlyMap<string, Instant> {
  const stays = new Map<string, Stay[]>();
  for (const lot of lots)
    for (const {unit, from, to = Number.POSITIVE_INFINITY} of lot.stays) {
      const others = stays.get(unit);
      if (others === undefined) stays.set(unit, [{from, to}]);
      else others.push({from, to});
    }
  return new Map([...stays].map(([unit, list]) => [unit, startOfLastUse(list)]));
}

function startOfLastUse(stays: Stay[]): Instant {
  stays.sort((a, b) => a.from - b.from);
  let start = stays[0]!.from;
  let end = stays[0]!.to;
  for (const {from, to} of stays) {
    if (from > end) start = from;
    end = Math.max(end, to);
  }
  return start;
}
