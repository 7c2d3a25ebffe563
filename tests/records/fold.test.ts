import {describe, expect, test} from 'vitest';
import {fold} from '../../src/records/fold.ts';
import {valueAt} from '../../src/records/state.ts';
import {at, batch, day, daybook, lot, sample, unit, type Written} from './daybook-of.ts';

const room = [unit(), unit('C2'), sample()];

const lotA = (...written: readonly Written[]) => fold(daybook(...room, ...written), at(9)).lots.get('A')!;

describe('a lot', () => {
  test('starts with the animals of its record, in its unit', () => {
    expect(lotA(lot({'larva-4': 18, 'larva-5': 6}))).toMatchObject({
      sample: 'S1',
      origin: {kind: 'sample', code: 'S1'},
      alive: {'larva-4': 18, 'larva-5': 6},
      tally: {started: 24},
      exact: true,
      stays: [{unit: 'C1', from: at(0)}],
      cohorts: [
        {how: 'started', at: at(0), stages: {'larva-4': 18, 'larva-5': 6}, progress: [0, 1], ages: 'mixed'},
      ],
    });
  });

  test('lives in one unit after another, until it is closed', () => {
    const moved = {record: 'move', lot: 'A', at: day(2), unit: 'C2'};
    expect(lotA(lot({pupa: 1}), moved).stays).toEqual([
      {unit: 'C1', from: at(0), to: at(2)},
      {unit: 'C2', from: at(2)},
    ]);
    const closed = lotA(lot({pupa: 1}), moved, {record: 'close', lot: 'A', at: day(4), reason: 'lost'});
    expect(closed.stays.at(-1)).toEqual({unit: 'C2', from: at(2), to: at(4)});
    expect(closed.closed).toEqual({at: at(4), reason: 'lost'});
  });

  test('of eggs laid here goes back to the sample of the female, and takes over her candidates', () => {
    const candidates = [{profile: 'pieris-rapae', weight: 1}];
    const entries = daybook(
      ...room,
      lot({pupa: 2}, {candidates}),
      {record: 'emergence', lot: 'A', at: day(1), adults: [{sex: 'female', count: 1}], codes: ['A-1']},
      {record: 'lot', code: 'F', from: {specimen: 'A-1'}, unit: 'C2', at: day(3), stages: {egg: 40}},
    );
    expect(fold(entries, at(9)).lots.get('F')).toMatchObject({
      sample: 'S1',
      origin: {kind: 'specimen', code: 'A-1'},
      candidates,
    });
  });
});

describe('a count', () => {
  const counted = (stages: Written, more = {}) => ({record: 'count', lot: 'A', at: day(2), stages, ...more});

  test('changes the stages and never the number alive', () => {
    const {alive, tally} = lotA(lot({'larva-5': 24}), counted({'larva-5': 15, pupa: 8}));
    expect(alive).toEqual({'larva-5': 16, pupa: 8});
    expect(tally).toMatchObject({started: 24, found: 0});
  });

  test('leaves those not counted in the stage they were last seen in', () => {
    const {alive} = lotA(lot({'larva-4': 3, 'larva-5': 20}), counted({'larva-5': 15, pupa: 5}));
    expect(alive).toEqual({'larva-4': 3, 'larva-5': 15, pupa: 5});
  });

  test('may correct a stage backwards', () => {
    expect(lotA(lot({prepupa: 4}), counted({'larva-5': 4})).alive).toEqual({'larva-5': 4});
  });

  test('beyond what is alive is booked as found, since history is never refused', () => {
    const {alive, tally} = lotA(lot({pupa: 4}), counted({pupa: 6}));
    expect([alive, tally.found]).toEqual([{pupa: 6}, 2]);
  });
});

describe('animals that leave', () => {
  const loss = (stage: string | undefined, count: number) =>
    JSON.parse(JSON.stringify({record: 'loss', lot: 'A', at: day(2), stage, count}));

  test.each([
    ['the stage named', 'larva-5', 2, {'larva-4': 5, 'larva-5': 3, pupa: 5}],
    ['the latest stage before it where it holds too few', 'larva-5', 7, {'larva-4': 3, pupa: 5}],
    ['any other where those hold too few', 'larva-5', 12, {pupa: 3}],
    ['the last of those before it where it holds none', 'prepupa', 1, {'larva-4': 5, 'larva-5': 4, pupa: 5}],
    ['any instar where a larva is named', 'larva', 6, {'larva-5': 4, pupa: 5}],
    ['the youngest where no stage is named', undefined, 6, {'larva-5': 4, pupa: 5}],
  ])('are taken from %s', (_, stage, count, left) => {
    expect(lotA(lot({'larva-4': 5, 'larva-5': 5, pupa: 5}), loss(stage, count)).alive).toEqual(left);
  });

  test('as adults leave the last stage first', () => {
    const emergence = {record: 'emergence', lot: 'A', at: day(2), adults: [{count: 6}]};
    expect(lotA(lot({'larva-5': 5, pupa: 5}), emergence).alive).toEqual({'larva-5': 4});
  });
});

