// Which lots may leave room.json: closed ones that nothing open hangs on.
import type {Lot, RoomState} from '../records/state.ts';

/**
 * The codes of the lots that leave, each with when the last of those it was parted from or joined to was closed
 * (ms since 1970). Lots that were split or merged share animals, so they stay and leave together; the lot of a
 * mother stays as long as that of her eggs does.
 * @param may whether a closed lot would leave if nothing else held it
 */
export function lotsLeaving({lots, specimens}: RoomState, may: (lot: Lot) => boolean): Map<string, number> {
  const kin = kinOf(lots);
  const leaving = new Set([...kin].filter(group => group.every(lot => lot.closed !== undefined && may(lot))));
  const groupOf = new Map([...kin].flatMap(group => group.map(lot => [lot.code, group] as const)));
  const motherOf = ({origin}: Lot) =>
    origin.kind === 'specimen'
      ? specimens.get(origin.code)?.lot
      : origin.kind === 'lot'
        ? origin.code
        : undefined;

  for (let before = -1; leaving.size !== before; ) {
    before = leaving.size;
    for (const lot of lots.values()) {
      if (leaving.has(groupOf.get(lot.code)!)) continue;
      const mothers = groupOf.get(motherOf(lot) ?? '');
      if (mothers !== undefined) leaving.delete(mothers);
    }
  }
  return new Map(
    [...leaving].flatMap(group => {
      const closedAt = Math.max(...group.map(({closed}) => closed?.at ?? 0));
      return group.map(({code}) => [code, closedAt] as const);
    }),
  );
}

/** Lots in groups of those that were split from, or merged into, one another. */
function kinOf(lots: ReadonlyMap<string, Lot>): Set<Lot[]> {
  const groupOf = new Map([...lots.values()].map(lot => [lot.code, [lot]]));
  const join = (a: string, b: string) => {
    const [into, from] = [groupOf.get(a), groupOf.get(b)];
    if (into === undefined || from === undefined || into === from) return;
    into.push(...from);
    for (const {code} of from) groupOf.set(code, into);
  };
  for (const lot of lots.values()) {
    if (lot.mergedInto !== undefined) join(lot.mergedInto, lot.code);
    for (const {fromLot} of lot.cohorts) if (fromLot !== undefined) join(fromLot, lot.code);
  }
  return new Set(groupOf.values());
}
