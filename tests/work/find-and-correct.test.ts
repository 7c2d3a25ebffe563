// Searching with typing errors, and putting wrong entries right, in a real room.
import {beforeAll, expect, test} from 'vitest';
import {correct} from '../../src/work/correct.ts';
import {daybook} from '../../src/work/daybook.ts';
import {openDesk} from '../../src/work/desk.ts';
import {Doubt} from '../../src/work/doubts.ts';
import {finderOf} from '../../src/work/find.ts';
import {record} from '../../src/work/record.ts';
import {newRoom} from '../room/rooms.ts';

const session = {dir: '', now: '2031-05-10T09:00:00Z', by: 'Ida', warn() {}};

beforeAll(async () => {
  session.dir = await newRoom();
  await record(session, [
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
    {
      record: 'sample',
      code: 'S-022',
      collected: {from: '2031-05-01'},
      method: 'search',
      collectors: ['Ansa Querry'],
      place: {locality: 'Skarrow, kitchen gardens'},
      host: 'Brassica oleracea',
    },
    {
      record: 'lot',
      code: 'S-022-A',
      sample: 'S-022',
      unit: 'C1',
      at: '2031-05-02T09:00:00Z',
      stages: {pupa: 5},
    },
    {record: 'emergence', lot: 'S-022-A', at: '2031-05-09T09:00:00Z', adults: [{count: 2}]},
    {record: 'note', about: 'S-022-A', at: '2031-05-09T10:00:00Z', text: 'wings complete, very lively'},
  ]);
});

test.each([
  ['brassica', 'sample S-022'],
  ['brasica', 'sample S-022'],
  ['skarow kichen', 'sample S-022'],
  ['querry', 'sample S-022'],
  ['S-022-A', 'lot S-022-A'],
  ['s-022', 'sample S-022'],
  ['022 pup', 'entry S-022-A'],
  ['S-022-A-2', 'specimen S-022-A-2'],
  ['livly', 'entry S-022-A'],
  ['2031-05-09 ida', 'entry S-022-A'],
])('find %s', async (words, first) => {
  const [found] = finderOf(await openDesk(session, 'all')).find(words);
  expect(`${found?.kind} ${found?.code}`).toBe(first);
});

test('codes that differ by one sign are others, and nothing is found where a word is nowhere', async () => {
  const finder = finderOf(await openDesk(session, 'all'));
  expect(finder.find('S-023-A')).toEqual([]);
  expect(finder.find('brassica zebra')).toEqual([]);
});

test('a correction voids, stands in the place of what was wrong, and both stay readable', async () => {
  await correct(session, {
    entry: 'e4',
    changes: ['adults.0.sex=male', 'condition=battered'],
    reason: 'looked again',
  });
  const desk = await openDesk(session, 'all');
  expect(desk.state.specimens.get('S-022-A-1')).toMatchObject({
    sex: 'male',
    condition: 'battered',
    entry: 'e7',
  });
  expect(daybook(desk, {code: 'e4'})).toMatchObject([
    {id: 'e4', voided: true, void: {by: 'Ida', reason: 'looked again', replacedBy: 'e7'}},
    {id: 'e7', replaces: 'e4', void: null},
    {id: 'e6'},
  ]);
  await expect(correct(session, {entry: 'e4', changes: ['count=1']})).rejects.toThrow(/void already/);
  await expect(correct(session, {entry: 'e7', changes: ['adults.0.count=9']})).rejects.toThrow(
    /5 alive|5 are alive/,
  );
  await expect(correct(session, {entry: 'e7', changes: ['sex']})).rejects.toThrow(/is no change/);
});

test('coordinates outside their country are a doubt; whoever is sure writes them down', async () => {
  const sample = {
    record: 'sample',
    code: 'S-023',
    collected: {from: '2031-05-01'},
    method: 'search',
    place: {country: 'Switzerland', latitude: 46.25, longitude: -8},
  };
  await expect(record(session, [sample])).rejects.toThrow(Doubt);
  expect((await openDesk(session)).state.samples.has('S-023')).toBe(false);
  await record(session, [{...sample, sure: true}]);
  expect((await openDesk(session)).state.samples.has('S-023')).toBe(true);
});
