import fc from 'fast-check';
import {expect, test} from 'vitest';
import type {Series} from '../../src/climate/series.ts';
import {openRoom} from '../../src/room/open.ts';
import {importSeries, newRoom, readings} from './rooms.ts';

const EVER = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
const day = (iso: string) => Date.parse(iso) / 86_400_000;

test('series gives back exactly what was imported, over months and the turn of a year', async () => {
  const dir = await newRoom();
  const imported = readings('2025-11-20T00:00:00Z', 24 * 60);
  await importSeries(dir, 'L1', imported);
  expect(await (await openRoom(dir)).series('L1', ...EVER)).toEqual(imported);
});

test('series includes the readings of both its ends and nothing beyond', async () => {
  const dir = await newRoom();
  await importSeries(dir, 'L1', readings('2026-05-30T00:00:00Z', 100));
  const room = await openRoom(dir);
  const series = await room.series('L1', day('2026-05-31T23:00Z'), day('2026-06-01T01:00Z'));
  expect([...series.atDays].map(at => new Date(at * 86_400_000).toISOString())).toEqual([
    '2026-05-31T23:00:00.000Z',
    '2026-06-01T00:00:00.000Z',
    '2026-06-01T01:00:00.000Z',
  ]);
});

test('a logger without readings has an empty series and no span', async () => {
  const room = await openRoom(await newRoom());
  expect((await room.series('L1', ...EVER)).atDays).toHaveLength(0);
  expect(room.span('L1')).toBeUndefined();
});

test('span tells rows and both ends without reading any', async () => {
  const dir = await newRoom();
  await importSeries(dir, 'L1', readings('2026-04-30T22:00:00Z', 5));
  await importSeries(dir, 'L10', readings('2026-01-01T00:00:00Z', 7));
  expect((await openRoom(dir)).span('L1')).toEqual({
    rows: 5,
    fromDays: day('2026-04-30T22:00Z'),
    toDays: day('2026-05-01T02:00Z'),
  });
});

test('a later import fills in between, and the import of every file is kept', async () => {
  const dir = await newRoom();
  const [even, odd] = [readings('2026-05-01T00:00Z', 400, 120), readings('2026-05-01T01:00Z', 400, 120)];
  await importSeries(dir, 'L1', even, 'even.csv');
  await importSeries(dir, 'L1', odd, 'odd.csv');
  const room = await openRoom(dir);
  const {atDays, temperatureC} = await room.series('L1', ...EVER);
  expect([...atDays]).toEqual([...even.atDays, ...odd.atDays].sort((a, b) => a - b));
  expect([...temperatureC].filter((_, i) => i % 2 === 1)).toEqual([...odd.temperatureC]);
  expect(room.imports.map(({id, file, by}) => [id, file, by])).toEqual([
    ['i1', 'even.csv', 'anna'],
    ['i2', 'odd.csv', 'anna'],
  ]);
});

test('an instant that the room holds already is a mistake of the program, and nothing is written', async () => {
  const dir = await newRoom();
  await importSeries(dir, 'L1', readings('2026-05-01T00:00Z', 10));
  await expect(importSeries(dir, 'L1', readings('2026-05-01T09:00Z', 10))).rejects.toThrow(RangeError);
  expect((await openRoom(dir)).span('L1')?.rows).toBe(10);
});

test('readings out of order are a mistake of the program', async () => {
  const dir = await newRoom();
  const series = readings('2026-05-01T00:00Z', 3);
  series.atDays.reverse();
  await expect(importSeries(dir, 'L1', series)).rejects.toThrow(RangeError);
});

test('any readings come back as they were, missing values too', async () => {
  const dir = await newRoom();
  const value = fc.oneof(fc.double({min: -60, max: 80, noNaN: true}), fc.constant(Number.NaN));
  const row = fc.record({ms: fc.integer({min: 0, max: 4e12}), temperature: value, humidity: value});
  const rows = fc.uniqueArray(row, {selector: ({ms}) => ms, minLength: 1, maxLength: 20});
  let logger = 0;
  await fc.assert(
    fc.asyncProperty(rows, async unsorted => {
      const sorted = unsorted.toSorted((a, b) => a.ms - b.ms);
      const series: Series = {
        atDays: Float64Array.from(sorted, ({ms}) => ms / 86_400_000),
        temperatureC: Float64Array.from(sorted, ({temperature}) => temperature + 0),
        rhPercent: Float64Array.from(sorted, ({humidity}) => humidity + 0),
      };
      const code = `L${++logger}`;
      const room = await importSeries(dir, code, series);
      expect(await room.series(code, ...EVER)).toEqual(series);
    }),
    {numRuns: 25},
  );
});
