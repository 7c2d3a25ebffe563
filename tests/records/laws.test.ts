// What must hold of any daybook that the rules let in.
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {atOf, type Entry} from '../../src/records/entry.ts';
import {fold} from '../../src/records/fold.ts';
import {total} from '../../src/records/stage.ts';
import {type TraceNode, trace} from '../../src/records/trace.ts';
import {at} from './daybook-of.ts';
import {NOW, withBatch} from './daybook-spec.ts';
import {randomDaybook} from './random-daybook.ts';
import {told} from './told.ts';

test('the sum of every lot holds at every instant, and agrees with adding up its records by hand', () => {
  fc.assert(
    fc.property(randomDaybook, entries => {
      for (const instant of entries.map(atOf))
        for (const lot of fold(entries, instant).lots.values()) {
          const {started, hatched, mergedIn, found, ...out} = lot.tally;
          const cameIn = started + hatched + mergedIn + found;
          expect(cameIn).toBe(total(lot.alive) + Object.values(out).reduce((sum, count) => sum + count));
          expect(Math.min(0, ...Object.values(lot.alive))).toBe(0);
          const byHand = addedUp(entries, lot.code, instant);
          if (lot.exact && byHand !== undefined) expect(total(lot.alive)).toBe(byHand);
        }
    }),
  );
});

test('every specimen traces to exactly one field sample, and that sample leads to it', () => {
  fc.assert(
    fc.property(randomDaybook, entries => {
      const state = fold(entries, at(NOW));
      for (const {code, sample} of state.specimens.values()) {
        const samples = new Set(codesOf(trace(state, code), 'up', 'sample'));
        expect([...samples]).toEqual([sample]);
      }
      const led = [...state.samples.keys()].flatMap(code => codesOf(trace(state, code), 'down', 'specimen'));
      expect(led.sort()).toEqual([...state.specimens.keys()].sort());
    }),
  );
});

test('the order of writing changes nothing: one batch in any order gives the same state', () => {
  const shuffled = randomDaybook.chain(entries =>
    fc.tuple(fc.constant(entries), fc.shuffledSubarray([...entries], {minLength: entries.length})),
  );
  fc.assert(
    fc.property(shuffled, ([entries, mixed]) => {
      const again = withBatch(
        [],
        mixed.map(({record}) => ({...record})),
      );
      expect(told(fold(again, at(NOW)))).toEqual(told(fold(entries, at(NOW))));
    }),
  );
});

test('an entry that is void and entered anew gives the same state', () => {
  fc.assert(
    fc.property(randomDaybook, fc.nat(), (entries, pick) => {
      const {id, record} = entries[pick % entries.length]!;
      const again = withBatch(entries, [{record: 'void', entry: id}, {...record}]);
      expect(told(fold(again, at(NOW)))).toEqual(told(fold(entries, at(NOW))));
    }),
  );
});

test('folding alters no entry', () => {
  fc.assert(
    fc.property(randomDaybook, entries => {
      const before = JSON.stringify(entries);
      fold(entries, at(NOW));
      expect(JSON.stringify(entries)).toBe(before);
    }),
    {numRuns: 20},
  );
});

/** How many are alive in a lot by its records alone; undefined where merges or hatchings make that longer than a sum. */
function addedUp(entries: readonly Entry[], code: string, asOf: number): number | undefined {
  let alive = 0;
  for (const {record} of entries.filter(entry => atOf(entry) <= asOf)) {
    if (record.record === 'lot' && record.code === code) alive += total(record.stages ?? {});
    if (record.record === 'split' && record.into === code) alive += total(record.stages);
    if (record.record === 'merge' && (record.into === code || record.lot === code)) return undefined;
    if (!('lot' in record) || record.lot !== code) continue;
    if (record.record === 'hatch') return undefined;
    if (record.record === 'found') alive += record.count;
    if (record.record === 'loss' || record.record === 'voucher') alive -= record.count;
    if (record.record === 'parasitoid') alive -= record.hosts;
    if (record.record === 'emergence') alive -= record.adults.reduce((sum, {count}) => sum + count, 0);
    if (record.record === 'split') alive -= total(record.stages);
  }
  return alive;
}

function codesOf(node: TraceNode, way: 'up' | 'down', kind: TraceNode['kind']): string[] {
  const further = node[way].flatMap(next => codesOf(next, way, kind));
  return node.kind === kind ? [node.code, ...further] : further;
}
