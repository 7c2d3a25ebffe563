import {readdir} from 'node:fs/promises';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {fold} from '../../src/records/fold.ts';
import {archiveRoom} from '../../src/room/archive.ts';
import {openRoom} from '../../src/room/open.ts';
import type {Room} from '../../src/room/room.ts';
import {NOW, newRoom, write} from './rooms.ts';

const sample = (code: string) => ({
  record: 'sample',
  code,
  collected: {from: '2026-05-01'},
  method: 'sweep',
});
const lot = (code: string, more: object) => ({
  record: 'lot',
  code,
  unit: 'C1',
  at: '2026-05-02T10:00:00Z',
  stages: {'larva-1': 4},
  ...more,
});
const about = (record: string, code: string, more: object = {}) => ({
  record,
  lot: code,
  at: '2026-05-20T10:00:00Z',
  ...more,
});
const emerge = (code: string) =>
  about('emergence', code, {
    adults: [{count: 4}],
    at: '2026-05-19T10:00:00Z',
    codes: [1, 2, 3, 4].map(number => `${code}-${number}`),
  });
const furniture = [
  {record: 'logger', code: 'L1', kind: 'hand'},
  {record: 'unit', code: 'C1', type: 'cage', place: 'rack', logger: 'L1'},
];

const codesOf = (room: Room) => [...fold(room.entries, Number.POSITIVE_INFINITY).lots.keys()];
const samplesOf = (room: Room) => [...fold(room.entries, Number.POSITIVE_INFINITY).samples.keys()];

/** Two samples: A with a closed lot and an open one, B with a closed lot only. */
async function season(): Promise<string> {
  const dir = await newRoom();
  await write(dir, [...furniture, sample('A'), sample('B')]);
  await write(dir, [
    lot('A-1', {sample: 'A'}),
    lot('A-2', {sample: 'A', key: 'second'}),
    lot('B-1', {sample: 'B', key: 'third'}),
  ]);
  await write(dir, [emerge('A-1'), emerge('B-1')]);
  await write(dir, [about('close', 'A-1'), about('close', 'B-1')]);
  return dir;
}

test('closed lots leave room.json with their daybook, a sample with its last open lot', async () => {
  const dir = await season();
  const all = (await openRoom(dir)).entries;
  expect(await archiveRoom(dir, {by: 'anna', now: NOW})).toEqual({lots: ['A-1', 'B-1'], entries: 7});
  const room = await openRoom(dir);
  expect(codesOf(room)).toEqual(['A-2']);
  expect(samplesOf(room)).toEqual(['A']);
  expect(await room.allEntries()).toEqual(all);
  expect(await readdir(join(dir, 'archive'))).toEqual(['2026-1.json']);
});

test('archiving again when nothing more is closed changes nothing', async () => {
  const dir = await season();
  await archiveRoom(dir, {by: 'anna', now: NOW});
  const {revision} = await openRoom(dir);
  expect(await archiveRoom(dir, {by: 'anna', now: NOW})).toEqual({lots: [], entries: 0});
  expect((await openRoom(dir)).revision).toBe(revision);
});

test('entriesWith finds what is archived by specimen, lot, sample, key and entry id, with its sample', async () => {
  const dir = await season();
  const ids = (await openRoom(dir)).entries
    .filter(({record}) => JSON.stringify(record).includes('B'))
    .map(({id}) => id);
  await archiveRoom(dir, {by: 'anna', now: NOW});
  const room = await openRoom(dir);
  for (const names of [
    {codes: ['B-1-3']},
    {codes: ['B-1']},
    {codes: ['B']},
    {keys: ['third']},
    {entries: [ids[2]!]},
  ]) {
    const entries = await room.entriesWith(names);
    expect(fold(entries, NOW).lots.get('B-1')?.specimens).toEqual(['B-1-1', 'B-1-2', 'B-1-3', 'B-1-4']);
    expect(entries.filter(({id}) => ids.includes(id)).map(({id}) => id)).toEqual(ids);
    expect(fold(entries, NOW).lots.has('A-1')).toBe(false);
  }
});

test('entriesWith gives no more than room.json where the names are nowhere', async () => {
  const dir = await season();
  await archiveRoom(dir, {by: 'anna', now: NOW});
  const room = await openRoom(dir);
  expect(await room.entriesWith({codes: ['Z'], keys: ['z'], entries: ['e999']})).toEqual(room.entries);
});

test('a name found years later goes into the archived lot’s document, and the lot stays closed', async () => {
  const dir = await season();
  await archiveRoom(dir, {by: 'anna', now: NOW});
  const later = Date.parse('2029-01-10T09:00:00Z');
  const identification = {
    record: 'identification',
    specimen: 'B-1-2',
    taxon: 'Pieris rapae',
    at: '2029-01-10T09:00:00Z',
  };
  const room = await write(dir, [identification], {now: later});
  expect(codesOf(room)).toEqual(['A-2']);
  expect(room.entries.some(({record}) => record.record === 'identification')).toBe(false);
  const state = fold(await room.entriesWith({codes: ['B-1-2']}), later);
  expect(state.specimens.get('B-1-2')?.taxon).toBe('Pieris rapae');
  expect(state.lots.get('A-1')).toBeUndefined();
  expect(fold(await room.allEntries(), later).lots.size).toBe(3);
});

