import {mkdir, readdir, rm, stat, utimes, writeFile} from 'node:fs/promises';
import {join} from 'node:path';
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {listBackups, thinned} from '../../src/room/backups.ts';
import {openRoom} from '../../src/room/open.ts';
import {readRoomFile} from '../../src/room/room-file.ts';
import {verifyRoom} from '../../src/room/verify.ts';
import {importSeries, newRoom, readings, write} from './rooms.ts';

const HOUR = 3_600_000;
const note = {record: 'note', text: 'a note'};

async function age(path: string, byMs: number): Promise<void> {
  const {mtimeMs} = await stat(path);
  await utimes(path, (mtimeMs - byMs) / 1000, (mtimeMs - byMs) / 1000);
}

test('the newest backup is room.json as it stands after the newest change', async () => {
  const dir = await newRoom();
  await write(dir, [note]);
  const [newest] = await listBackups(dir);
  expect((await readRoomFile(newest!.path)).revision).toBe((await openRoom(dir)).revision);
});

test('backups are thinned to the newest three, one an hour for a day, a day for two weeks, a week for half a year', () => {
  const now = Date.parse('2026-06-12T08:40:00Z');
  const everyTenMinutes = Array.from({length: 6 * 24 * 400}, (_, i) => ({at: now - (i * HOUR) / 6}));
  const dropped = new Set(thinned(everyTenMinutes, now));
  const kept = everyTenMinutes.filter(copy => !dropped.has(copy)).map(({at}) => now - at);
  expect(kept.slice(0, 3)).toEqual([0, HOUR / 6, HOUR / 3]);
  const within = (days: number) => kept.filter(age => age <= days * 24 * HOUR).length;
  expect(within(1)).toBeGreaterThanOrEqual(24);
  expect(within(1)).toBeLessThanOrEqual(28);
  expect(within(14) - within(1)).toBeGreaterThanOrEqual(12);
  expect(within(14) - within(1)).toBeLessThanOrEqual(14);
  expect(kept.length - within(14)).toBeGreaterThanOrEqual(23);
  expect(kept.length - within(14)).toBeLessThanOrEqual(25);
});

test('thinning again drops nothing more, and the newest is always kept', () => {
  const ages = fc.array(fc.integer({min: 0, max: 300 * 24 * HOUR}), {maxLength: 60});
  fc.assert(
    fc.property(ages, all => {
      const now = Date.parse('2026-06-12T08:40:00Z');
      const copies = all.toSorted((a, b) => a - b).map(ms => ({at: now - ms}));
      const dropped = new Set(thinned(copies, now));
      const kept = copies.filter(copy => !dropped.has(copy));
      expect(thinned(kept, now)).toEqual([]);
      expect(kept[0]).toBe(copies[0]);
    }),
  );
});

test('a later writer sweeps what nothing names once it is ten minutes old, and leaves everything else', async () => {
  const dir = await newRoom();
  const left = [
    'readings/L9/2026-05-1.json',
    'archive/2026-7.json',
    'index-9.json',
    'room.json.12-0123456789ab.tmp',
  ];
  const others = ['notes.txt', 'readings/README.md', 'draft.tmp', 'archive/plan.json'];
  for (const folder of ['readings/L9', 'archive']) await mkdir(join(dir, folder), {recursive: true});
  for (const path of [...left, ...others]) await writeFile(join(dir, path), '{}');
  const files = async () =>
    (await readdir(dir, {recursive: true})).filter(path => [...left, ...others].includes(path));

  await write(dir, [note]);
  expect((await files()).length).toBe(8);
  expect((await verifyRoom(dir)).sound).toBe(true);
  for (const path of [...left, ...others]) await age(join(dir, path), 11 * 60_000);
  await write(dir, [note]);
  expect((await files()).toSorted()).toEqual(others.toSorted());
});

test('a replaced document stays as long as a backup names it, and is swept then', async () => {
  const dir = await newRoom();
  await importSeries(dir, 'L1', readings('2026-05-01T00:00Z', 5));
  await importSeries(dir, 'L1', readings('2026-05-02T00:00Z', 5));
  const folder = join(dir, 'readings/L1');
  await age(join(folder, '2026-05-1.json'), HOUR);
  await write(dir, [note]);
  expect((await readdir(folder)).toSorted()).toEqual(['2026-05-1.json', '2026-05-2.json']);
  for (let i = 0; i < 4; i++) await write(dir, [note]);
  expect(await readdir(folder)).toEqual(['2026-05-2.json']);
  expect((await verifyRoom(dir)).sound).toBe(true);
});

test('a document counts its ten minutes from when it was replaced', async () => {
  const dir = await newRoom();
  await importSeries(dir, 'L1', readings('2026-05-01T00:00Z', 5));
  const path = join(dir, 'readings/L1/2026-05-1.json');
  await age(path, 24 * HOUR);
  await importSeries(dir, 'L1', readings('2026-05-02T00:00Z', 5));
  expect(Date.now() - (await stat(path)).mtimeMs).toBeLessThan(HOUR);
});

test('where no backup can be kept, a change is acknowledged all the same', async () => {
  const dir = await newRoom();
  const room = await openRoom(dir);
  const backups = join(dir, 'backups');
  await rm(backups, {recursive: true});
  await writeFile(backups, 'in the way');
  const after = await write(dir, [note]);
  expect(after.revision).not.toBe(room.revision);
  expect((await openRoom(dir)).revision).toBe(after.revision);
});
