// What must hold of daybooks of thousands of entries.
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {fold, openRoomDraft} from '../../src/records/fold.ts';
import {live} from '../../src/records/fold-life.ts';
import {lifeTable} from '../../src/records/life-table.ts';
import {total} from '../../src/records/stage.ts';
import type {Lot} from '../../src/records/state.ts';
import {type TraceNode, trace} from '../../src/records/trace.ts';
import {at} from './daybook-of.ts';
import {NOW, withBatch} from './daybook-spec.ts';
import {longDaybook} from './long-daybook.ts';
import {told} from './told.ts';

// A failure is told as it is: making thousands of entries smaller step by step takes too long.
const RUNS = {numRuns: 2, endOnFailure: true};

function addsUp({tally, alive}: Pick<Lot, 'tally' | 'alive'>): boolean {
  const {started, hatched, mergedIn, found, ...out} = tally;
  const gone = Object.values(out).reduce((sum, count) => sum + count);
  return started + hatched + mergedIn + found === total(alive) + gone;
}

test('the rules let in what holds by construction, and the sum of every lot holds before and after each entry', () => {
  fc.assert(
    fc.property(longDaybook, records => {
      const entries = withBatch([], records);
      expect(entries.length).toBeGreaterThan(1500);
      const {room, dated} = openRoomDraft(entries, at(NOW));
      let unequal = 0;
      const left = live(room, dated, () => {
        for (const lot of room.lots.values()) if (!addsUp(lot)) unequal++;
      });
      expect(left).toEqual([]);
      expect(unequal).toBe(0);
      expect([...room.lots.values()].every(addsUp)).toBe(true);
      expect(Math.min(0, ...[...room.lots.values()].flatMap(lot => Object.values(lot.alive)))).toBe(0);
    }),
    RUNS,
  );
});

test('every specimen traces to exactly one field sample', () => {
  fc.assert(
    fc.property(longDaybook, fc.infiniteStream(fc.nat()), (records, picks) => {
      const state = fold(withBatch([], records), at(NOW));
      const codes = [...state.specimens.keys()];
      for (const pick of picks.take(25)) {
        const code = codes[pick % codes.length]!;
        const roots = new Set(rootsOf(trace(state, code)));
        expect([...roots]).toHaveLength(1);
        expect(['S0', 'S1', 'S2']).toContain([...roots][0]);
      }
    }),
    RUNS,
  );
});

test('the order of writing changes nothing', () => {
  const shuffled = longDaybook.chain(records =>
    fc.tuple(fc.constant(records), fc.shuffledSubarray([...records], {minLength: records.length})),
  );
  fc.assert(
    fc.property(shuffled, ([records, mixed]) => {
      const state = (list: typeof records) => told(fold(withBatch([], list), at(NOW)));
      expect(sorted(state(mixed))).toEqual(sorted(state(records)));
    }),
    RUNS,
  );
});

test('entries that are void and entered anew give the same state', () => {
  fc.assert(
    fc.property(longDaybook, fc.array(fc.nat(), {minLength: 1, maxLength: 5}), (records, picks) => {
      const entries = withBatch([], records);
      const wrong = [...new Set(picks.map(pick => entries[pick % entries.length]!))];
      const again = withBatch(entries, [
        ...wrong.map(({id}) => ({record: 'void', entry: id})),
        ...wrong.map(({id, record}) => ({...record, replaces: id})),
      ]);
      const anew = again.map(({record: {replaces: _, ...record}, ...entry}) => ({...entry, record}));
      expect(sorted(told(fold(anew as typeof again, at(NOW))))).toEqual(sorted(told(fold(entries, at(NOW)))));
    }),
    RUNS,
  );
});

test('a life table loses no animal: what entered the last stage and lived through it are the adults', () => {
  fc.assert(
    fc.property(longDaybook, records => {
      for (const lot of fold(withBatch([], records), at(NOW)).lots.values()) {
        const table = lifeTable(lot)!;
        const started = lot.cohorts.reduce((sum, {stages}) => sum + total(stages), 0);
        const ends = table.rows.reduce(
          (sum, {died, parasitised, withdrawn, alive}) => sum + died + parasitised + withdrawn + alive,
          table.adults,
        );
        expect(ends).toBe(started);
      }
    }),
    RUNS,
  );
});

/** Field samples that nothing is above; a lot split off and merged back leads nowhere twice. */
function rootsOf({kind, code, up}: TraceNode): string[] {
  return kind === 'sample' && up.length === 0 ? [code] : up.flatMap(rootsOf);
}

/** Maps by code, whatever order the codes came in. */
function sorted(state: unknown): unknown {
  const parts = Object.entries(state as Record<string, ReadonlyMap<string, unknown>>);
  return Object.fromEntries(parts.map(([name, map]) => [name, Object.fromEntries([...map].sort())]));
}
