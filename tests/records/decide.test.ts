import {describe, expect, test} from 'vitest';
import {day, lot, sample, unit} from './daybook-of.ts';
import {given} from './daybook-spec.ts';

const room = () => given(unit(), sample());
const reared = () =>
  room().when(lot({pupa: 5}), {record: 'emergence', lot: 'A', at: day(1), adults: [{count: 1}]});

describe('codes', () => {
  test('that nobody knows are refused with the nearest one known', () => {
    const {refusal} = room().when(lot({pupa: 5}, {unit: 'C11'}));
    expect(refusal).toMatchObject({
      what: 'there is no unit C11',
      where: 'record 1 (lot)',
      mend: 'Nearest known is C1. Correct the code, or record the unit first or in the same batch.',
    });
  });

  test.each([
    [lot({pupa: 1}, {code: 'N', sample: 'S9'}), 'there is no sample S9'],
    [lot({pupa: 1}, {code: 'N', candidates: [{profile: 'pieris-napi'}]}), 'there is no profile pieris-napi'],
    [lot({egg: 1}, {code: 'N', sample: undefined, from: {specimen: 'A-7'}}), 'there is no specimen A-7'],
    [{record: 'check', lot: 'B'}, 'there is no lot B'],
    [{record: 'move', lot: 'A', unit: 'C2'}, 'there is no unit C2'],
    [{record: 'merge', lot: 'A', into: 'Z'}, 'there is no lot Z'],
    [{record: 'reading', logger: 'L1', temperature: 20}, 'there is no logger L1'],
    [{record: 'identification', specimen: 'A-9', taxon: 'Pieris rapae'}, 'there is no specimen A-9'],
    [{record: 'imago', specimen: 'A-9'}, 'there is no specimen A-9'],
    [{record: 'note', about: 'X', text: 'odd'}, 'nothing has the code X'],
    [{record: 'care', unit: 'C1', lot: 'B', task: 'feed'}, 'there is no lot B'],
    [{record: 'rule', code: 'r', task: 'feed', for: {lot: 'B'}, every: {days: 2}}, 'there is no lot B'],
    [{record: 'void', entry: 'e99'}, 'there is no entry e99'],
  ])('%o: unknown', (record, what) => {
    reared()
      .when(JSON.parse(JSON.stringify(record)))
      .thenRefused(what);
  });

  test('of a new unit or logger come with what it is; later ones with what changes', () => {
    given()
      .when({record: 'unit', code: 'C7', place: 'rack A/7'})
      .thenRefused('unit C7 is new and stands without its type');
    given()
      .when({record: 'unit', code: 'C7'})
      .thenRefused('unit C7 is new and stands without its type and its place');
    given().when({record: 'logger', code: 'L'}).thenRefused('logger L is new and stands without its kind');
    const {refusal} = given(unit()).when({record: 'unit', code: 'C1', offsetC: 1, at: day(1)});
    expect(refusal).toBeUndefined();
  });

  test('of samples, lots and specimens are never used twice', () => {
    for (const again of [
      sample(),
      lot({pupa: 1}),
      lot({pupa: 1}, {code: 'S1'}),
      lot({pupa: 1}, {code: 'A-1'}),
    ])
      reared()
        .when(again)
        .thenRefused(/^the code (S1|A|A-1) is in use already/);
    reared()
      .when(lot({pupa: 1}, {code: 'B'}), lot({pupa: 1}, {code: 'B'}))
      .thenRefused('the code B is in use already', 'record 2 (lot)');
    reared()
      .when({record: 'emergence', lot: 'A', adults: [{count: 2}], codes: ['x', 'x']})
      .thenRefused('the code x is given twice');
    reared()
      .when({record: 'emergence', lot: 'A', adults: [{count: 2}], codes: ['x']})
      .thenRefused('1 codes for 2 specimens');
  });

  test('of specimens run on and are not used again after a void', () => {
    const adult = {record: 'emergence', lot: 'A', at: day(2), adults: [{count: 1}]};
    const {state} = reared()
      .when({record: 'void', entry: 'e4'})
      .when(adult, adult, {record: 'voucher', lot: 'A', at: day(2), stage: 'pupa'})
      .thenHolds();
    expect([...state.specimens.keys()]).toEqual(['A-2', 'A-3', 'A-v1']);
  });

  test('may be named before they come to be, within one batch', () => {
    const {state} = given(
      {record: 'identification', specimen: 'B-1', taxon: 'Pieris rapae', at: day(3)},
      {record: 'emergence', lot: 'B', at: day(2), adults: [{count: 1}]},
      {record: 'split', lot: 'A', into: 'B', at: day(2), stages: {pupa: 2}},
      lot({pupa: 5}),
      sample(),
      unit(),
    );
    expect(state.specimens.get('B-1')).toMatchObject({lot: 'B', taxon: 'Pieris rapae'});
    expect(state.lots.get('B')).toMatchObject({sample: 'S1', alive: {pupa: 1}});
  });
});

