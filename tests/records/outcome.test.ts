// What became of a lot: shares with both their numbers, days in a stage, animals followed singly.
import {expect, test} from 'vitest';
import {animalsOf} from '../../src/records/animals.ts';
import {balanceInWords, exactness} from '../../src/records/balance.ts';
import {outcomeOf} from '../../src/records/outcome.ts';
import {day, greenwich, lot, sample, unit} from './daybook-of.ts';
import {given} from './daybook-spec.ts';

const about = {lot: 'A', at: day(4)};

test('survival leaves out what was preserved, split off and given away', () => {
  const {state} = given(unit(), sample(), lot({larva: 60})).when(
    {...about, record: 'loss', count: 6, cause: 'dead'},
    {...about, record: 'loss', count: 3, cause: 'given'},
    {...about, record: 'voucher', count: 4},
    {...about, record: 'split', into: 'B', stages: {larva: 20}},
    {
      ...about,
      record: 'emergence',
      adults: [
        {sex: 'female', count: 9},
        {sex: 'male', count: 6},
      ],
    },
  );
  const outcome = outcomeOf(state.lots.get('A')!, state, greenwich);
  expect(outcome.survival).toEqual({count: 15, of: 60 - 4 - 20 - 3, share: 15 / 33});
  expect(outcome.females).toEqual({count: 9, of: 15, share: 0.6});
  expect(outcome.losses).toEqual({dead: 6, given: 3});
});

test('parasitism stands by all hosts and by those whose end is known: 3 of 12, 3 of 11', () => {
  const {state} = given(unit(), sample(), lot({larva: 12})).when(
    {...about, record: 'parasitoid', count: 31, hosts: 1},
    {...about, record: 'parasitoid', count: 2, hosts: 2},
    {...about, record: 'loss', count: 1, cause: 'dead'},
    {...about, record: 'emergence', adults: [{count: 8}]},
  );
  const {parasitism} = outcomeOf(state.lots.get('A')!, state, greenwich);
  expect(parasitism.ofAll.share).toBe(0.25);
  expect(parasitism.ofKnown.share).toBeCloseTo(0.2727, 4);
});

test('the life table follows the animals from stage to stage', () => {
  const {state} = given(unit(), sample(), lot({'larva-4': 10, 'larva-5': 10}))
    .when({...about, record: 'loss', stage: 'larva-4', count: 2, cause: 'dead'})
    .when({record: 'count', lot: 'A', at: day(5), stages: {'larva-5': 18}})
    .when({record: 'parasitoid', lot: 'A', at: day(5), hostStage: 'larva-5', count: 9, hosts: 3})
    .when({record: 'count', lot: 'A', at: day(7), stages: {pupa: 15}})
    .when({record: 'emergence', lot: 'A', at: day(9), adults: [{count: 12}]});
  const {lifeTable} = outcomeOf(state.lots.get('A')!, state, greenwich);
  expect(
    lifeTable!.rows.map(({stage, entered, died, parasitised, alive}) => [
      stage,
      entered,
      died,
      parasitised,
      alive,
    ]),
  ).toEqual([
    ['larva-4', 10, 2, 0, 0],
    ['larva-5', 18, 0, 3, 0],
    ['pupa', 15, 0, 0, 3],
  ]);
  expect(lifeTable!.survival).toBeCloseTo(0.8 * (15 / 18));
});

test('half of the animals had left a stage between two looks; half had entered it between two others', () => {
  const {state} = given(unit(), sample(), lot({'larva-5': 10}))
    .when({record: 'count', lot: 'A', at: day(2), stages: {pupa: 10}})
    .when({record: 'check', lot: 'A', at: day(8)})
    .when({record: 'emergence', lot: 'A', at: day(9), adults: [{count: 10}]});
  const [pupa] = outcomeOf(state.lots.get('A')!, state, greenwich).durations;
  // Entered half way between day 0 and day 2; the last count of all before the adults was on day 2.
  expect(pupa).toMatchObject({stage: 'pupa', how: 'by halves', animals: 10});
  expect(pupa!.days).toBeCloseTo((2 + 9) / 2 - 1);
});

test('an animal followed by itself has its own stages, weights and end', () => {
  const {state} = given(unit(), sample(), lot({'larva-4': 2}))
    .when({record: 'note', about: 'A', animal: '1', at: day(0), weightMg: 120, photo: 'a.jpg'})
    .when({record: 'count', lot: 'A', animal: '1', at: day(1), stages: {'larva-4': 1}})
    .when({record: 'count', lot: 'A', animal: '1', at: day(3), stages: {'larva-5': 1}})
    .when({record: 'count', lot: 'A', animal: '1', at: day(7), stages: {pupa: 1}})
    .when({record: 'emergence', lot: 'A', animal: '1', at: day(9), adults: [{sex: 'female', count: 1}]});
  const lotA = state.lots.get('A')!;
  expect(animalsOf(lotA)).toMatchObject([
    {animal: '1', weights: [{mg: 120}], photos: ['a.jpg'], end: {how: 'emerged', specimen: 'A-1'}},
  ]);
  const {durations} = outcomeOf(lotA, state, greenwich);
  expect(durations.find(({stage}) => stage === 'larva-5')).toMatchObject({
    days: 3,
    withinDays: 3,
    how: 'singly',
  });
  expect(durations.find(({stage}) => stage === 'pupa')).toMatchObject({days: 3, animals: 1});
});

test('an estimate is marked in the sum, and animals beyond it show', () => {
  const {state} = given(unit(), sample(), lot({egg: 20}, {counted: 'estimated', within: 5})).when({
    record: 'emergence',
    lot: 'A',
    at: day(9),
    adults: [{count: 23}],
  });
  const lotA = state.lots.get('A')!;
  expect(balanceInWords(lotA) + exactness(lotA)).toBe(
    'about 20 (± 5) started + 3 found beyond the estimate = about 0 alive + 23 emerged  (estimated: what is alive may be more or fewer)',
  );
});

test('of hidden animals no share is told', () => {
  const galls = {stages: undefined, material: {what: 'galls', amount: 40, unit: 'pieces'}};
  const {state} = given(unit(), sample(), lot({}, galls)).when({
    ...about,
    record: 'emergence',
    adults: [{count: 3}],
  });
  const outcome = outcomeOf(state.lots.get('A')!, state, greenwich);
  expect(outcome.survival.share).toBeNull();
  expect(outcome.lifeTable).toBeNull();
});
