// Importing as a person does it: what is remembered, watched, refused, and that the room is as it was after a refusal.
import {appendFileSync, mkdirSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import type {Imported} from '../../src/work/import.ts';
import {stateOf} from './folder-state.ts';
import {newRoom, type RoomAt, temporaryFolder} from './program.ts';

const NOW = '2026-06-12T08:10';
const folder = temporaryFolder();
const file = (name: string, text: string | Uint8Array) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
};

let room: RoomAt;
beforeAll(() => {
  room = newRoom('Europe/Vienna');
  for (const logger of ['L1', 'L2', 'L3', 'L4', 'M1']) room.at(NOW, 'logger', logger, 'automatic');
});

const imported = (...args: string[]) => room.ask<Imported[]>(NOW, 'import', ...args)[0]!;

describe('teneral import', () => {
  it('remembers for a logger what a person chose and what a file settled', () => {
    const settled = file('settled.csv', 'date;time;temp\n25/04/2026;09:00;21,4\n');
    const open = file('open.csv', 'date;time;temp\n03/04/2026;09:00;21,4\n');
    expect(room.at(NOW, 'import', 'L1', open).err).toContain('--format dmy');
    imported('L1', settled);
    expect(imported('L1', open)).toMatchObject({added: 1, from: '2026-04-03T09:00:00+02:00'});
    expect(room.at(NOW, 'import', 'L1', open, '--afresh').status).toBe(1);
  });

  it('names what is remembered where a file does not fit it', () => {
    const wide = file('wide.csv', 'time,A temp,B temp\n2026-05-30 09:00,20,21\n');
    expect(imported('L2', wide, '--sensor', 'B')).toMatchObject({added: 1});
    expect(imported('L2', wide)).toMatchObject({added: 0, duplicates: 1});
    const other = file('other.csv', 'time,C temp,D temp\n2026-05-30 09:00,20,21\n');
    expect(room.at(NOW, 'import', 'L2', other).err).toContain('Remembered for L2: sensor B; --afresh');
  });

  it('accounts for every row of files that overlap, and tells where they contradict one another', () => {
    const rows = (from: number, to: number, shift: number) =>
      Array.from(
        {length: to - from},
        (_, i) => `2026-05-30 ${String(from + i).padStart(2, '0')}:00,${20 + shift}\n`,
      );
    const first = file('first.csv', `time,temp\n${rows(0, 12, 0).join('')}`);
    const second = file('second.csv', `time,temp\n${rows(6, 18, 1).join('')}broken,20\n`);
    const answer = room.ask<Imported[]>(NOW, 'import', 'L3', first, second);
    expect(answer).toMatchObject([
      {rows: 12, added: 12, duplicates: 0},
      {rows: 13, added: 6, duplicates: 6, conflicts: 6, rejected: [{row: 14}]},
    ]);
    for (const {rows, added, duplicates, rejected} of answer)
      expect(rows).toBe(added + duplicates + rejected.length);
  });

  it('imports days of extremes once, also when the file comes again', () => {
    const days = file('days.csv', 'date,min,max\n2026-05-30,10,20\n2026-05-31,11,21\n2026-06-12,1,2\n');
    expect(imported('M1', days)).toMatchObject({rows: 3, added: 2, duplicates: 0, rejected: [{row: 4}]});
    expect(imported('M1', days)).toMatchObject({rows: 3, added: 0, duplicates: 2, rejected: [{row: 4}]});
  });

  it('says beforehand with --dry-run how it reads a file, and changes nothing', () => {
    const path = file('dry.csv', 'time,temp,rh\n2026-05-30 09:00,21.4,0.62\n');
    const before = stateOf(room.dir);
    const said = room.at(NOW, 'import', 'L4', path, '--dry-run', '--clock', '+7m').out;
    expect(said).toContain('1 would be added');
    expect(said).toContain('humidity from "rh" as a fraction of one');
    expect(said).toContain('7 min ahead');
    expect(stateOf(room.dir)).toEqual(before);
  });

  it('leaves the room as it was after any damaged file', () => {
    const good = 'time,temp\n2026-05-30 09:00,21.4\n';
    const damaged = [
      Buffer.alloc(3000),
      Buffer.from(`${good}`).subarray(0, 9),
      Buffer.from('time,temp\n03/04/2026 09:00,20\n'),
      Buffer.concat([Buffer.from([0xff, 0xfe, 0xd8]), Buffer.from(good, 'utf16le')]),
      Buffer.from('time,temp,temp 2\n2026-05-30 09:00,20,30\n'),
    ];
    const before = stateOf(room.dir);
    damaged.forEach((bytes, i) => {
      const {status, err} = room.at(
        NOW,
        'import',
        'L4',
        file('good.csv', good),
        file(`damaged-${i}.csv`, bytes),
      );
      expect([0, 1]).toContain(status);
      expect(err).not.toContain('    at ');
      if (status === 1) expect(stateOf(room.dir)).toEqual(before);
    });
  });

  it('takes each file of a watched folder once', () => {
    const drop = join(folder, 'drop');
    mkdirSync(drop);
    const path = join(drop, 'a.csv');
    writeFileSync(path, 'time,temp\n2026-05-01 09:00,21.4\n');
    writeFileSync(join(drop, 'b.csv'), 'nothing of use\n');
    const look = () =>
      room
        .at(NOW, 'import', 'L4', '--watch', drop, '--once', '--json')
        .out.trim()
        .split('\n')
        .filter(line => line !== '')
        .map(line => JSON.parse(line) as Partial<Imported> & {readonly error?: unknown});
    expect(look()).toMatchObject([{added: 1}, {error: {}}]);
    expect(look()).toMatchObject([{error: {}}]);
    appendFileSync(path, '2026-05-01 09:10,21.5\n');
    expect(look()).toMatchObject([{rows: 2, added: 1, duplicates: 1}, {error: {}}]);
  });
});
