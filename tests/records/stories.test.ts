// Cases as they happen in a rearing room. People, places, lots and dates are invented; the sums are hand sums.
import {expect, test} from 'vitest';
import {balanceInWords, balanceOf} from '../../src/records/balance.ts';
import {trace} from '../../src/records/trace.ts';
import {day, lot, sample, unit} from './daybook-of.ts';
import {given} from './daybook-spec.ts';

test('a lot is split: its sum holds, and the new lot traces to the same sample', () => {
  const room = given(
    unit(),
    unit('C2'),
    sample('S31-0061'),
    lot({larva: 60}, {code: 'R31-021', sample: 'S31-0061'}),
  );
  const about = {lot: 'R31-021', at: day(2)};
  const split = room
    .when(
      {...about, record: 'loss', count: 6, cause: 'dead'},
      {...about, record: 'voucher', count: 4},
      {...about, record: 'parasitoid', count: 3, hosts: 3},
      {...about, record: 'loss', count: 1, cause: 'escaped'},
      {...about, record: 'split', into: 'R31-021.2', unit: 'C2', stages: {larva: 20}},
    )
    .thenHolds();
  const parent = split.state.lots.get('R31-021')!;
  expect(balanceInWords(parent)).toBe(
    '60 started = 26 alive + 3 parasitised + 7 lost + 4 preserved + 20 split off',
  );
  expect(split.state.lots.get('R31-021.2')).toMatchObject({
    sample: 'S31-0061',
    alive: {larva: 20},
    origin: {kind: 'lot', code: 'R31-021', how: 'split'},
    cohorts: [{how: 'split', fromLot: 'R31-021'}],
    stays: [{unit: 'C2'}],
  });

  const counted = {record: 'count', lot: 'R31-021', at: day(3), stages: {larva: 24}, complete: true};
  split.when(counted).thenRefused(/24 counted where 26 are alive \(60 started = 26 alive/);
  const missing = {record: 'loss', lot: 'R31-021', at: day(3), count: 2, cause: 'missing'};
  expect(split.when(counted, missing).thenHolds().state.lots.get('R31-021')!.alive).toEqual({larva: 24});
});

test('parasitoids are products of their hosts, not survivors', () => {
  const room = given(unit(), sample(), lot({'larva-5': 12}, {code: 'R'}));
  room
    .when({record: 'emergence', lot: 'R', animal: '07', at: day(4), adults: [{count: 31}]})
    .thenRefused('31 adults of the one animal 07');
  const {state} = room
    .when(
      {record: 'parasitoid', lot: 'R', animal: '07', at: day(4), count: 31, taxon: 'Braconidae'},
      {record: 'parasitoid', lot: 'R', animal: '02', at: day(5), count: 1, taxon: 'Tachinidae'},
      {record: 'parasitoid', lot: 'R', animal: '11', at: day(5), count: 1},
      {record: 'loss', lot: 'R', animal: '04', at: day(5), count: 1, cause: 'dead'},
      {record: 'emergence', lot: 'R', at: day(6), adults: [{sex: 'female', count: 8}]},
    )
    .thenHolds();
  const lotR = state.lots.get('R')!;
  expect(balanceInWords(lotR)).toBe('12 started = 0 alive + 8 emerged + 3 parasitised + 1 lost');
  expect(lotR.specimens).toHaveLength(8 + 33);
  expect(state.specimens.get('R-p32')).toMatchObject({taxon: 'Tachinidae', animal: '02', kind: 'parasitoid'});
});

test('a lot ends: 27 emerged, 2 dead, 1 parasitised, nothing alive, closed without a question', () => {
  const {state} = given(unit(), sample(), lot({'larva-5': 30}))
    .when({record: 'count', lot: 'A', at: day(1), stages: {prepupa: 18, 'larva-5': 12}})
    .when({record: 'count', lot: 'A', at: day(3), stages: {prepupa: 30}})
    .when({record: 'emergence', lot: 'A', at: day(8), adults: [{count: 27}]})
    .when({record: 'loss', lot: 'A', at: day(8), stage: 'pupa', count: 2, cause: 'dead'})
    .when({record: 'parasitoid', lot: 'A', at: day(9), count: 1, hostStage: 'pupa'})
    .when({record: 'close', lot: 'A'})
    .thenHolds();
  expect(balanceOf(state.lots.get('A')!)).toMatchObject({alive: {}, emerged: 27, lost: 2, parasitised: 1});
  expect(state.lots.get('A')!.sightings.slice(0, 2)).toMatchObject([
    {kind: 'count', complete: true},
    {kind: 'count', complete: true},
  ]);
});

test('a mayfly is one animal: subimago, imago, one specimen with its skins and the interval of its emergence', () => {
  const room = given(unit(), sample(), lot({nymph: 1}, {code: 'R31-047'}))
    .when({record: 'check', lot: 'R31-047', at: day(4, '18:00')})
    .when({
      record: 'emergence',
      lot: 'R31-047',
      animal: '05',
      at: day(5, '06:40'),
      adults: [{count: 1}],
      as: 'subimago',
      exuviae: {code: 'A31-0311a', association: 1},
      codes: ['A31-0311'],
    })
    .when({record: 'imago', specimen: 'A31-0311', at: day(6, '05:10')})
    .thenHolds();
  expect(room.state.lots.get('R31-047')).toMatchObject({alive: {}, tally: {started: 1, emerged: 1}});
  expect(room.state.specimens.get('A31-0311')).toMatchObject({
    since: Date.parse(day(4, '18:00')),
    at: Date.parse(day(5, '06:40')),
    subimagoAt: Date.parse(day(5, '06:40')),
    imagoAt: Date.parse(day(6, '05:10')),
    exuviae: {code: 'A31-0311a', association: 1},
  });
  expect(trace(room.state, 'A31-0311a')).toMatchObject({code: 'A31-0311', up: [{code: 'R31-047'}]});
  room.when({record: 'imago', specimen: 'A31-0311'}).thenRefused(/has been an imago since/);
  room
    .when(lot({nymph: 1}, {code: 'B'}), {record: 'emergence', lot: 'B', at: day(-3), adults: [{count: 1}]})
    .thenRefused(/is before the animals of lot B were collected: sample S1 is of/);
});
