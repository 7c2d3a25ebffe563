// Field samples: a method's own fields, parts of a sample, by-catch, and what was taken out dead.
import {expect, test} from 'vitest';
import {sentenceOf} from '../../src/records/daybook.ts';
import {cautionsOf, trapInWords} from '../../src/records/methods.ts';
import {trace} from '../../src/records/trace.ts';
import {day, lot, recordOf, sample, unit, type Written} from './daybook-of.ts';
import {given} from './daybook-spec.ts';

const trap = (trap: Written, more: Written = {}) => sample('P1', {method: 'pitfall', trap, ...more});
const part = (code = 'S1.2', more: Written = {}): Written => ({record: 'subsample', code, of: 'S1', ...more});

test('a method has its own fields; those of another are refused with what it has', () => {
  given(trap({traps: 6, lastEmptied: '2031-04-29', bait: 'none', acrossCm: 9}));
  const {refusal} = given().when(trap({lamp: 'actinic 8 W'}));
  expect(refusal).toMatchObject({
    what: '"lamp" says nothing about a sample by pitfall trap',
    mend: 'It has lastEmptied, traps, bait, baitSince, acrossCm.',
  });
  given()
    .when(sample('W', {method: 'wood', trap: {turns: 2}}))
    .thenRefused(/says nothing about a sample by dead wood/);
});

test('a trap is emptied before while it stands', () => {
  given(trap({lastEmptied: '2031-04-30'}));
  given()
    .when(trap({lastEmptied: '2031-05-02'}))
    .thenRefused(/^emptied before on 2031-05-02, when the trap did not stand/);
});

test('a part of a sample has the facts of the whole, whatever the order of writing, and parts of its own', () => {
  const whole = sample('S1', {host: 'Salix caprea', place: {locality: 'Heron wood'}});
  const {state} = given(part('S1.2.1', {of: 'S1.2', part: 'tray 2'}), part('S1.2', {share: 0.25}), whole);
  expect(state.samples.get('S1.2')).toMatchObject({of: 'S1', share: 0.25, host: 'Salix caprea'});
  expect(state.samples.get('S1.2.1')).toMatchObject({
    of: 'S1.2',
    part: 'tray 2',
    place: {locality: 'Heron wood'},
  });
  expect(state.samples.get('S1.2.1')!.share).toBeUndefined();
  given().when(part()).thenRefused('there is no sample S1');
});

test('a specimen of a part traces on to the field sample', () => {
  const {state} = given(unit(), sample(), part(), lot({pupa: 2}, {sample: 'S1.2'})).when({
    record: 'emergence',
    lot: 'A',
    at: day(1),
    adults: [{count: 1}],
  });
  const chain = trace(state, 'A-1');
  expect(chain.up[0]!.up[0]).toMatchObject({
    code: 'S1.2',
    kind: 'sample',
    up: [{code: 'S1', kind: 'sample'}],
  });
  expect(trace(state, 'S1').down).toMatchObject([{code: 'S1.2', down: [{code: 'A', down: [{code: 'A-1'}]}]}]);
});

test('a part whose lot still lives cannot lose its whole', () => {
  given(sample(), part(), unit(), lot({pupa: 2}, {sample: 'S1.2'}))
    .when({record: 'void', entry: 'e1'})
    .thenRefused(/^it would break what is recorded already/);
});

test('what was taken out of a sample dead traces to it without any lot', () => {
  const {state} = given(sample())
    .when({record: 'voucher', sample: 'S1', stage: 'adult', count: 12, together: true, taxon: 'Carabidae'})
    .when({record: 'voucher', sample: 'S1', stage: 'larva', count: 2})
    .thenHolds();
  expect(state.samples.get('S1')!.specimens).toEqual(['S1-v1', 'S1-v2', 'S1-v3']);
  expect(state.specimens.get('S1-v1')).toMatchObject({individuals: 12, lot: undefined, sample: 'S1'});
  expect(trace(state, 'S1-v2').up).toMatchObject([{code: 'S1', kind: 'sample'}]);
  given(sample())
    .when({record: 'voucher', sample: 'S1', at: day(-9)})
    .thenRefused(/is before sample S1 was collected/);
});

test('a caught female’s eggs make a lot of her sample', () => {
  const {state} = given(unit(), sample())
    .when(
      {record: 'voucher', sample: 'S1', stage: 'adult', sex: 'female', taxon: 'Pieris sp.', at: day(0)},
      lot({egg: 30}, {sample: undefined, from: {specimen: 'S1-v1'}, at: day(0)}),
    )
    .thenHolds();
  expect(state.lots.get('A')).toMatchObject({sample: 'S1', taxon: 'Pieris sp.', origin: {code: 'S1-v1'}});
});

test('by-catch and sorting are noted with the sample; the last word on sorting counts', () => {
  const {state} = given(sample()).when(
    {record: 'bycatch', sample: 'S1', what: 'common lizard', kind: 'reptile', alive: true, done: 'released'},
    {record: 'sorting', sample: 'S1', state: 'partly', at: day(1)},
    {record: 'sorting', sample: 'S1', state: 'sorted', at: day(2)},
  );
  expect(state.samples.get('S1')).toMatchObject({
    bycatch: [{count: 1, kind: 'reptile'}],
    sorting: {state: 'sorted'},
  });
  expect(state.history.map(({record}) => sentenceOf(record)).slice(1, 3)).toEqual([
    'By-catch in sample S1: 1 common lizard, alive, released',
    'Sample S1 sorted in part',
  ]);
});

test('cautions come with the method and with what the catch fell into', () => {
  const said = cautionsOf({method: 'pitfall', medium: 'glycol'}).join(' ');
  expect(said).toMatch(/look before you reach in/);
  expect(said).toMatch(/ethylene glycol: poisonous/);
  expect(cautionsOf({method: 'sticky', medium: 'none'}).join(' ')).toMatch(/toluene and xylene/);
  expect(cautionsOf({method: 'search', medium: 'none'})).toEqual([]);
});

test('a record that needs one of two origins says so', () => {
  expect(() => recordOf({record: 'voucher', count: 1})).toThrow(/either from a lot/);
});

test('how a trap stood is said in words', () => {
  const trap = {traps: 6, acrossCm: 9, bait: 'liver', baitSince: '2031-04-20', lastEmptied: '2031-04-29'};
  expect(trapInWords(trap)).toBe(
    '6 traps, across 9 cm, bait liver since 2031-04-20, last emptied 2031-04-29',
  );
  expect(trapInWords({widthCm: 15, turns: 2})).toBe('15 cm wide, wound 2 times');
  expect(trapInWords({})).toBe('');
});
