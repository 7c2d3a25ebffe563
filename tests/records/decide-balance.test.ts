import {describe, expect, test} from 'vitest';
import {day, lot, sample, unit} from './daybook-of.ts';
import {given} from './daybook-spec.ts';

const thirty = () =>
  given(unit(), sample(), lot({pupa: 30})).when(
    {record: 'emergence', lot: 'A', at: day(2), adults: [{sex: 'female', count: 5}]},
    {record: 'loss', lot: 'A', at: day(3), stage: 'pupa', count: 2, cause: 'dead'},
  );

const count = (pupa: number, more = {}) => ({record: 'count', lot: 'A', at: day(4), stages: {pupa}, ...more});

describe('a count', () => {
  test('above what is alive is refused with the sum', () => {
    thirty()
      .when(count(24))
      .thenRefused(
        '24 counted where 23 are alive (30 started = 23 alive + 5 emerged + 2 lost)',
        'record 1 (count)',
      );
  });

  test('that is complete and below what is alive is refused with the sum', () => {
    thirty()
      .when(count(21, {complete: true}))
      .thenRefused(/^all were looked at and 21 counted where 23 are alive \(30 started = 23 alive/);
  });

  test('of a part of the animals changes no number', () => {
    const {state} = thirty().when(count(20)).thenHolds();
    expect(state.lots.get('A')!.alive).toEqual({pupa: 23});
    expect(state.lots.get('A')!.sightings.at(-1)).toMatchObject({kind: 'count', complete: false});
  });

  test('of everything alive is complete without saying so', () => {
    const {state} = thirty().when(count(23)).thenHolds();
    expect(state.lots.get('A')!.sightings.at(-1)).toMatchObject({kind: 'count', complete: true});
  });

  const missing = {record: 'loss', lot: 'A', at: day(4), count: 2, cause: 'missing'};
  const found = {record: 'found', lot: 'A', at: day(4), stage: 'pupa', count: 1};

  test('is explained by a loss before or after it in the same batch', () => {
    const before = thirty()
      .when(missing, count(21, {complete: true}))
      .thenHolds();
    const after = thirty()
      .when(count(21, {complete: true}), missing)
      .thenHolds();
    expect(before.state.lots.get('A')!.alive).toEqual({pupa: 21});
    expect(after.state.lots.get('A')!.alive).toEqual({pupa: 21});
  });

  test('is explained by an animal found before or after it in the same batch', () => {
    for (const order of [
      [found, count(24)],
      [count(24), found],
    ]) {
      const {state} = thirty()
        .when(...order)
        .thenHolds();
      expect(state.lots.get('A')).toMatchObject({alive: {pupa: 24}, tally: {found: 1}});
    }
  });

  test('is not explained by too small a loss', () => {
    thirty()
      .when(count(20, {complete: true}), missing)
      .thenRefused(/20 counted where 23 are alive/);
  });
});

describe('animals cannot leave that are not there', () => {
  test.each([
    [{record: 'emergence', adults: [{count: 24}]}, '24 emerged where 23 are alive'],
    [{record: 'loss', count: 24}, '24 lost where 23 are alive'],
    [{record: 'voucher', count: 24}, '24 preserved where 23 are alive'],
    [{record: 'parasitoid', count: 1, hosts: 24}, '24 parasitised where 23 are alive'],
    [{record: 'split', into: 'B', stages: {pupa: 24}}, '24 split off where 23 are alive'],
  ])('%o', (record, words) => {
    thirty()
      .when({...record, lot: 'A', at: day(4)})
      .thenRefused(`${words} (30 started = 23 alive + 5 emerged + 2 lost)`);
  });

  test('also one by one in a single batch: the record that oversteps is named', () => {
    const one = {record: 'loss', lot: 'A', at: day(4), count: 10};
    thirty().when(one, one, one).thenRefused('10 lost where 3 are alive', 'record 3 (loss)');
  });

  test('many parasitoids may come out of one host', () => {
    const {state} = thirty()
      .when({record: 'parasitoid', lot: 'A', at: day(4), count: 31})
      .thenHolds();
    expect(state.lots.get('A')).toMatchObject({alive: {pupa: 22}, tally: {parasitised: 1}});
    expect(state.specimens.get('A-p31')).toMatchObject({kind: 'parasitoid', lot: 'A'});
  });
});

describe('what was recorded already', () => {
  const all = () =>
    given(unit(), sample(), lot({pupa: 10})).when({
      record: 'emergence',
      lot: 'A',
      at: day(5),
      adults: [{count: 8}],
    });

  test('is not broken by an entry dated back', () => {
    all()
      .when({record: 'loss', lot: 'A', at: day(2), count: 3})
      .thenRefused(
        /^it would break what is recorded already: emergence of 2031-05-06T09:00:00Z \(entry e4\): 8 emerged where 7 are alive/,
        'record 1 (loss)',
      );
  });

  test('lets an entry dated back stand that leaves it right', () => {
    const {state} = all()
      .when({record: 'loss', lot: 'A', at: day(2), count: 2})
      .thenHolds();
    expect(state.lots.get('A')!.alive).toEqual({});
  });

  test('is not broken by voiding what it builds on', () => {
    const found = given(unit(), sample(), lot({pupa: 2}))
      .when({record: 'found', lot: 'A', at: day(1), stage: 'pupa', count: 1})
      .when({record: 'emergence', lot: 'A', at: day(2), adults: [{count: 3}]});
    found.when({record: 'void', entry: 'e4'}).thenRefused(/3 emerged where 2 are alive/, 'record 1 (void)');
    found.when({record: 'void', entry: 'e4'}, {record: 'void', entry: 'e5'}).thenHolds();
  });

  test('may lose its lot, sample or unit only together with it', () => {
    for (const entry of ['e1', 'e2', 'e3'])
      all()
        .when({record: 'void', entry})
        .thenRefused(/it would break what is recorded already/);
    all()
      .when(...['e3', 'e4'].map(entry => ({record: 'void', entry})))
      .thenHolds();
  });

  test('may be corrected by voiding it and entering it anew in one batch', () => {
    const {state} = all()
      .when({record: 'void', entry: 'e3'}, lot({pupa: 12}))
      .thenHolds();
    expect(state.lots.get('A')!.alive).toEqual({pupa: 4});
  });
});

describe('lots whose number is not exact', () => {
  test('an estimated lot takes a count above what is alive as animals found', () => {
    const {state} = given(unit(), sample(), lot({'larva-2': 40}, {counted: 'estimated'}))
      .when({record: 'count', lot: 'A', at: day(1), stages: {'larva-2': 10, 'larva-3': 35}})
      .thenHolds();
    const {alive, tally, exact} = state.lots.get('A')!;
    expect({alive, found: tally.found, exact}).toEqual({
      alive: {'larva-2': 10, 'larva-3': 35},
      found: 5,
      exact: false,
    });
  });

  test('an estimated lot is not counted down without a loss that says why', () => {
    given(unit(), sample(), lot({'larva-2': 40}, {counted: 'estimated'}))
      .when({record: 'count', lot: 'A', at: day(1), stages: {'larva-2': 36}, complete: true})
      .thenRefused(/36 counted where 40 are alive/);
  });

  test('hidden animals come to light as they emerge', () => {
    const galls = {...lot({}), stages: undefined, material: {what: 'galls', amount: 40, unit: 'pieces'}};
    const {state} = given(unit(), sample(), JSON.parse(JSON.stringify(galls)))
      .when({record: 'emergence', lot: 'A', at: day(1), adults: [{count: 3}]})
      .thenHolds();
    expect(state.lots.get('A')).toMatchObject({
      alive: {},
      exact: false,
      tally: {started: 0, found: 3, emerged: 3},
    });
  });

  test('only a person closes them, with a reason', () => {
    const unknown = given(unit(), sample(), lot({'larva-1': 0}, {counted: 'unknown'}));
    unknown
      .when({record: 'close', lot: 'A', at: day(1)})
      .thenRefused(/nobody knows whether lot A still holds/);
    unknown.when({record: 'close', lot: 'A', at: day(1), reason: 'wood rotten'}).thenHolds();
  });
});
