import {readdir} from 'node:fs/promises';
import {expect, test, vi} from 'vitest';
import {Refusal} from '../../src/records/refusal.ts';
import {archiveRoom} from '../../src/room/archive.ts';
import {openRoom} from '../../src/room/open.ts';
import {verifyRoom} from '../../src/room/verify.ts';
import {importSeries, newRoom, readings, write} from './rooms.ts';

/** Which call of the disk finds it full next, counted down to. */
const fault = vi.hoisted(() => ({in: Number.POSITIVE_INFINITY}));

vi.mock('node:fs/promises', async importOriginal => {
  const real = await importOriginal<typeof import('node:fs/promises')>();
  const failing = <Call extends (...args: never[]) => Promise<unknown>>(call: Call) =>
    (async (...args: never[]) => {
      if (--fault.in === 0) throw Object.assign(new Error('ENOSPC'), {code: 'ENOSPC'});
      return call(...args);
    }) as Call;
  const open: typeof real.open = async (...args) => {
    const handle = await failing(real.open)(...args);
    handle.writeFile = failing(handle.writeFile.bind(handle));
    handle.sync = failing(handle.sync.bind(handle));
    return handle;
  };
  const wrapped = {open, rename: failing(real.rename), mkdir: failing(real.mkdir), link: failing(real.link)};
  return {...real, ...wrapped};
});

/**
 * Let the call fail that is counted to, once; then the disk is well again.
 * @returns the result or the error, and whether the count was reached
 */
async function failingAt(call: number, work: () => Promise<unknown>) {
  fault.in = call;
  const result: unknown = await work().catch((error: unknown) => error);
  const reached = fault.in <= 0;
  fault.in = Number.POSITIVE_INFINITY;
  return {result, reached};
}

async function furnished(): Promise<string> {
  const dir = await newRoom();
  await write(dir, [
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack'},
    {record: 'sample', code: 'A', collected: {from: '2026-05-01'}, method: 'sweep'},
    {record: 'lot', code: 'A-1', sample: 'A', unit: 'C1', at: '2026-05-02T10:00:00Z', stages: {pupa: 2}},
    {record: 'close', lot: 'A-1', at: '2026-05-20T10:00:00Z', reason: 'done'},
  ]);
  await importSeries(dir, 'L1', readings('2026-05-30T00:00Z', 5));
  return dir;
}

test.each([
  ['an import over two months', (dir: string) => importSeries(dir, 'L1', readings('2026-05-31T22:00Z', 6))],
  [
    'records',
    (dir: string) =>
      write(dir, [
        {record: 'note', text: 'a'},
        {record: 'note', text: 'b'},
      ]),
  ],
  ['archiving', (dir: string) => archiveRoom(dir, {by: 'anna'})],
])('%s is on disk as a whole or not at all, whichever call of the disk fails', async (_, change) => {
  const outcomes: string[] = [];
  for (let call = 1, reached = true; reached; call++) {
    const dir = await furnished();
    const before = await openRoom(dir);
    const files = await documentsIn(dir);
    const attempt = await failingAt(call, () => change(dir));
    reached = attempt.reached;
    expect((await verifyRoom(dir)).problems).toEqual([]);
    expect(await readdir(dir)).not.toContain('lock.json');
    const changed = (await openRoom(dir)).revision !== before.revision;
    const refused = attempt.result instanceof Error;
    if (refused) expect(attempt.result).toBeInstanceOf(Refusal);
    if (!changed) expect(await documentsIn(dir)).toEqual(files);
    outcomes.push(`${changed ? 'changed' : 'unchanged'}, ${refused ? 'refused' : 'acknowledged'}`);
  }
  expect(outcomes).not.toContain('unchanged, acknowledged');
  expect(outcomes.filter(outcome => outcome === 'unchanged, refused').length).toBeGreaterThan(5);
  // Only where the folder could not be synced after the rename: the change is there, but may not last.
  expect(outcomes.filter(outcome => outcome === 'changed, refused').length).toBeLessThanOrEqual(2);
  expect(outcomes.at(-1)).toBe('changed, acknowledged');
});

async function documentsIn(dir: string): Promise<string[]> {
  const files = await readdir(dir, {recursive: true});
  return files.filter(file => file.endsWith('.json')).toSorted();
}