test('a new lot of an archived sample calls the sample back, and nothing else', async () => {
  const dir = await season();
  await archiveRoom(dir, {by: 'anna', now: NOW});
  const room = await write(dir, [lot('B-2', {sample: 'B', at: '2026-06-01T10:00:00Z'})]);
  expect(codesOf(room)).toEqual(['A-2', 'B-2']);
  expect(samplesOf(room)).toEqual(['A', 'B']);
  const all = fold(await room.allEntries(), NOW);
  expect([...all.lots.keys()].toSorted()).toEqual(['A-1', 'A-2', 'B-1', 'B-2']);
});

test('voiding the closing of an archived lot calls the lot back, with its sample', async () => {
  const dir = await season();
  const closing = (await openRoom(dir)).entries.find(
    ({record}) => record.record === 'close' && record.lot === 'B-1',
  )!;
  await archiveRoom(dir, {by: 'anna', now: NOW});
  const room = await write(dir, [{record: 'void', entry: closing.id}]);
  const state = fold(room.entries, NOW);
  expect(state.lots.get('B-1')).toMatchObject({closed: undefined, sample: 'B'});
  expect(samplesOf(room)).toEqual(['A', 'B']);
  await archiveRoom(dir, {by: 'anna', now: NOW});
  expect(codesOf(await openRoom(dir))).toEqual(['A-2', 'B-1']);
});

test('eggs of an archived female call her lot back, because its history is theirs', async () => {
  const dir = await season();
  await archiveRoom(dir, {by: 'anna', now: NOW});
  const room = await write(dir, [
    lot('B-3', {from: {specimen: 'B-1-1'}, stages: {egg: 20}, at: '2026-06-01T10:00:00Z'}),
  ]);
  expect(fold(room.entries, NOW).lots.get('B-3')?.sample).toBe('B');
});

test('lots parted or joined leave together', async () => {
  const dir = await newRoom();
  await write(dir, [...furniture, sample('A'), lot('A-1', {sample: 'A'})]);
  await write(dir, [about('split', 'A-1', {into: 'A-2', stages: {'larva-1': 2}})]);
  await write(dir, [about('close', 'A-1', {at: '2026-05-21T10:00:00Z', reason: 'done'})]);
  expect((await archiveRoom(dir, {by: 'anna', now: NOW})).lots).toEqual([]);
  await write(dir, [about('close', 'A-2', {at: '2026-05-22T10:00:00Z', reason: 'done'})]);
  expect((await archiveRoom(dir, {by: 'anna', now: NOW})).lots).toEqual(['A-1', 'A-2']);
});

test('entries about no lot leave after 35 days, save the newest of their kind and what open lots need', async () => {
  const dir = await newRoom();
  const old = Date.parse('2026-03-01T09:00:00Z');
  const work = (task: string, day: string) => ({record: 'care', unit: 'C1', task, at: `${day}T09:00:00Z`});
  await write(
    dir,
    [
      ...furniture,
      {record: 'note', text: 'long ago', at: '2026-01-10T09:00:00Z'},
      work('clean', '2026-01-05'),
      work('clean', '2026-02-05'),
      {record: 'reading', logger: 'L1', temperature: 20, at: '2026-01-01T09:00:00Z'},
      {record: 'reading', logger: 'L1', temperature: 21, at: '2026-02-20T09:00:00Z'},
    ],
    {now: old},
  );
  await write(dir, [{record: 'note', text: 'new', at: '2026-06-10T09:00:00Z'}]);
  await archiveRoom(dir, {by: 'anna', now: NOW});
  const room = await openRoom(dir);
  expect(room.entries.map(({id}) => id)).toEqual(['e1', 'e2', 'e5', 'e7', 'e8']);
  expect(await readdir(join(dir, 'daybook'))).toEqual(['2026-03-1.json']);
  expect(await room.allEntries()).toHaveLength(8);
});

test('a writer archives what is quiet by itself once enough has gathered', async () => {
  const dir = await newRoom();
  const old = Date.parse('2026-03-01T09:00:00Z');
  const notes = Array.from({length: 230}, (_, i) => ({
    record: 'note',
    text: `note ${i}`,
    at: '2026-03-01T09:00:00Z',
  }));
  await write(dir, notes, {now: old});
  const today = Array.from({length: 40}, (_, i) => ({
    record: 'note',
    text: `new ${i}`,
    at: '2026-06-10T09:00:00Z',
  }));
  const room = await write(dir, today);
  expect(room.entries).toHaveLength(40);
  expect(await room.allEntries()).toHaveLength(270);
});