describe('dates', () => {
  test.each([
    [{record: 'check', lot: 'A', at: day(11)}, /^2031-05-12T09:00:00Z lies in the future; now is 2031-05-11/],
    [
      {record: 'check', lot: 'A', at: day(2), recordedAt: day(1)},
      /^written down at 2031-05-02T09:00:00Z, which is/,
    ],
    [{record: 'check', lot: 'A', at: day(2), recordedAt: day(12)}, /^written down at/],
    [{record: 'check', lot: 'A', at: day(-1)}, 'is before lot A began'],
    [lot({pupa: 1}, {code: 'B', at: day(-5)}), 'before sample S1 was collected (2031-04-29)'],
    [
      sample('S2', {collected: {from: '2031-05-09', to: '2031-05-01'}}),
      'collecting ends (2031-05-01) before',
    ],
    [sample('S2', {collected: {from: '2031-05-12'}}), 'collected 2031-05-12, which lies in the future'],
    [sample('S2', {at: day(-9)}), 'before it was collected'],
    [
      {record: 'emergence', lot: 'A', at: day(2), since: day(3), adults: [{count: 1}]},
      'is later than the find',
    ],
    [{record: 'identification', specimen: 'A-1', taxon: 'P', on: '2031-05-12'}, 'identified on 2031-05-12'],
    [{record: 'identification', specimen: 'A-1', taxon: 'P', at: day(0)}, 'is before A-1 was found'],
    [
      {record: 'mask', logger: 'L1', from: day(2), to: day(1), why: 'in the sun'},
      'it ends (2031-05-02T09:00:00Z) before it begins (2031-05-03T09:00:00Z)',
    ],
    [{record: 'imago', specimen: 'A-1'}, 'A-1 was not recorded as a subimago'],
    [{record: 'calendar', closed: [{from: '2031-05-09', to: '2031-05-08'}]}, 'closed from 2031-05-09'],
    [{record: 'rule', code: 'r', task: 'feed', every: {days: 4}, latestDays: 3}, 'do not follow each other'],
  ])('%o', (record, what) => {
    reared().when(record).thenRefused(what);
  });
});

