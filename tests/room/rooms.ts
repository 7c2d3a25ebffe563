// Rooms in real temporary folders, and entries to write into them.
import {mkdtemp, rm} from 'node:fs/promises';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll} from 'vitest';
import type {Series} from '../../src/climate/series.ts';
import type {Entry} from '../../src/records/entry.ts';
import {parseRecord} from '../../src/records/schema/index.ts';
import {type ChangeOptions, changeRoom} from '../../src/room/change.ts';
import {createRoom} from '../../src/room/create.ts';
import {nextIds} from '../../src/room/numbering.ts';
import type {Room} from '../../src/room/room.ts';
import {readings} from './readings-of.ts';

export const NOW = Date.parse('2026-06-12T08:40:00Z');
export {readings};

const made: string[] = [];

afterAll(async () => {
  for (const folder of made) await rm(folder, {recursive: true, force: true});
});

/** A new empty folder, removed when the test file is done. */
export async function newFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'teneral-room-'));
  made.push(folder);
  return folder;
}

/** A new empty room. */
export async function newRoom(): Promise<string> {
  const dir = join(await newFolder(), 'room');
  await createRoom(dir, {name: 'north room', zone: 'Europe/Vienna', by: 'anna', now: NOW});
  return dir;
}

/** Write records as one request. */
export async function write(dir: string, records: readonly object[], options: Partial<ChangeOptions> = {}) {
  const all = {by: 'anna', now: NOW, ...options};
  return changeRoom(dir, async room => ({entries: entriesFor(room, records, all)}), all);
}

export function entriesFor(
  room: Room,
  records: readonly object[],
  {by = 'anna', now = NOW}: {by?: string; now?: number} = {},
): Entry[] {
  const ids = nextIds(room, records.length);
  const recordedAt = new Date(now).toISOString();
  return records.map((record, i) => ({
    id: ids.entries[i]!,
    request: ids.request,
    recordedAt,
    by,
    record: parseRecord(record, `record ${i + 1}`),
  }));
}

/** Import a series into a logger. */
export async function importSeries(dir: string, logger: string, series: Series, file = `${logger}.csv`) {
  return changeRoom(dir, async () => ({entries: [], readings: [{logger, file, hash: 'a1', series}]}), {
    by: 'anna',
    now: NOW,
  });
}

/** A room with a unit, a sample, a lot that is closed, and readings of L1. */
export async function furnished(): Promise<string> {
  const dir = await newRoom();
  await write(dir, [
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack'},
    {record: 'sample', code: 'A', collected: {from: '2026-05-01'}, method: 'sweep'},
    {
      record: 'lot',
      code: 'A-1',
      sample: 'A',
      unit: 'C1',
      at: '2026-05-02T10:00:00Z',
      stages: {pupa: 2},
      key: 'k',
    },
    {record: 'close', lot: 'A-1', at: '2026-05-20T10:00:00Z', reason: 'done'},
  ]);
  await importSeries(dir, 'L1', readings('2026-05-30T00:00Z', 50));
  return dir;
}
