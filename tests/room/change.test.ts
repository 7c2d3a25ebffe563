import {readdir, readFile} from 'node:fs/promises';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {changeRoom} from '../../src/room/change.ts';
import {openRoom} from '../../src/room/open.ts';
import {entriesFor, newRoom, write} from './rooms.ts';

const logger = {record: 'logger', code: 'L1', kind: 'automatic'};
const note = (text: string) => ({record: 'note', text});

test('a new room is empty and knows its name and zone', async () => {
  const room = await openRoom(await newRoom());
  expect(room).toMatchObject({
    name: 'north room',
    zone: 'Europe/Vienna',
    entries: [],
    imports: [],
    warnings: [],
  });
});

test('what a change adds is there when the room is opened again, in the order of writing', async () => {
  const dir = await newRoom();
  await write(dir, [logger, note('first')]);
  await write(dir, [note('second')]);
  const {entries} = await openRoom(dir);
  expect(entries.map(({id, request}) => [id, request])).toEqual([
    ['e1', 'r1'],
    ['e2', 'r1'],
    ['e3', 'r2'],
  ]);
  expect(entries[2]).toMatchObject({
    by: 'anna',
    recordedAt: '2026-06-12T08:40:00.000Z',
    record: note('second'),
  });
});

test('changeRoom gives back the room after the change, with another revision', async () => {
  const dir = await newRoom();
  const before = await openRoom(dir);
  const after = await write(dir, [logger]);
  expect(after.revision).not.toBe(before.revision);
  expect(after.entries).toEqual((await openRoom(dir)).entries);
});

test('where decide throws, nothing is written and no lock is left', async () => {
  const dir = await newRoom();
  const files = await readdir(dir);
  const bytes = await readFile(join(dir, 'room.json'));
  const refused = changeRoom(dir, () => Promise.reject(new Error('no')), {by: 'anna'});
  await expect(refused).rejects.toThrow('no');
  expect(await readFile(join(dir, 'room.json'))).toEqual(bytes);
  expect(await readdir(dir)).toEqual(files);
});

test('a change of nothing writes nothing', async () => {
  const dir = await newRoom();
  const before = await openRoom(dir);
  const after = await changeRoom(dir, async () => ({entries: []}), {by: 'anna'});
  expect(after.revision).toBe(before.revision);
});

test('entries that are not numbered on from the room are a mistake of the program, and are not written', async () => {
  const dir = await newRoom();
  const skip = changeRoom(dir, async room => ({entries: entriesFor(room, [note('a'), note('b')]).slice(1)}), {
    by: 'anna',
  });
  await expect(skip).rejects.toThrow(RangeError);
  expect((await openRoom(dir)).entries).toEqual([]);
});

test('writers of one process take turns, and every entry is kept', async () => {
  const dir = await newRoom();
  await Promise.all(Array.from({length: 12}, (_, i) => write(dir, [note(`by writer ${i}`)])));
  const {entries} = await openRoom(dir);
  expect(entries.map(({id}) => id)).toEqual(Array.from({length: 12}, (_, i) => `e${i + 1}`));
  expect(new Set(entries.map(({record}) => JSON.stringify(record))).size).toBe(12);
});