describe('a hatch', () => {
  const hatch = (count: number) => ({record: 'hatch', lot: 'A', at: day(2), count});

  test('comes out of the eggs counted, and is seen as a change of stage', () => {
    const {alive, tally, sightings, cohorts} = lotA(lot({egg: 40}), hatch(30));
    expect(alive).toEqual({egg: 10, 'larva-1': 30});
    expect(tally.hatched).toBe(0);
    expect(sightings).toMatchObject([{kind: 'count', stages: {'larva-1': 30}, complete: false}]);
    expect(cohorts).toHaveLength(1);
  });

  test('beyond the eggs counted adds animals that have just begun their first stage', () => {
    const {alive, tally, cohorts} = lotA(lot({egg: 10}), hatch(30));
    expect(alive).toEqual({'larva-1': 30});
    expect(tally.hatched).toBe(20);
    expect(cohorts[1]).toMatchObject({how: 'hatched', stages: {'larva-1': 20}, progress: [0, 0]});
  });

  test('gives nymphs where the lot has nymphs', () => {
    expect(lotA(lot({'nymph-3': 1}), hatch(2)).alive).toEqual({'nymph-1': 2, 'nymph-3': 1});
    expect(lotA(lot({nymph: 1}), hatch(2)).alive).toEqual({nymph: 3});
  });
});

describe('an emergence', () => {
  const check = (days: number, found = 0) => ({record: 'check', lot: 'A', at: day(days), found});
  const emergence = (days: number, more = {}) => ({
    record: 'emergence',
    lot: 'A',
    at: day(days),
    adults: [{sex: 'female', count: 1}],
    ...more,
  });
  const sinceOf = (...written: readonly Written[]) =>
    lotA(lot({pupa: 9}), ...written).sightings.flatMap(seen =>
      seen.kind === 'emergence' ? [seen.since] : [],
    );

  test('happened since the last look, else since the lot began, else since the person says', () => {
    expect(sinceOf(emergence(3))).toEqual([at(0)]);
    expect(sinceOf(check(1), check(2), emergence(3))).toEqual([at(2)]);
    expect(sinceOf(emergence(2), emergence(3))).toEqual([at(0), at(2)]);
    expect(sinceOf(check(1), emergence(3, {since: day(2)}))).toEqual([at(2)]);
  });

  test('found at a look happened before that look', () => {
    expect(sinceOf(check(1), check(3, 2), emergence(3), emergence(3))).toEqual([at(1), at(1)]);
    expect(sinceOf({record: 'count', lot: 'A', at: day(1), stages: {pupa: 9}}, emergence(3))).toEqual([
      at(1),
    ]);
  });

  test('gives one specimen for each adult, with sex, fate and code', () => {
    const adults = [
      {sex: 'female', count: 2},
      {sex: 'male', count: 1},
    ];
    const {specimens} = fold(daybook(...room, lot({pupa: 9}), emergence(1, {adults, fate: 'killed'})), at(9));
    expect([...specimens.values()].map(({code, sex, fate, kind}) => [code, sex, fate, kind])).toEqual([
      ['A-1', 'female', 'killed', 'adult'],
      ['A-2', 'female', 'killed', 'adult'],
      ['A-3', 'male', 'killed', 'adult'],
    ]);
  });

  test('keeps every identification; the last is the present name', () => {
    const named = (days: number, taxon: string) => ({
      record: 'identification',
      specimen: 'A-1',
      taxon,
      at: day(days),
    });
    const entries = daybook(
      ...room,
      lot({pupa: 1}, {taxon: 'Pieris sp.'}),
      emergence(1),
      named(5, 'Pieris rapae'),
      named(3, 'Pieris napi'),
    );
    const nameAt = (days: number) => fold(entries, at(days)).specimens.get('A-1')?.taxon;
    expect([2, 4, 6].map(nameAt)).toEqual(['Pieris sp.', 'Pieris napi', 'Pieris rapae']);
    expect(fold(entries, at(6)).specimens.get('A-1')?.identifications).toHaveLength(2);
  });
});