describe('a lot', () => {
  test('cannot begin from a sample that met a killing agent', () => {
    for (const medium of ['ethanol', 'ethyl-acetate', 'formalin', 'other'])
      given(unit(), sample('S1', {medium}))
        .when(lot({pupa: 1}, {foundAlive: true}))
        .thenRefused(`sample S1 was caught in ${medium}, which leaves nothing alive`);
  });

  test('begins from a trap with water only when its animals were found alive', () => {
    const wet = given(unit(), sample('S1', {medium: 'water-detergent'}));
    wet.when(lot({pupa: 1})).thenRefused(/caught in water-detergent, where few stay alive/);
    wet.when(lot({pupa: 1}, {foundAlive: true})).thenHolds();
  });

  test('that is closed takes no more entries about its animals, but names and notes', () => {
    const closed = reared().when({record: 'close', lot: 'A', at: day(3), reason: 'mouldy'});
    closed
      .when({record: 'count', lot: 'A', at: day(4), stages: {pupa: 4}})
      .thenRefused(/^lot A was closed 2031-05-04/);
    closed.when({record: 'loss', lot: 'A', at: day(2), count: 1}).thenHolds();
    closed
      .when(
        {record: 'identification', specimen: 'A-1', taxon: 'Pieris rapae'},
        {record: 'note', about: 'A', text: 'kept the box'},
      )
      .thenHolds();
    closed
      .when({record: 'void', entry: 'e5'})
      .when({record: 'check', lot: 'A', at: day(4)})
      .thenHolds();
  });

  test('is closed without a reason only when nothing is alive', () => {
    reared().when({record: 'close', lot: 'A'}).thenRefused('4 of lot A are alive as far as anybody knows');
    reared()
      .when({record: 'loss', lot: 'A', at: day(2), count: 4, cause: 'dead'}, {record: 'close', lot: 'A'})
      .thenHolds();
  });

  test('merges only within its field sample, and then lives on in the other lot', () => {
    const two = room().when(
      sample('S2'),
      lot({pupa: 5}),
      lot({pupa: 3}, {code: 'B', sample: 'S2'}),
      lot({pupa: 2}, {code: 'C'}),
    );
    two.when({record: 'merge', lot: 'B', into: 'A'}).thenRefused(/B comes from sample S2 and A from S1/);
    two.when({record: 'merge', lot: 'A', into: 'A'}).thenRefused('cannot merge into itself');
    const merged = two.when({record: 'merge', lot: 'C', into: 'A', at: day(2)}).thenHolds();
    merged.when({record: 'check', lot: 'C', at: day(3)}).thenRefused(/merged into A/);
    expect(merged.state.lots.get('A')).toMatchObject({alive: {pupa: 7}, tally: {mergedIn: 2}});
    expect(merged.state.lots.get('A')!.cohorts.map(({how, fromLot}) => [how, fromLot])).toEqual([
      ['started', undefined],
      ['merged', 'C'],
    ]);
    expect(merged.state.lots.get('C')).toMatchObject({alive: {}, mergedInto: 'A', tally: {mergedOut: 2}});
  });

  test('splits off some animals, not none', () => {
    room()
      .when(lot({pupa: 1}), {record: 'split', lot: 'A', into: 'B', at: day(1), stages: {pupa: 0}})
      .thenRefused('no animals are split off', 'record 2 (split)');
  });

  test('of eggs laid here begins after the female emerged, or after the lot she lives in began', () => {
    const eggs = (from: object, days: number) => {
      return {record: 'lot', code: 'F', from, unit: 'C1', at: day(days), stages: {egg: 9}};
    };
    reared()
      .when(eggs({specimen: 'A-1'}, 0))
      .thenRefused(/^the lot begins .*, before A-1 emerged/);
    reared()
      .when(eggs({lot: 'A'}, -1))
      .thenRefused(/before lot A itself began/);
    reared()
      .when(eggs({specimen: 'A-1'}, 2))
      .thenHolds();
  });

  test('shares a unit with another one', () => {
    room()
      .when(lot({pupa: 1}), lot({pupa: 1}, {code: 'B'}))
      .thenHolds();
  });
});

describe('a batch', () => {
  test('is refused as a whole, whichever of its records is bad', () => {
    const good = [1, 2, 3].map(n => ({record: 'check', lot: 'A', at: day(n)}));
    const bad = {record: 'loss', lot: 'A', at: day(2), count: 99};
    for (let position = 0; position <= good.length; position++) {
      const outcome = reared().when(...good.slice(0, position), bad, ...good.slice(position));
      outcome.thenRefused('99 lost where 4 are alive', `record ${position + 1} (loss)`);
      expect(outcome.entries).toHaveLength(4);
    }
  });

  test('may void an entry only once', () => {
    const gone = reared().when({record: 'void', entry: 'e4'});
    gone.when({record: 'void', entry: 'e4'}).thenRefused('entry e4 is void already');
    reared()
      .when({record: 'void', entry: 'e4'}, {record: 'void', entry: 'e4'})
      .thenRefused('entry e4 is void already', 'record 2 (void)');
  });

  test('may void a void, and what it took back counts again', () => {
    const {state} = reared()
      .when({record: 'void', entry: 'e4'})
      .when({record: 'void', entry: 'e5'})
      .thenHolds();
    expect(state.lots.get('A')!.alive).toEqual({pupa: 4});
  });
});

test('an animal followed by itself ends once', () => {
  const single = room()
    .when(lot({pupa: 3}))
    .when({record: 'emergence', lot: 'A', animal: '07', at: day(2), adults: [{count: 1}]});
  single
    .when({record: 'loss', lot: 'A', animal: '07', at: day(3), count: 1})
    .thenRefused('animal 07 of lot A has its end already (emergence, entry e4)');
});
