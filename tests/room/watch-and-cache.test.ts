import {mkdir, readdir, readFile, rm, writeFile} from 'node:fs/promises';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {readCache, writeCache} from '../../src/room/cache.ts';
import {openRoom} from '../../src/room/open.ts';
import {verifyRoom} from '../../src/room/verify.ts';
import {watchRoom} from '../../src/room/watch.ts';
import {newRoom, write} from './rooms.ts';

const note = {record: 'note', text: 'a note'};

test('watchRoom calls back after a change, and no more once it is ended', async () => {
  const dir = await newRoom();
  const {revision} = await openRoom(dir);
  let calls = 0;
  const changed = new Promise<void>(resolve => {
    const end = watchRoom(dir, () => {
      calls++;
      end();
      resolve();
    });
  });
  await new Promise(resolve => setTimeout(resolve, 50));
  await write(dir, [note]);
  await changed;
  expect((await openRoom(dir)).revision).not.toBe(revision);
  await write(dir, [note]);
  expect(calls).toBe(1);
});

test('the cache gives back what was kept, and undefined for what was not', async () => {
  const room = await openRoom(await newRoom());
  const content = {quantiles: [1.5, 2.25], note: 'é'};
  expect(await readCache(room, 'forecast-1')).toBeUndefined();
  await writeCache(room, 'forecast-1', content);
  expect(await readCache(room, 'forecast-1')).toEqual(content);
  await rm(join(room.dir, 'cache'), {recursive: true});
  expect(await readCache(room, 'forecast-1')).toBeUndefined();
});

test('a damaged answer in the cache is as if it were not there', async () => {
  const room = await openRoom(await newRoom());
  await writeCache(room, 'x', {day: 12});
  const path = join(room.dir, 'cache', 'x.json');
  await writeFile(path, (await readFile(path, 'utf8')).replace('12', '13'));
  expect(await readCache(room, 'x')).toBeUndefined();
});

test('a cache that cannot be written is no error, and no fault of the room', async () => {
  const room = await openRoom(await newRoom());
  await writeFile(join(room.dir, 'cache'), 'in the way');
  await writeCache(room, 'x', 1);
  expect(await readCache(room, 'x')).toBeUndefined();
  expect((await verifyRoom(room.dir)).sound).toBe(true);
  await rm(join(room.dir, 'cache'));
  await mkdir(join(room.dir, 'cache', 'x.json'), {recursive: true});
  await writeCache(room, 'x', 1);
  expect(await readdir(join(room.dir, 'cache'))).toEqual(['x.json']);
});

test('a name that would leave the cache is a mistake of the program', async () => {
  const room = await openRoom(await newRoom());
  await expect(writeCache(room, '../room', 1)).rejects.toThrow(RangeError);
});
