// Animals taken out of galls, wood or fruit are who came out there before.
import {mkdtempSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {createRoom} from '../../src/room/create.ts';
import {openDesk} from '../../src/work/desk.ts';
import {outlooks} from '../../src/work/outlook.ts';
import {record} from '../../src/work/record.ts';

const START = '2026-05-01T12:00:00Z';
const day = (days: number) => new Date(Date.parse(START) + days * 86_400_000).toISOString();

/** Ten days at 20 °C, or twenty. */
const kind = (profile: string, degreeDays: number) => ({
  ...{record: 'profile', profile, name: profile, rank: 'species', rearing: ['emergence-box'], paceSd: 0.05},
  stages: [{stage: 'pupa', rate: {kind: 'degree-day', lower: 10, degreeDays}, cv: 0.2}],
  sources: [{id: 'a', citation: 'invented for the test', provenance: 'computed'}],
});

type Weights = Readonly<Record<string, number>>;

/** Of A, the galls, and B, taken out of them, as of a day. */
async function weightsOn(asOf: number, ...more: readonly object[]): Promise<{A: Weights; B: Weights}> {
  const dir = join(mkdtempSync(join(tmpdir(), 'hidden-')), 'room');
  const session = {dir, by: 'A. Keeper', now: day(asOf), warn: () => {}};
  await createRoom(dir, {name: 'r', zone: 'UTC', by: session.by, now: Date.parse(session.now)});
  await record(session, [
    kind('quick', 100),
    kind('slow', 200),
    {record: 'unit', code: 'E1', type: 'emergence-box', place: 'a', setPoints: {constant: 20}},
    {record: 'sample', code: 'S', method: 'gall', collected: {from: '2026-04-29'}},
    {
      ...{record: 'lot', code: 'A', sample: 'S', unit: 'E1', at: START, progress: [0, 0]},
      material: {what: 'galls', amount: 40, unit: 'pieces'},
      candidates: [{profile: 'quick'}, {profile: 'slow'}],
    },
    ...more,
  ]);
  const told = await outlooks(await openDesk(session, 'all'), {codes: ['A', 'B'], futures: 0});
  const [A, B] = told.map(({forecast}) =>
    Object.fromEntries(forecast.candidates.map(({profile, weight}) => [profile, weight])),
  );
  return {A: A!, B: B!};
}

const out = (since: number, at: number) => {
  return {record: 'emergence', lot: 'A', since: day(since), at: day(at), adults: [{count: 4}]};
};
const split = {record: 'split', lot: 'A', into: 'B', at: day(9), stages: {pupa: 5}};

const check = {record: 'check', lot: 'A', at: day(5), found: 0};

test('what was seen of the galls by then says who they are', async () => {
  const {A, B} = await weightsOn(9, check, out(5, 7), out(7, 8.5), split);
  expect(A.quick).toBeGreaterThan(0.9);
  expect(B.quick).toBeCloseTo(A.quick!, 9);
});

test('what is seen of them later does not', async () => {
  const then = await weightsOn(9, check, split);
  const later = await weightsOn(12, check, split, out(9, 10), out(10, 12));
  expect(Math.abs(later.A.quick! - then.A.quick!)).toBeGreaterThan(0.1);
  expect(later.B.quick).toBeCloseTo(then.B.quick!, 9);
});

test('where something else is thought of them it stays so', async () => {
  const candidates = [
    {profile: 'quick', weight: 1},
    {profile: 'slow', weight: 3},
  ];
  const {B} = await weightsOn(10, out(7, 8.5), split, {
    record: 'revision',
    lot: 'B',
    at: day(9.5),
    candidates,
  });
  expect(B.quick).toBeCloseTo(0.25, 2);
});
