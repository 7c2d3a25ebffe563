// A mayfly moults once more as an adult: one animal, one specimen, one label with all its days. Everything is invented.
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {newRoom, temporaryFolder} from '../commands/program.ts';
import {readArchive} from '../exchange/read-archive.ts';
import {applied, refused, said, sample} from './story-room.ts';

const stories = [
  {
    nymphs: 8,
    collected: '2031-05-02',
    seen: '2031-05-13T18:00',
    out: '2031-05-14T06:40',
    moulted: '2031-05-15T05:10',
  },
  {
    nymphs: 1,
    collected: '2031-06-27',
    seen: '2031-06-30T20:00',
    out: '2031-07-01T07:15',
    moulted: '2031-07-01T22:05',
  },
];
const months = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii'];
const onLabel = (day: string) =>
  `${Number(day.slice(8, 10))}.${months[Number(day.slice(5, 7)) - 1]}.${day.slice(0, 4)}`;

describe.each(stories)('a subimago at $out', ({nymphs, collected, seen, out, moulted}) => {
  const room = newRoom();
  const records = [
    sample('S31-0088', collected),
    {record: 'unit', code: 'T1', type: 'aquarium', place: 'rack A/1', volumeLitres: 10},
    {
      ...{record: 'lot', code: 'R31-047', sample: 'S31-0088', unit: 'T1', at: `${collected}T18:00`},
      stages: {nymph: nymphs},
      candidates: [{profile: 'ephemeroptera', weight: 1}],
    },
    {record: 'check', lot: 'R31-047', at: seen, found: 0},
  ];
  applied(room, seen, records);
  const later = `${moulted.slice(0, 10)}T23:00`;
  const sum = `${nymphs} started = ${nymphs - 1} alive + 1 emerged`;

  const nextDay = (at: string) => new Date(Date.parse(`${at}Z`) + 86_400_000).toISOString().slice(0, 16);
  const tasks = (now: string) =>
    room.ask<{tasks: {task: string}[]}>(now, 'today').tasks.filter(({task}) => task === 'tend-subimago');

  it('asks at once to move it dry, to look again within 24 h, and to keep both skins as parts a and b', () => {
    const other = newRoom();
    applied(other, seen, records);
    const words = said(other, out, 'emerge', 'R31-047', '--subimago', '--code', 'A31-0311');
    expect(words).toContain('move A31-0311 dry, airy and upright');
    expect(words).toContain(`within 24 h, by tomorrow ${out.slice(11)}`);
    expect(words).toContain('its larval skin with it as A31-0311a');
    expect(words).toContain('--skin A31-0311b');
    expect(said(other, moulted, 'imago', 'A31-0311')).toContain('--skin A31-0311b');
  });

  it('counts once, as the subimago, and not again as the imago', () => {
    said(
      ...([room, out, 'emerge', 'R31-047', '--female', '1', '--subimago', '--animal', '05'] as const),
      ...['--association', '1', '--code', 'A31-0311', '--exuviae', 'A31-0311a'],
    );
    expect(said(room, out, 'balance', 'R31-047')).toContain(sum);
    const tended = tasks(out);
    expect(tended).toMatchObject([
      {title: 'move the subimago dry, look for the imago', latest: `${nextDay(out)}:00+00:00`},
    ]);
    expect(refused(room, moulted, 'prepare', 'A31-0311', '--killed', out)).toContain(
      'A31-0311 was killed as a subimago, before it moulted to the imago',
    );
    said(room, moulted, 'imago', 'A31-0311', '--skin', 'A31-0311b', '--association', '1');
    said(room, later, 'prepare', 'A31-0311', '--killed', moulted);
    expect(tasks(moulted)).toEqual([]);
    expect(said(room, later, 'balance', 'R31-047')).toContain(sum);
  });

  it('has the days it was collected, came out and moulted on one label, and its skins under its number', () => {
    const file = join(temporaryFolder(), 'labels.txt');
    said(room, later, 'labels', '--lot', 'R31-047', '--out', file);
    const labels = readFileSync(file, 'utf8');
    expect(labels).toContain(`coll. ${onLabel(collected)}`);
    expect(labels).toMatch(new RegExp(`em\\. .*${onLabel(out)}, imago ${onLabel(moulted)}`));
    expect(labels.match(/exuviae of A31-0311/g)).toHaveLength(2);
    expect(labels).toContain('subimaginal exuviae of A31-0311');
    for (const skin of ['A31-0311a', 'A31-0311b']) expect(labels).toContain(`exuviae ${skin}`);
  });

  it('is handed over with both skins', async () => {
    const file = join(temporaryFolder(), 'room.zip');
    said(room, later, 'export', 'darwin-core', '--out', file, '--licence', 'CC-BY');
    const {tables} = await readArchive(readFileSync(file));
    const row = tables.flatMap(({rows}) => rows).find(({catalogNumber}) => catalogNumber === 'A31-0311');
    expect(row?.otherCatalogNumbers).toBe('A31-0311a | A31-0311b');
    expect(row?.preparations).toBe('exuviae A31-0311a | subimaginal exuviae A31-0311b');
  });

  it('came out between the last look and the one that found it', () => {
    const [adult] = room.ask<{code: string; since: string; at: string}[]>(later, 'list', 'specimens');
    expect(adult).toMatchObject({code: 'A31-0311', since: `${seen}:00+00:00`, at: `${out}:00+00:00`});
  });

  it('leads back to its lot and its field sample', () => {
    const origin = said(room, later, 'trace', 'A31-0311b');
    expect(origin).toContain('R31-047');
    expect(origin).toContain('S31-0088');
  });

  it('takes no adult without a lot, and none before its collection', () => {
    expect(refused(room, later, 'emerge', 'R31-999', '--female', '1')).toContain('there is no lot R31-999');
    const early = refused(room, later, 'emerge', 'R31-047', '--female', '1', '--at', '2031-04-01T06:00');
    expect(early).toContain(
      `2031-04-01 06:00 is before the animals of lot R31-047 were collected: sample S31-0088 is of ${collected}`,
    );
    expect(early).toContain('teneral correct e1 collected.from=2031-03-31');
    const nobodys = room.apply(later, [{record: 'emergence', adults: [{count: 1}]}]);
    expect(nobodys.status).toBe(1);
    expect(nobodys.err).toContain('An adult is entered from the lot that it came out of');
  });

  it('leads from a second emergence of the same animal to its moult', () => {
    expect(refused(room, later, 'emerge', 'R31-047', '--animal', '05')).toContain(
      'Its moult to the imago adds no animal: teneral imago A31-0311.',
    );
  });
});
