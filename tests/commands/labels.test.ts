// teneral labels: what is printed is remembered, printed once, and printed anew where the record changed.
import {existsSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import {readPdf} from '../exchange/labels/read-pdf.ts';
import {newRoom, type RoomAt, temporaryFolder} from './program.ts';

const NOW = '2026-06-12T09:00Z';
interface Answer {
  readonly labels: number;
  readonly specimens: number;
  readonly passedOver: number;
  readonly changed: number;
  readonly kinds: Readonly<Record<string, number>>;
  readonly entries: readonly string[];
}

let room: RoomAt;
let folder: string;
const labels = (...args: string[]) => room.ask<Answer>(NOW, 'labels', ...args);
const out = (name: string) => ['--out', join(folder, name)];

beforeAll(() => {
  folder = temporaryFolder();
  room = newRoom();
  const {err} = room.apply(NOW, [
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
    {
      record: 'sample',
      code: 'S',
      method: 'search',
      collected: {from: '2026-05-30'},
      place: {country: 'Varenland', locality: 'Žerotín – Φ'},
    },
    {record: 'lot', code: 'A', sample: 'S', unit: 'C1', stages: {pupa: 9}, at: '2026-06-01T09:00Z'},
    {record: 'emergence', lot: 'A', at: '2026-06-10T09:00Z', adults: [{sex: 'female', count: 3}]},
    {
      record: 'emergence',
      lot: 'A',
      at: '2026-06-11T09:00Z',
      adults: [{sex: 'male', count: 1}],
      fate: 'released',
    },
  ]);
  expect(err).toBe('');
});

describe('teneral labels', () => {
  it('without a file shows them and remembers nothing', () => {
    expect(room.at(NOW, 'labels').out).toContain('VARENLAND\nŽerotín – Φ\ncoll. 30.v.2026, search by hand\n');
    expect(labels()).toMatchObject({labels: 9, specimens: 3, passedOver: 0, entries: []});
  });

  it('prints a PDF whose text is what the records say, for all that were not let go', async () => {
    const answer = labels(...out('l.pdf'));
    expect(answer).toMatchObject({labels: 9, specimens: 3, kinds: {data: 3, rearing: 3, code: 3}});
    expect(answer.entries).toHaveLength(1);
    const [page] = await readPdf(readFileSync(join(folder, 'l.pdf')));
    const read = page!.texts.map(({text}) => text).join(' ');
    for (const words of ['Žerotín – Φ', 'ex pupa', '♀ em. 1-10.vi.2026', 'A-1', 'A-3'])
      expect(read).toContain(words);
    expect(read).not.toContain('A-4');
  });

  it('prints none twice unasked, all again with --again', () => {
    expect(labels(...out('m.pdf'))).toMatchObject({labels: 0, passedOver: 9});
    expect(existsSync(join(folder, 'm.pdf'))).toBe(false);
    expect(labels('--again', '--specimen', 'A-2', ...out('m.txt'))).toMatchObject({labels: 3, specimens: 1});
  });

  it('prints a determination once it is made, and anew where it changed, saying so', () => {
    room.at(NOW, 'identify', 'A-1', 'Pieris rapae', '--det', 'B. Namer');
    expect(labels(...out('n.txt'))).toMatchObject({labels: 1, changed: 0, kinds: {determination: 1}});
    room.at(NOW, 'identify', 'A-1', 'Pieris napi', '--det', 'C. Namer');
    expect(labels(...out('o.txt'))).toMatchObject({labels: 1, changed: 1});
    expect(readFileSync(join(folder, 'o.txt'), 'utf8')).toBe('Pieris napi\ndet. C. Namer 2026\n');
  });

  it('forgets with undo', () => {
    labels('--again', '--only', 'code', ...out('p.txt'));
    room.at(NOW, 'undo');
    expect(labels(...out('q.txt'))).toMatchObject({labels: 0});
  });

  it('refuses what it cannot print, in one line, and leaves no file', () => {
    const refused = (said: RegExp, ...args: string[]) => {
      const {status, err} = room.at(NOW, 'labels', ...args);
      expect(status).toBe(1);
      expect(err).toMatch(said);
      expect(err.trim().split('\n')).toHaveLength(1);
    };
    refused(/there is no lot B/, '--lot', 'B', ...out('r.pdf'));
    refused(/neither a PDF nor text/, '--again', ...out('r.doc'));
    refused(/its text does not fit 5 × 3 mm/, '--again', '--size', '5x3', ...out('r.pdf'));
    refused(/do not fit paper/, '--again', '--size', '400x8', ...out('r.pdf'));
    expect(existsSync(join(folder, 'r.pdf'))).toBe(false);
    expect(room.at(NOW, 'labels', '--size', 'large').status).toBe(2);
    expect(room.at(NOW, 'labels', '--only', 'price').status).toBe(2);
  });

  it('prints cards for the units in use, for a lot, for every container of a sample', () => {
    expect(room.ask(NOW, 'labels', '--cards', ...out('c.pdf'))).toMatchObject({cards: 1, pages: 1});
    expect(
      room.ask(NOW, 'labels', '--cards', '--sample', 'S', '--copies', '3', ...out('d.txt')),
    ).toMatchObject({cards: 3});
    expect(room.at(NOW, 'labels', '--cards', '--lot', 'A').out).toContain('sample S, Žerotín – Φ');
  });
});
