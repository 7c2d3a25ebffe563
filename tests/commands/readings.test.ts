// What a logger said, what of it is doubted, and what a person makes of that, as commands on a room.
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import type {Alerts} from '../../src/work/alerts.ts';
import type {Comparison} from '../../src/work/compare-loggers.ts';
import type {DoubtRow, ReadingRow} from '../../src/work/logger-readings.ts';
import type {SaltTest} from '../../src/work/salt-test.ts';
import {newRoom, type RoomAt, temporaryFolder} from './program.ts';

const NOW = '2026-06-12T08:10';
const folder = temporaryFolder();
const STEP_MS = 600_000;

/** Twelve days up to now every ten minutes; a spike on 10 June at 12:00. */
function logged(name: string, offset: number): string {
  const end = Date.parse('2026-06-12T08:00Z');
  const rows = Array.from({length: 12 * 144}, (_, i) => {
    const at = end - (12 * 144 - 1 - i) * STEP_MS;
    const hours = (at / 3_600_000) % 24;
    const spike = new Date(at).toISOString().startsWith('2026-06-10T12:00') ? 30 : 0;
    const temperature = 22 + Math.sin((hours * Math.PI) / 12) + offset + spike;
    return `${new Date(at).toISOString()},${temperature.toFixed(2)},${(74 + (i % 3)).toFixed(0)}`;
  });
  const path = join(folder, name);
  writeFileSync(path, `time,temperature_C,humidity_percent\n${rows.join('\n')}\n`);
  return path;
}

let room: RoomAt;
beforeAll(() => {
  room = newRoom();
  room.apply(NOW, [
    {record: 'logger', code: 'L1', kind: 'automatic'},
    {record: 'logger', code: 'L2', kind: 'automatic'},
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', logger: 'L1'},
  ]);
  room.at(NOW, 'import', 'L1', logged('L1.csv', 0));
  room.at(NOW, 'import', 'L2', logged('L2.csv', 0.5));
});

const doubts = () => room.ask<{doubts: DoubtRow[]}>(NOW, 'readings', 'L1', '--doubts').doubts;
const warmest = () =>
  Math.max(
    ...room
      .ask<{days: {maximumC: number}[]}>(NOW, 'climate', 'C1', '--days', '4')
      .days.map(({maximumC}) => maximumC),
  );

describe('teneral readings', () => {
  it('sets a spike aside, and a person may trust it all the same, by instant', () => {
    const [spike, ...more] = doubts();
    expect(more).toEqual([]);
    expect(spike).toMatchObject({rule: 'spike', readings: 1, state: 'set-aside'});
    expect(warmest()).toBeLessThan(24);
    room.at(NOW, 'mask', 'L1', spike!.from, spike!.to, '--lift', '--why', 'a lamp');
    expect(doubts()).toMatchObject([{state: 'trusted'}]);
    expect(warmest()).toBeGreaterThan(50);
    room.at(NOW, 'mask', 'L1', spike!.from, spike!.to, '--why', 'no lamp after all');
    expect(doubts()).toMatchObject([{state: 'masked'}]);
    expect(warmest()).toBeLessThan(24);
  });

  it('follows rules set for the logger, one after the other', () => {
    room.at(NOW, 'logger', 'L2', '--rule', 'spike=off');
    room.at(NOW, 'logger', 'L2', '--rule', 'too-warm=45');
    const found = room.ask<{doubts: DoubtRow[]; rules: object}>(NOW, 'readings', 'L2', '--doubts');
    expect(found.doubts).toMatchObject([{rule: 'too-warm'}]);
    expect(found.rules).toMatchObject({spike: 'off', 'too-warm': 45, stuck: 6});
    expect(room.at(NOW, 'logger', 'L2', '--rule', 'spikes=3').status).toBe(1);
  });

  it('lists readings, as CSV that import reads back', () => {
    const {readings} = room.ask<{readings: ReadingRow[]}>(NOW, 'readings', 'L1', '--from', '2026-06-12');
    expect(readings).toHaveLength(49);
    const path = join(folder, 'again.csv');
    writeFileSync(path, room.at(NOW, 'readings', 'L1', '--from', '2026-06-12', '--csv').out);
    expect(room.ask(NOW, 'import', 'L1', path)).toMatchObject([
      {rows: 49, added: 0, duplicates: 49, conflicts: 0},
    ]);
  });

  it('compares two loggers in one place', () => {
    const {temperature} = room.ask<Comparison>(NOW, 'readings', 'L1', '--against', 'L2');
    expect(temperature.offset).toBeCloseTo(-0.5, 6);
    expect(Math.abs(temperature.drift!)).toBeLessThan(1e-6);
  });

  it('checks a humidity sensor over a salt', () => {
    const {salt} = room.ask<SaltTest>(NOW, 'readings', 'L1', '--salt', 'NaCl', '--from', '2026-06-11T20:00');
    expect(salt.sensor).toMatchObject({reads: expect.closeTo(75, 0), withinUncertainty: false});
    expect(salt.sensor!.error).toBeCloseTo(75 - salt.humidity, 0);
  });
});

describe('teneral alerts', () => {
  it('opens once, is acknowledged with what was done, and closes itself when its cause is gone', () => {
    room.apply(NOW, [
      {record: 'unit', code: 'T1', type: 'aquarium', place: 'bench', at: '2026-06-01T09:00'},
      {
        record: 'sample',
        code: 's',
        collected: {from: '2026-06-01'},
        method: 'kick-net',
      },
      {record: 'lot', code: 'l', sample: 's', unit: 'T1', stages: {nymph: 3}, at: '2026-06-10T09:00'},
      {record: 'check', lot: 'l', at: '2026-06-11T09:00'},
      {record: 'water', unit: 'T1', at: '2026-06-11T09:00', oxygenMgL: 3},
    ]);
    const stateOf = () => {
      const {alerts, passed} = room.ask<Alerts>(NOW, 'alerts');
      const id = 'water-oxygenMgL:T1:2026-06-11';
      return (alerts.find(each => each.id === id) ?? passed.find(each => each.id === id))?.state;
    };
    expect(stateOf()).toBe('open');
    room.at(NOW, 'acknowledge', 'water-oxygenMgL:T1:2026-06-11', 'aerated');
    expect(stateOf()).toBe('acknowledged');
    room.apply(NOW, [{record: 'water', unit: 'T1', at: NOW, oxygenMgL: 8.5}]);
    expect(stateOf()).toBe('passed');
  });
});
