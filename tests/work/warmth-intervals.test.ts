// Intervals in degree-days, held against the degree-days of the same readings as summed here, minute by minute.
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterEach, describe, expect, it} from 'vitest';
import {createRoom} from '../../src/room/create.ts';
import {openDesk} from '../../src/work/desk.ts';
import {record} from '../../src/work/record.ts';
import {allTasks} from '../../src/work/today.ts';

const HOUR_MS = 3_600_000;
const START = Date.parse('2031-06-01T00:00Z');
const FED = Date.parse('2031-06-01T09:00Z');
const LOWER = 8;
const folders: string[] = [];

afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, {recursive: true});
});

/** A day's course about a mean that rises from day to day, read every three hours. */
const readings = (dailyRiseC: number, days: number) =>
  Array.from({length: days * 8 + 1}, (_, i) => {
    const hours = i * 3;
    const temperature = 16 + (dailyRiseC * hours) / 24 + 6 * Math.sin(((hours - 9) * Math.PI) / 12);
    return {at: START + hours * HOUR_MS, temperature: Math.round(temperature * 100) / 100};
  });

/** When so many degree-days have come together: the readings joined by straight lines, a minute at a time. */
function summed(read: ReturnType<typeof readings>, from: number, degreeDays: number): number {
  let sum = 0;
  let at = from;
  for (; sum < degreeDays; at += 60_000) {
    const i = read.findIndex(each => each.at > at + 30_000);
    const [a, b] = [read[i - 1]!, read[i]!];
    const here = a.temperature + ((b.temperature - a.temperature) * (at + 30_000 - a.at)) / (b.at - a.at);
    sum += Math.max(0, here - LOWER) / 1440;
  }
  return at;
}

async function feeding(read: ReturnType<typeof readings>, degreeDays: number, now: number) {
  const dir = join(mkdtempSync(join(tmpdir(), 'teneral-warmth-')), 'room');
  folders.push(join(dir, '..'));
  await createRoom(dir, {name: 'warm', zone: 'UTC', by: 'Ida', now: START});
  const session = {dir, by: 'Ida', now: new Date(now).toISOString(), warn: () => {}};
  const iso = (at: number) => new Date(at).toISOString();
  await record(session, [
    {record: 'logger', code: 'L1', kind: 'hand'},
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A', logger: 'L1'},
    {record: 'sample', code: 'S1', collected: {from: '2031-05-30'}, method: 'search'},
    {record: 'lot', code: 'A', sample: 'S1', unit: 'C1', at: iso(START), stages: {larva: 9}},
    {
      record: 'rule',
      code: 'warm',
      task: 'feed',
      for: {lot: 'A'},
      every: {degreeDays, lower: LOWER},
      at: iso(START),
    },
    {record: 'care', lot: 'A', task: 'feed', at: iso(FED)},
    ...read
      .filter(({at}) => at <= now)
      .map(({at, temperature}) => ({record: 'reading', logger: 'L1', at: iso(at), temperature})),
  ]);
  return (await allTasks(await openDesk(session))).find(({task}) => task === 'feed')!;
}

describe('an interval in degree-days', () => {
  it.each([
    [0, 30],
    [1.5, 30],
    [-0.5, 30],
  ])(
    'falls due when the same readings have summed to it: %d °C a day, %d degree-days',
    async (rise, wanted) => {
      const read = readings(rise, 9);
      // All readings are in, so nothing of it is expected, only read.
      const {target, earliest, latest} = await feeding(read, wanted, START + 9 * 24 * HOUR_MS);
      expect(Math.abs(target - summed(read, FED, wanted))).toBeLessThan(2 * 60_000);
      expect(Math.abs(earliest - summed(read, FED, wanted / 2))).toBeLessThan(2 * 60_000);
      expect(Math.abs(latest - summed(read, FED, wanted * 1.5))).toBeLessThan(2 * 60_000);
    },
  );

  it('comes sooner as the unit warms', async () => {
    const now = START + 2 * 24 * HOUR_MS;
    const [cool, warm] = [await feeding(readings(0, 2), 30, now), await feeding(readings(3, 2), 30, now)];
    expect(warm.target).toBeLessThan(cool.target - 6 * HOUR_MS);
  });
});
