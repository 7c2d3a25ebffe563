import {expect, test} from 'vitest';
import {type TraceNode, trace} from '../../src/records/trace.ts';
import {day, lot, sample, unit} from './daybook-of.ts';
import {given} from './daybook-spec.ts';

const {state} = given(
  unit(),
  sample(),
  lot({pupa: 9, 'larva-5': 3}),
  lot({pupa: 2}, {code: 'M'}),
  {record: 'emergence', lot: 'A', at: day(1), adults: [{sex: 'female', count: 2}], exuviae: {code: 'skins'}},
  {record: 'voucher', lot: 'A', at: day(1), stage: 'larva-5'},
  {record: 'parasitoid', lot: 'A', at: day(2), count: 2},
  {record: 'split', lot: 'A', into: 'B', at: day(2), stages: {pupa: 4}},
  {record: 'merge', lot: 'M', into: 'A', at: day(3)},
  {record: 'merge', lot: 'B', into: 'A', at: day(4)},
  {record: 'lot', code: 'F', from: {specimen: 'A-1'}, unit: 'C1', at: day(5), stages: {egg: 9}},
  {record: 'emergence', lot: 'F', at: day(9), adults: [{count: 1}]},
  {record: 'identification', specimen: 'A-1', taxon: 'Pieris rapae', at: day(6)},
  {record: 'note', about: 'S1', at: day(6), text: 'edge of a field'},
  {record: 'note', about: 'A-1', at: day(7), text: 'worn'},
);

const shape = ({code, up, down}: TraceNode): unknown => [code, ...up.map(shape), ...down.map(shape)];
const kinds = ({entries}: TraceNode) => entries.map(({record}) => record.record);

test('a specimen leads up to its lot, the lots that merged into it, and the sample', () => {
  const node = trace(state, 'A-2');
  expect(node).toMatchObject({kind: 'specimen', exuviae: {code: 'skins'}, down: []});
  expect(shape(node)).toEqual(['A-2', ['A', ['S1'], ['M', ['S1']], ['B']]]);
});

test('eggs of a reared female lead on to the sample she came from', () => {
  expect(shape(trace(state, 'F-1'))).toEqual(['F-1', ['F', ['A-1', ['A', ['S1'], ['M', ['S1']], ['B']]]]]);
});

test('a sample leads down to everything that came of it, each thing once', () => {
  expect(shape(trace(state, 'S1'))).toEqual([
    'S1',
    ['A', ['B'], ['A-1', ['F', ['F-1']]], ['A-2'], ['A-v1'], ['A-p1'], ['A-p2']],
    ['M'],
  ]);
});

test('every step carries its entries', () => {
  expect(kinds(trace(state, 'S1'))).toEqual(['sample', 'note']);
  expect(kinds(trace(state, 'A'))).toEqual([
    'lot',
    'emergence',
    'voucher',
    'parasitoid',
    'split',
    'merge',
    'merge',
  ]);
  expect(kinds(trace(state, 'A-1'))).toEqual(['emergence', 'lot', 'identification', 'note']);
  expect(trace(state, 'A-1').taxon).toBe('Pieris rapae');
});

test('exuviae kept for several specimens ask which is meant', () => {
  expect(() => trace(state, 'skins')).toThrow('Trace one of them: A-1, A-2.');
});

test('an unknown code is refused with the nearest one', () => {
  expect(() => trace(state, 'A-v11')).toThrow(
    'no sample, lot or specimen has the code A-v11. Nearest known is A-v1.',
  );
});
