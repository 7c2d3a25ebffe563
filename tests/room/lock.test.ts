import {spawn} from 'node:child_process';
import {readdir, readFile, unlink, utimes, writeFile} from 'node:fs/promises';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {Refusal} from '../../src/records/refusal.ts';
import {changeRoom} from '../../src/room/change.ts';
import {takeLock} from '../../src/room/lock.ts';
import {thisProcess, type Whereabouts} from '../../src/room/lock-holder.ts';
import {openRoom} from '../../src/room/open.ts';
import {entriesFor, newRoom, write} from './rooms.ts';

const note = {record: 'note', text: 'a note'};

/** Somebody's lock, as it would lie there. */
async function lockOf(dir: string, changes: Partial<Whereabouts>, silentForMs = 0): Promise<string> {
  const path = join(dir, 'lock.json');
  const since = '2026-06-12T08:00:00.000Z';
  await writeFile(path, JSON.stringify({token: 't', by: 'bo', since, ...(await thisProcess()), ...changes}));
  const sign = (Date.now() - silentForMs) / 1000;
  await utimes(path, sign, sign);
  return path;
}

/** The number of a process that has ended. */
async function endedProcess(): Promise<number> {
  const child = spawn(process.execPath, ['-e', '0']);
  await new Promise(resolve => child.on('exit', resolve));
  return child.pid!;
}

test('who holds the lock, where and since when, is said once the wait is over; nothing is written', async () => {
  const dir = await newRoom();
  const path = await lockOf(dir, {});
  const {revision} = await openRoom(dir);
  const refusal: unknown = await write(dir, [note], {waitMs: 50}).catch(error => error);
  expect(refusal).toBeInstanceOf(Refusal);
  expect(refusal).toMatchObject({where: path, what: expect.stringContaining('bo (process ')});
  expect(refusal).toMatchObject({what: expect.stringContaining('since 2026-06-12T08:00:00.000Z')});
  expect((await openRoom(dir)).revision).toBe(revision);
});

test.each([
  ['whose process has ended', async () => ({pid: await endedProcess()})],
  ['whose process number a later process has', async () => ({started: '1'})],
  ['from before this machine was started again', async () => ({boot: 'an earlier one'})],
])('a holder on this host %s is replaced at once', async (_, changes) => {
  const dir = await newRoom();
  await lockOf(dir, await changes());
  expect((await write(dir, [note], {waitMs: 0})).entries).toHaveLength(1);
  expect((await readdir(dir)).toSorted()).toEqual(['backups', 'room.json']);
});

test.each([
  ['another host', {host: 'elsewhere (00000000)'}],
  ['another container', {processes: 'pid:[1]'}],
])('a holder on %s is replaced after 60 s without a sign of life, not before', async (_, changes) => {
  const dir = await newRoom();
  await lockOf(dir, changes, 55_000);
  await expect(write(dir, [note], {waitMs: 50})).rejects.toThrow(Refusal);
  await lockOf(dir, changes, 65_000);
  expect((await write(dir, [note], {waitMs: 0})).entries).toHaveLength(1);
});

test('a lock file that a power failure cut is taken for somebody’s until it is silent for 60 s', async () => {
  const dir = await newRoom();
  const path = join(dir, 'lock.json');
  await writeFile(path, '');
  const refusal: unknown = await write(dir, [note], {waitMs: 50}).catch(error => error);
  expect(refusal).toMatchObject({what: expect.stringContaining('somebody unknown')});
  await utimes(path, 0, 0);
  expect((await write(dir, [note], {waitMs: 0})).entries).toHaveLength(1);
});

test('of many who find a dead lock, one at a time gets it', async () => {
  const dir = await newRoom();
  await lockOf(dir, {pid: await endedProcess()});
  let holding = 0;
  const work = async () => {
    const lock = await takeLock(dir, 'anna');
    expect(++holding).toBe(1);
    await new Promise(resolve => setTimeout(resolve, 2));
    holding--;
    expect(await lock.isHeld()).toBe(true);
    await lock.release();
  };
  await Promise.all(Array.from({length: 8}, work));
  expect(await readdir(dir)).not.toContain('lock.json');
});

test('a holder that was taken for dead decides anew instead of writing, and leaves the other’s lock alone', async () => {
  const dir = await newRoom();
  let rounds = 0;
  const slow = changeRoom(
    dir,
    async room => {
      if (++rounds === 1) {
        await unlink(join(dir, 'lock.json'));
        await write(dir, [{record: 'note', text: 'by the quicker one'}]);
      }
      return {entries: entriesFor(room, [note])};
    },
    {by: 'anna'},
  );
  expect((await slow).entries.map(({record}) => record)).toEqual([
    {record: 'note', text: 'by the quicker one'},
    note,
  ]);
  expect(rounds).toBe(2);
});

test('releasing a lock that another has taken over leaves it to them', async () => {
  const dir = await newRoom();
  const lock = await takeLock(dir, 'anna');
  const path = await lockOf(dir, {});
  expect(await lock.isHeld()).toBe(false);
  await lock.release();
  expect(JSON.parse(await readFile(path, 'utf8'))).toMatchObject({by: 'bo'});
});
