// Given what was recorded, when more is to be recorded, then it holds or is refused.
import {expect} from 'vitest';
import {complete} from '../../src/records/complete.ts';
import {decide} from '../../src/records/decide.ts';
import type {Entry} from '../../src/records/entry.ts';
import {fold} from '../../src/records/fold.ts';
import {Refusal} from '../../src/records/refusal.ts';
import type {RoomState} from '../../src/records/state.ts';
import {at, day, greenwich, recordOf, type Written} from './daybook-of.ts';

/** Ten days after the lots begin. */
export const NOW = 10;

export const known = {now: at(NOW), civil: greenwich, profiles: new Set(['pieris-rapae', 'lepidoptera'])};

interface Given {
  /** One batch more; refused batches leave the daybook as it was. */
  when(...written: readonly Written[]): Outcome;
}

interface Outcome extends Given {
  readonly entries: readonly Entry[];
  readonly state: RoomState;
  readonly refusal: Refusal | undefined;
  /** The refusal's words, and the record it points at. */
  thenRefused(what: RegExp | string, where?: string): void;
  thenHolds(): Outcome;
}

export function given(...written: readonly Written[]): Outcome {
  return after([], undefined)
    .when(...written)
    .thenHolds();
}

function after(entries: readonly Entry[], refusal: Refusal | undefined): Outcome {
  return {
    entries,
    refusal,
    get state() {
      return fold(entries, at(NOW));
    },
    when(...written) {
      try {
        return after(withBatch(entries, written), undefined);
      } catch (error) {
        if (error instanceof Refusal) return after(entries, error);
        throw error;
      }
    },
    thenRefused(what, where) {
      expect(refusal?.what ?? 'nothing was refused').toMatch(what);
      expect(refusal?.mend).toMatch(/^[A-Z].*\.$/);
      if (where !== undefined) expect(refusal?.where).toBe(where);
    },
    thenHolds() {
      expect(refusal?.message).toBeUndefined();
      return this;
    },
  };
}

/** As the room writes a batch: completed, numbered, decided. */
export function withBatch(entries: readonly Entry[], written: readonly Written[]): readonly Entry[] {
  const before = fold(entries, at(NOW));
  const records = complete(written.map(recordOf), {now: day(NOW), before, profiles: new Map()});
  const request = `r${new Set(entries.map(entry => entry.request)).size + 1}`;
  const additions = records.map((record, index) => ({
    id: `e${entries.length + index + 1}`,
    request,
    recordedAt: record.recordedAt ?? day(NOW),
    by: 'Ida',
    record,
  }));
  decide(before, additions, known);
  return [...entries, ...additions];
}
