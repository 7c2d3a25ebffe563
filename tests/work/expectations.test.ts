// Which forecasts the care list works out again after a change, and which it keeps.
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {beforeEach, describe, expect, it, onTestFinished} from 'vitest';
import {createRoom} from '../../src/room/create.ts';
import {openDesk} from '../../src/work/desk.ts';
import {fingerprintOf, fingerprintOfRoom} from '../../src/work/expectations.ts';
import {outlooks} from '../../src/work/outlook.ts';
import {record} from '../../src/work/record.ts';
import type {Session} from '../../src/work/session.ts';
import {undo} from '../../src/work/undo.ts';

const NOW = '2026-06-12T09:00:00Z';
let session: Session;

beforeEach(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'teneral-test-'));
  onTestFinished(() => rmSync(folder, {recursive: true, force: true}));
  session = {dir: join(folder, 'room'), by: 'A. Keeper', now: NOW, warn: () => {}};
  await createRoom(session.dir, {
    name: 'test',
    zone: 'UTC',
    by: session.by,
    now: Date.parse('2026-06-01T09:00Z'),
  });
  const lot = {record: 'lot', unit: 'C1', at: '2026-06-10T09:00', candidates: [{profile: 'pieris-rapae'}]};
  await record(session, [
    {record: 'logger', code: 'L1', kind: 'hand'},
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', logger: 'L1', setPoints: {constant: 22}},
    {record: 'sample', code: '26-031', collected: {from: '2026-06-09'}, method: 'beating'},
    {...lot, code: 'A', sample: '26-031', stages: {larva: 9}},
    {...lot, code: 'B', sample: '26-031', stages: {larva: 9}},
  ]);
});

/** What each lot's expectation rests on, as of now. */
async function prints(): Promise<Record<string, string>> {
  const desk = await openDesk(session);
  const shared = fingerprintOfRoom(desk);
  return Object.fromEntries(
    [...desk.state.lots.values()].map(lot => [lot.code, fingerprintOf(lot, shared, desk)]),
  );
}

describe('what an expectation rests on', () => {
  it('does not change with care done, nor when that is taken back', async () => {
    const before = await prints();
    await record(session, [{record: 'care', unit: 'C1', lot: 'A', task: 'feed'}]);
    expect(await prints()).toEqual(before);
    await undo(session);
    expect(await prints()).toEqual(before);
  });

  it('changes for the lot that something was seen of, and only for it; taken back, it is as before', async () => {
    const before = await prints();
    await record(session, [{record: 'count', lot: 'A', stages: {pupa: 9}}]);
    const after = await prints();
    expect(after.A).not.toBe(before.A);
    expect(after.B).toBe(before.B);
    await undo(session);
    expect(await prints()).toEqual(before);
  });

  it('changes for every lot with a reading, a mask, a new set point, opening hours; taken back, it is as before', async () => {
    const changes = [
      {record: 'reading', logger: 'L1', temperature: 21},
      {record: 'mask', logger: 'L1', from: '2026-06-11T09:00', to: '2026-06-11T10:00', why: 'in the sun'},
      {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', setPoints: {constant: 25}},
      {record: 'calendar', open: {mon: ['08:00-17:00']}},
    ];
    for (const change of changes) {
      const before = await prints();
      await record(session, [change]);
      const after = await prints();
      expect(after.A, change.record).not.toBe(before.A);
      expect(after.B, change.record).not.toBe(before.B);
      await undo(session);
      expect(await prints(), change.record).toEqual(before);
    }
  });

  it('of a lot split off, changes with what is known of the time before, and not with what comes after', async () => {
    const counted = {record: 'count', lot: 'A', at: '2026-06-11T09:00', stages: {larva: 3, pupa: 6}};
    await record(session, [counted]);
    const off = {record: 'split', lot: 'A', into: 'D', at: '2026-06-11T10:00', stages: {pupa: 6}};
    await record(session, [off]);
    const before = await prints();
    await record(session, [{record: 'count', lot: 'A', stages: {pupa: 3}}]);
    expect((await prints()).D).toBe(before.D);
    await record(session, [{record: 'check', lot: 'A', at: '2026-06-11T09:30', found: 0}]);
    expect((await prints()).D).not.toBe(before.D);
  });

  it('of all animals split off into another unit goes on as they were', async () => {
    await record(session, [
      {record: 'unit', code: 'C2', type: 'cage', place: 'rack A/2', setPoints: {constant: 22}},
      {record: 'count', lot: 'A', at: '2026-06-11T09:00', stages: {pupa: 9}},
    ]);
    const said = async (code: string) => {
      const [outlook] = await outlooks(await openDesk(session), {codes: [code]});
      const {animal, pace, candidates} = outlook!.forecast;
      return {animal: animal.p50!, pace: pace!.p50, candidates};
    };
    const was = await said('A');
    const off = {record: 'split', lot: 'A', into: 'D', unit: 'C2', stages: {pupa: 9}};
    await record(session, [off]);
    const is = await said('D');
    expect(is.animal).toBeCloseTo(was.animal, 1);
    expect(is.pace).toBeCloseTo(was.pace, 3);
    expect(is.candidates).toEqual(was.candidates);
  });
});
