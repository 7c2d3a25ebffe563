import {appendFile, readFile, rm, writeFile} from 'node:fs/promises';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {archiveRoom} from '../../src/room/archive.ts';
import type {RoomDocument} from '../../src/room/room-document.ts';
import {seal, sha256, unseal} from '../../src/room/sealed.ts';
import {verifyRoom} from '../../src/room/verify.ts';
import {furnished, newFolder} from './rooms.ts';

async function archived(): Promise<string> {
  const dir = await furnished();
  await archiveRoom(dir, {by: 'anna'});
  return dir;
}

test('a sound room has no problems, and every document is counted', async () => {
  expect(await verifyRoom(await archived())).toEqual({sound: true, documents: 5, problems: []});
});

test('a folder without a room is refused', async () => {
  await expect(verifyRoom(await newFolder())).rejects.toMatchObject({
    what: 'there is no room in this folder',
  });
});

test.each([
  'readings/L1/2026-05-1.json',
  'readings/L1/2026-06-1.json',
  'archive/2026-1.json',
  'index-1.json',
])('%s missing, or altered by one byte, is a problem that is named', async path => {
  const dir = await archived();
  await appendFile(join(dir, path), ' ');
  const {sound, problems} = await verifyRoom(dir);
  expect(sound).toBe(false);
  expect(problems).toMatchObject([{where: join(dir, path), what: expect.stringContaining('damaged')}]);
  await rm(join(dir, path));
  expect((await verifyRoom(dir)).problems).toMatchObject([{what: 'this part of the room is missing'}]);
});

test('all problems are told together', async () => {
  const dir = await archived();
  await rm(join(dir, 'readings/L1/2026-05-1.json'));
  await rm(join(dir, 'archive/2026-1.json'));
  expect((await verifyRoom(dir)).problems).toHaveLength(2);
});

/** Rewrite a document and room.json with right checksums: what a program with a mistake would have written. */
async function rewritten(dir: string, path: string, change: (text: string) => string): Promise<void> {
  const text = change(await readFile(join(dir, path), 'utf8'));
  await writeFile(join(dir, path), text);
  const room = unseal<RoomDocument>(await readFile(join(dir, 'room.json')))!.content;
  const documents = room.documents.map(row => (row.path === path ? {...row, sha256: sha256(text)} : row));
  await writeFile(join(dir, 'room.json'), seal({...room, documents}));
}

test.each([
  [
    'readings/L1/2026-05-1.json',
    'an instant out of order',
    '"seconds":[2505600,2509200',
    '"seconds":[2509200,2505600',
    'out of order',
  ],
  ['readings/L1/2026-05-1.json', 'a row more than the table says', '"i1",48', '"i1",47', '47 of 48'],
  ['readings/L1/2026-05-1.json', 'an unknown import', '"i1"', '"i7"', 'i7'],
  ['readings/L1/2026-05-1.json', 'another logger', '"logger":"L1"', '"logger":"L2"', 'L2'],
  ['archive/2026-1.json', 'a record that breaks its form', '"method":"sweep"', '"method":"broom"', 'broom'],
  ['archive/2026-1.json', 'a key that the index does not know', '"key":"k"', '"key":"q"', 'index'],
  ['archive/2026-1.json', 'an entry twice', '"id":"e3"', '"id":"e1"', 'twice'],
  ['archive/2026-1.json', 'a number not yet given', '"id":"e3"', '"id":"e9"', 'e9'],
])('%s with %s is a problem although its checksum is right', async (path, _, from, to, said) => {
  const dir = await archived();
  expect(await readFile(join(dir, path), 'utf8')).toContain(from);
  await rewritten(dir, path, text => text.replace(from, to));
  const {problems} = await verifyRoom(dir);
  expect(problems).toHaveLength(1);
  expect(JSON.stringify(problems)).toContain(said);
});

test('a damaged room.json is told as a problem, with the way back', async () => {
  const dir = await archived();
  await writeFile(join(dir, 'room.json'), '{');
  expect(await verifyRoom(dir)).toMatchObject({
    sound: false,
    documents: 1,
    problems: [{where: join(dir, 'room.json'), mend: expect.stringContaining('teneral restore')}],
  });
});
