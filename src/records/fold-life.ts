// The lots of a room lived through, entry by entry, in order of time.
import type {Dated} from './counting.ts';
import type {RoomDraft} from './draft.ts';
import {absentCode, takeEffect} from './fold-entry.ts';
import {addsUpLater} from './same-instant.ts';

/** Called with each entry about lots and specimens, just before it takes effect. */
export type Witness = (each: Dated) => void;

/**
 * Let every entry about lots and specimens take effect. Entries of one instant may stand in any order: one that
 * names a lot or specimen that does not exist yet waits for it, and a count that only adds up once the losses and
 * finds written beside it are in is taken after them.
 * @returns the entries that never took effect, because what they are about never came to be
 */
export function live(
  room: RoomDraft,
  dated: readonly Dated[],
  witness: Witness = () => {},
): readonly Dated[] {
  const waiting = new Waiting();
  let afterwards: Dated[] = [];

  const step = (each: Dated) => {
    const absent = absentCode(room, each.entry.record);
    if (absent !== undefined) {
      waiting.add(absent, each);
      return;
    }
    witness(each);
    takeEffect(room, each);
    for (const freed of waiting.freed(room)) step(freed);
  };

  for (const [index, each] of dated.entries()) {
    if (afterwards.length > 0 && afterwards[0]!.at < each.at) {
      afterwards.forEach(step);
      afterwards = [];
    }
    if (addsUpLater(room, dated, index)) afterwards.push(each);
    else step(each);
  }
  afterwards.forEach(step);
  return waiting.left();
}

/** Entries that name what does not exist yet. */
class Waiting {
  readonly #byCode = new Map<string, Dated[]>();

  add(code: string, each: Dated): void {
    const others = this.#byCode.get(code);
    if (others === undefined) this.#byCode.set(code, [each]);
    else others.push(each);
  }

  /** Those whose lot or specimen has come to be, taken out. */
  freed(room: RoomDraft): readonly Dated[] {
    if (this.#byCode.size === 0) return [];
    const freed: Dated[] = [];
    for (const [code, entries] of this.#byCode)
      if (room.lots.has(code) || room.specimens.has(code)) {
        this.#byCode.delete(code);
        freed.push(...entries);
      }
    return freed;
  }

  left(): readonly Dated[] {
    return [...this.#byCode.values()].flat();
  }
}
