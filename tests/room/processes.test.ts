import {cp, readdir} from 'node:fs/promises';
import {join} from 'node:path';
import {beforeAll, expect, test} from 'vitest';
import {openRoom} from '../../src/room/open.ts';
import {verifyRoom} from '../../src/room/verify.ts';
import {programNamed, run} from './programs.ts';
import {importSeries, newFolder, newRoom, readings, write} from './rooms.ts';

const programs = {writer: '', importer: ''};
beforeAll(async () => {
  programs.writer = await programNamed('writer');
  programs.importer = await programNamed('importer');
});

test('processes that write at once lose no entry of one another', async () => {
  const dir = await newRoom();
  const people = ['anna', 'bo', 'cleo'];
  const ends = await Promise.all(people.map(by => run(programs.writer, [dir, by, '25'])));
  expect(ends).toEqual([0, 0, 0]);
  const {entries} = await openRoom(dir);
  expect(entries.map(({id}) => id)).toEqual(Array.from({length: 75}, (_, i) => `e${i + 1}`));
  for (const by of people)
    expect(entries.filter(entry => entry.by === by).map(({record}) => record)).toEqual(
      Array.from({length: 25}, (_, i) => ({record: 'note', text: `${by} ${i}`})),
    );
  expect((await verifyRoom(dir)).problems).toEqual([]);
  expect((await readdir(dir)).toSorted()).toEqual(['backups', 'room.json']);
});

test('a writer killed at any call of the disk leaves the room as before or as after, and the next one writes at once', async () => {
  const template = await newRoom();
  await write(template, [{record: 'logger', code: 'L1', kind: 'automatic'}]);
  const before = await importSeries(template, 'L1', readings('2026-05-30T00:00Z', 5));
  const folder = await newFolder();

  /** Rows and entries after a kill at one call, and how the program ended. */
  const killedAt = async (call: number) => {
    const dir = join(folder, `room-${call}`);
    await cp(template, dir, {recursive: true, preserveTimestamps: true});
    const end = await run(programs.importer, [dir], call);
    const {entries, span} = await openRoom(dir);
    expect((await verifyRoom(dir)).problems).toEqual([]);
    const after = await write(dir, [{record: 'note', text: 'next'}], {waitMs: 0});
    expect(after.entries).toHaveLength(entries.length + 1);
    return {end, entries: entries.length, rows: span('L1')?.rows};
  };

  const AT_ONCE = 3;
  const seen: Awaited<ReturnType<typeof killedAt>>[] = [];
  while (seen.at(-1)?.end !== 0)
    seen.push(...(await Promise.all(Array.from({length: AT_ONCE}, (_, i) => killedAt(seen.length + i + 1)))));
  const asBefore = {entries: before.entries.length, rows: 5};
  const asAfter = {entries: before.entries.length + 1, rows: 11};
  const committed = seen.findIndex(({entries}) => entries === asAfter.entries);
  expect(committed).toBeGreaterThan(10);
  expect(seen.slice(0, committed).map(({entries, rows}) => ({entries, rows}))).toEqual(
    Array.from({length: committed}, () => asBefore),
  );
  expect(seen.slice(committed).map(({entries, rows}) => ({entries, rows}))).toEqual(
    Array.from({length: seen.length - committed}, () => asAfter),
  );
});
