// Ids of entries and requests: numbered through in the order of writing, under the lock.
import type {Entry} from '../records/entry.ts';
import type {Numbering, Room} from './room.ts';

/** The id of the next request of a room and those of its entries. Valid inside the change that is being decided. */
export function nextIds({next}: Pick<Room, 'next'>, entries: number): {request: string; entries: string[]} {
  return {
    request: `r${next.request}`,
    entries: Array.from({length: entries}, (_, i) => `e${next.entry + i}`),
  };
}

/** The number in an id such as `e12`. */
export function numberIn(id: string): number {
  return Number(id.slice(1));
}

/**
 * The numbering after a change.
 * @throws RangeError where the entries do not go on from the room's numbering without a gap
 */
export function numberingAfter(next: Numbering, entries: readonly Entry[], batches: number): Numbering {
  let request = next.request;
  entries.forEach((entry, i) => {
    const expected = `e${next.entry + i}`;
    if (entry.id !== expected) throw new RangeError(`entry ${entry.id} should be ${expected}`);
    const number = numberIn(entry.request);
    if (number === request) request++;
    else if (number !== request - 1 || number < next.request)
      throw new RangeError(`request ${entry.request} of entry ${entry.id} should be r${request}`);
  });
  return {entry: next.entry + entries.length, request, batch: next.batch + batches};
}
