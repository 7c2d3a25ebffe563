import {readFile, rm, writeFile} from 'node:fs/promises';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {archiveRoom} from '../../src/room/archive.ts';
import {listBackups} from '../../src/room/backups.ts';
import {openRoom} from '../../src/room/open.ts';
import {restoreRoom} from '../../src/room/restore.ts';
import {verifyRoom} from '../../src/room/verify.ts';
import {furnished, importSeries, newFolder, readings, write} from './rooms.ts';

const EVER = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
const note = (text: string) => ({record: 'note', text});

const verified = async (dir: string) => (await verifyRoom(dir)).problems;

test.each(['', '{"format":1,"sha', '{}'])(
  'a room.json that became "%s" comes back whole, and is kept aside',
  async damage => {
    const dir = await furnished();
    const before = await openRoom(dir);
    await writeFile(join(dir, 'room.json'), damage);
    expect((await verifyRoom(dir)).sound).toBe(false);
    const {aside, lost, from} = await restoreRoom(dir, {by: 'anna'});
    expect(from).toBe((await listBackups(dir))[0]?.name);
    expect(lost).toEqual([]);
    expect(await readFile(join(aside!, 'room.json'), 'utf8')).toBe(damage);
    expect((await openRoom(dir)).entries).toEqual(before.entries);
    expect(await verified(dir)).toEqual([]);
  },
);

test('a missing room.json comes back', async () => {
  const dir = await furnished();
  await rm(join(dir, 'room.json'));
  expect((await restoreRoom(dir, {by: 'anna'})).aside).toBeUndefined();
  expect((await openRoom(dir)).entries).toHaveLength(4);
});

test('a damaged backup is passed over for the newest sound one', async () => {
  const dir = await furnished();
  await write(dir, [note('new')]);
  const [newest, second] = await listBackups(dir);
  await writeFile(newest!.path, 'damaged');
  await writeFile(join(dir, 'room.json'), 'damaged');
  expect((await restoreRoom(dir, {by: 'anna'})).from).toBe(second!.name);
  expect((await openRoom(dir)).entries).toHaveLength(4);
});

test('a room that nothing is wrong with is only taken back to a copy that is named', async () => {
  const dir = await furnished();
  const [newest, older] = await listBackups(dir);
  await expect(restoreRoom(dir, {by: 'anna'})).rejects.toMatchObject({
    what: 'nothing in this room is damaged',
    mend: expect.stringContaining(newest!.name),
  });
  const {from} = await restoreRoom(dir, {by: 'anna', from: older!.name});
  expect(from).toBe(older!.name);
  const room = await openRoom(dir);
  expect(room.span('L1')).toBeUndefined();
  expect(await verified(dir)).toEqual([]);
});

test('ids given after the copy was made are not given again', async () => {
  const dir = await furnished();
  const [newest] = await listBackups(dir);
  await write(dir, [note('soon gone')]);
  await restoreRoom(dir, {by: 'anna', from: newest!.name});
  const {entries} = await write(dir, [note('later')]);
  expect(entries.at(-1)).toMatchObject({id: 'e6', request: 'r3'});
});

test('a copy that is not there is refused with those that are', async () => {
  const dir = await furnished();
  const [newest] = await listBackups(dir);
  await expect(restoreRoom(dir, {by: 'anna', from: 'yesterday'})).rejects.toMatchObject({
    what: 'there is no copy "yesterday"',
    mend: expect.stringContaining(newest!.name),
  });
});

test('a room without any sound copy says so, and a folder without a room that there is none', async () => {
  const dir = await furnished();
  await rm(join(dir, 'backups'), {recursive: true});
  await writeFile(join(dir, 'room.json'), 'damaged');
  await expect(restoreRoom(dir, {by: 'anna'})).rejects.toMatchObject({what: 'no copy of this room is sound'});
  expect(await readFile(join(dir, 'room.json'), 'utf8')).toBe('damaged');
  await expect(restoreRoom(await newFolder(), {by: 'anna'})).rejects.toMatchObject({
    what: 'there is no room in this folder',
  });
});

test('damaged readings go back to the older version of their month; no entry is lost', async () => {
  const dir = await furnished();
  await importSeries(dir, 'L1', readings('2026-05-29T00:00Z', 10));
  await write(dir, [note('after the import')]);
  await writeFile(join(dir, 'readings/L1/2026-05-2.json'), 'damaged');
  const {from, lost, aside} = await restoreRoom(dir, {by: 'anna'});
  expect(from).toBeUndefined();
  expect(lost).toEqual(['10 readings of L1 in 2026-05: import their file again']);
  expect(await readFile(join(aside!, 'readings/L1/2026-05-2.json'), 'utf8')).toBe('damaged');
  const room = await openRoom(dir);
  expect(room.entries).toHaveLength(5);
  expect((await room.series('L1', ...EVER)).atDays).toHaveLength(50);
  expect(await verified(dir)).toEqual([]);
});

test('readings without an older version leave the room, and are said to', async () => {
  const dir = await furnished();
  await rm(join(dir, 'readings/L1/2026-06-1.json'));
  const {lost} = await restoreRoom(dir, {by: 'anna'});
  expect(lost).toEqual(['2 readings of L1 in 2026-06: import their file again']);
  expect((await openRoom(dir)).span('L1')?.rows).toBe(48);
  expect(await verified(dir)).toEqual([]);
});

test('archived entries whose document is damaged come back from older copies, and can be archived again', async () => {
  const dir = await furnished();
  const {entries} = await openRoom(dir);
  await archiveRoom(dir, {by: 'anna'});
  await writeFile(join(dir, 'archive/2026-1.json'), 'damaged');
  expect((await restoreRoom(dir, {by: 'anna'})).lost).toEqual([]);
  expect((await openRoom(dir)).entries).toEqual(entries);
  expect(await verified(dir)).toEqual([]);
  expect((await archiveRoom(dir, {by: 'anna'})).lots).toEqual(['A-1']);
  expect(await verified(dir)).toEqual([]);
});

test('a damaged index is worked out anew', async () => {
  const dir = await furnished();
  await archiveRoom(dir, {by: 'anna'});
  await writeFile(join(dir, 'index-1.json'), 'damaged');
  expect((await restoreRoom(dir, {by: 'anna'})).lost).toEqual([]);
  expect(await verified(dir)).toEqual([]);
  expect(await (await openRoom(dir)).entriesWith({keys: ['k']})).toHaveLength(4);
});

test('a hand edit is undone by going back, and kept aside', async () => {
  const dir = await furnished();
  const file = join(dir, 'room.json');
  const bytes = await readFile(file, 'utf8');
  const edited = bytes.replace('rack', 'rock');
  await writeFile(file, edited);
  expect((await verifyRoom(dir)).problems).toHaveLength(1);
  const {aside} = await restoreRoom(dir, {by: 'anna'});
  expect(await readFile(join(aside!, 'room.json'), 'utf8')).toBe(edited);
  expect(await readFile(file, 'utf8')).toBe(bytes);
});