describe('time', () => {
  test('entries dated after the instant of the question are left out', () => {
    const entries = daybook(...room, lot({pupa: 3}), {record: 'loss', lot: 'A', at: day(3), count: 1});
    expect(fold(entries, at(2)).lots.get('A')!.alive).toEqual({pupa: 3});
    expect(fold(entries, at(-1)).lots.size).toBe(0);
  });

  test('void entries are left out, whenever they were taken back', () => {
    const entries = daybook(
      ...room,
      lot({pupa: 3}),
      {record: 'loss', lot: 'A', at: day(1), count: 1},
      {record: 'void', entry: 'e5'},
    );
    const state = fold(entries, at(2));
    expect(state.lots.get('A')!.alive).toEqual({pupa: 3});
    expect([...state.voided]).toEqual(['e5']);
    expect(state.entries.map(({id}) => id)).toEqual(['e1', 'e2', 'e3', 'e4']);
    expect(state.history).toHaveLength(6);
  });

  test('a unit holds from the beginning; a later record changes the fields it gives from its time on', () => {
    const change = {...unit(), place: 'rack B/1', setPoints: {constant: 25}, at: day(4)};
    const {units} = fold(daybook({...unit(), logger: 'L1', setPoints: {constant: 22}}, change), at(9));
    const setAt = (days: number) => valueAt(units.get('C1')!, at(days));
    expect(setAt(-900)).toMatchObject({place: 'rack A/1', logger: 'L1', setPoints: {constant: 22}});
    expect(setAt(4)).toMatchObject({place: 'rack B/1', logger: 'L1', setPoints: {constant: 25}});
  });

  test('a change of a unit may be dated before the day its first record was written', () => {
    const entries = batch(
      'r1',
      {...unit(), setPoints: {constant: 22}},
      {...unit(), setPoints: {constant: 25}, at: day(-3)},
    );
    const {units} = fold(entries, at(9));
    expect(valueAt(units.get('C1')!, at(-4)).setPoints).toEqual({constant: 22});
    expect(valueAt(units.get('C1')!, at(1)).setPoints).toEqual({constant: 25});
  });

  test('a later record of a unit or logger needs to give only what changes', () => {
    const {units, loggers} = fold(
      daybook(
        {...unit(), volumeLitres: 12},
        {record: 'unit', code: 'C1', setPoints: {constant: 25}, at: day(3)},
        {record: 'logger', code: 'L', kind: 'hand', name: 'shelf'},
        {record: 'logger', code: 'L', maxGapHours: 8, at: day(3)},
      ),
      at(9),
    );
    const given = {type: 'cage', place: 'rack A/1', volumeLitres: 12};
    expect(valueAt(units.get('C1')!, at(2))).toEqual({code: 'C1', ...given});
    expect(valueAt(units.get('C1')!, at(4))).toEqual({code: 'C1', ...given, setPoints: {constant: 25}});
    expect(valueAt(loggers.get('L')!, at(4))).toEqual({
      ...{code: 'L', kind: 'hand', name: 'shelf', maxGapHours: 8},
    });
  });

  test('a logger has the gap of its kind unless it says another', () => {
    const logger = (code: string, kind: string, more = {}) => ({record: 'logger', code, kind, ...more});
    const {loggers} = fold(
      daybook(logger('L', 'automatic'), logger('H', 'hand'), logger('S', 'automatic', {maxGapHours: 1})),
      at(0),
    );
    expect(['L', 'H', 'S'].map(code => valueAt(loggers.get(code)!, 0).maxGapHours)).toEqual([3, 26, 1]);
  });
});

test('readings, water, masks, care and acknowledged alerts are kept in order of time', () => {
  const state = fold(
    daybook(
      ...room,
      lot({pupa: 1}),
      {record: 'reading', logger: 'L', at: day(2), temperature: 21},
      {record: 'reading', logger: 'L', at: day(1), temperature: 20},
      {record: 'extremes', logger: 'M', from: day(0), to: day(1), minimum: 17, maximum: 25},
      {record: 'water', unit: 'C1', at: day(1), temperature: 18, ph: 7.8},
      {record: 'mask', logger: 'L', at: day(2), from: day(0), to: day(1), why: 'in the sun'},
      {record: 'care', lot: 'A', task: 'feed', at: day(1), seen: {mould: false}},
      {record: 'skip', unit: 'C1', task: 'clean', at: day(1), why: 'moulting'},
      {record: 'acknowledge', alert: 'silent-L', at: day(1), done: 'new battery'},
    ),
    at(9),
  );
  expect(state.handReadings.map(({temperature}) => temperature)).toEqual([20, 21]);
  expect(state.extremes).toMatchObject([{from: at(0), to: at(1), minimum: 17, maximum: 25}]);
  expect(state.water).toMatchObject([{unit: 'C1', temperature: 18, values: {ph: 7.8}}]);
  expect(state.masks).toMatchObject([{logger: 'L', from: at(0), lift: false}]);
  expect(state.care).toMatchObject([
    {task: 'feed', lot: 'A', seen: {mould: false}, by: 'Ida'},
    {task: 'clean', unit: 'C1', skipped: 'moulting'},
  ]);
  expect(state.acknowledged.get('silent-L')).toEqual({at: at(1), done: 'new battery'});
  expect(state.lots.get('A')!.entries.map(({record}) => record.record)).toEqual(['lot', 'care']);
});

test('an empty daybook is an empty room', () => {
  const state = fold([], at(0));
  expect([state.lots.size, state.units.size, state.entries.length]).toEqual([0, 0, 0]);
});
