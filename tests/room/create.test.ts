import {mkdir, readdir, writeFile} from 'node:fs/promises';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {Refusal} from '../../src/records/refusal.ts';
import {createRoom} from '../../src/room/create.ts';
import {verifyRoom} from '../../src/room/verify.ts';
import {NOW, newFolder} from './rooms.ts';

const options = {name: 'north room', zone: 'Europe/Vienna', by: 'anna', now: NOW};

test('createRoom makes the folder and those above it, or takes an empty one', async () => {
  const folder = await newFolder();
  const deep = join(folder, 'a', 'b');
  expect(await createRoom(deep, options)).toMatchObject({dir: deep, name: 'north room', entries: []});
  expect((await verifyRoom(deep)).sound).toBe(true);
  const empty = join(folder, 'empty');
  await mkdir(empty);
  expect(await createRoom(empty, options)).toMatchObject({zone: 'Europe/Vienna'});
});

test('createRoom refuses a folder that holds anything, and leaves it as it was', async () => {
  const folder = await newFolder();
  await writeFile(join(folder, 'mine.txt'), 'mine');
  await expect(createRoom(folder, options)).rejects.toMatchObject({
    what: 'something is there already',
    where: folder,
  });
  expect(await readdir(folder)).toEqual(['mine.txt']);
});

test('createRoom refuses a file in the way, of the folder or of one above it', async () => {
  const file = join(await newFolder(), 'file');
  await writeFile(file, '');
  await expect(createRoom(file, options)).rejects.toThrow(Refusal);
  await expect(createRoom(join(file, 'room'), options)).rejects.toThrow(Refusal);
});

test('createRoom refuses to make a room over a room, also when two are made at once', async () => {
  const dir = join(await newFolder(), 'room');
  const results = await Promise.allSettled([createRoom(dir, options), createRoom(dir, options)]);
  expect(results.map(({status}) => status).toSorted()).toEqual(['fulfilled', 'rejected']);
  await expect(createRoom(dir, options)).rejects.toThrow(Refusal);
});

test.each(['Europe/Atlantis', '+02:00', '', 'Vienna/../x'])(
  'createRoom refuses the zone "%s"',
  async zone => {
    const dir = join(await newFolder(), 'room');
    const refusal: unknown = await createRoom(dir, {...options, zone}).catch(error => error);
    expect(refusal).toBeInstanceOf(Refusal);
    expect(refusal).toMatchObject({what: `there is no time zone "${zone}"`});
    await expect(readdir(dir)).rejects.toThrow('ENOENT');
  },
);

test('createRoom refuses an empty name', async () => {
  await expect(createRoom(join(await newFolder(), 'room'), {...options, name: ' '})).rejects.toThrow(Refusal);
});
