// A lot that is split and must add up, and the part that keeps its origin. Everything is invented.
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {newRoom, temporaryFolder} from '../commands/program.ts';
import {applied, DAY_MS, kind, refused, said, sample} from './story-room.ts';

const stories = [
  {started: 60, dead: 6, kept: 4, killed: 3, escaped: 1, split: 20, counted: 24},
  {started: 45, dead: 2, kept: 5, killed: 4, escaped: 3, split: 11, counted: 15},
];

const larva = (lower: number) => ({
  ...{stage: 'larva', rate: {kind: 'degree-day', lower, degreeDays: 900}, cv: 0.1, family: 'normal'},
  source: 'a',
});

describe.each(stories)('a lot of $started larvae', story => {
  const {started, dead, kept, killed, escaped, split, counted} = story;
  const alive = started - dead - kept - killed - escaped - split;
  const sum = `${started} started = ${alive} alive + ${killed} parasitised + ${dead + escaped} lost + ${kept} preserved + ${split} split off`;
  const room = newRoom();
  const of = {lot: 'R31-021', at: '2031-06-05T09:00'};
  const records: object[] = [
    sample('S31-0061', '2031-05-30', {place: {locality: 'Heron wood'}}),
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
    {record: 'unit', code: 'C2', type: 'cage', place: 'rack A/2'},
    {
      ...{record: 'lot', code: 'R31-021', sample: 'S31-0061', unit: 'C1', at: '2031-05-31T09:00'},
      stages: {larva: started},
    },
    {record: 'loss', ...of, stage: 'larva', count: dead, cause: 'dead'},
    {record: 'voucher', ...of, stage: 'larva', count: kept},
    {record: 'parasitoid', ...of, taxon: 'Braconidae', count: killed, hosts: killed},
    {record: 'loss', ...of, stage: 'larva', count: escaped, cause: 'escaped'},
    {record: 'split', ...of, into: 'R31-021.2', unit: 'C2', stages: {larva: split}},
  ];
  applied(room, '2031-06-10T09:00', records);
  const now = '2031-06-10T10:00';

  it('adds up to the last animal', () => {
    expect(said(room, now, 'balance', 'R31-021')).toContain(sum);
    expect(said(room, now, 'balance', 'R31-021.2')).toContain(`${split} started = ${split} alive`);
  });

  it('says how many a complete count cannot account for, asks what became of them, and changes nothing', () => {
    const words = refused(room, now, 'count', 'R31-021', `larva=${counted}`, '--complete');
    expect(words).toContain(`${counted} counted where ${alive} are alive`);
    expect(words).toContain(`Record the loss of ${alive - counted}`);
    expect(words).toContain('cause "missing" if nobody knows');
    expect(words).toContain(`${alive - counted} not accounted for`);
    expect(words).toContain('Eaten by the others, not found, or miscounted?');
    expect(said(room, now, 'balance', 'R31-021')).toContain(sum);
  });

  it('names each loss by its cause', () => {
    expect(said(room, now, 'balance', 'R31-021')).toContain(`lost: ${dead} dead, ${escaped} escaped`);
  });

  it('takes a count of which nobody said that it was whole as one of a part, and says what that leaves open', () => {
    const words = said(room, now, 'count', 'R31-021', `larva=${counted}`);
    expect(words).toContain(`if all were looked at, ${alive - counted} are not accounted for`);
    expect(said(room, now, 'balance', 'R31-021')).toContain(sum);
    said(room, now, 'undo');
  });

  it.each([
    ['cannibalised', alive - counted, 'eaten'],
    ['not-found', alive - counted, 'missing'],
    ['miscounted', 0, undefined],
  ])('takes the answer %s with its reason', (others, lost, cause) => {
    const own = newRoom();
    applied(own, '2031-06-10T09:00', records);
    said(own, now, 'count', 'R31-021', `larva=${counted}`, '--others', others, '--why', 'heads left');
    const [balance] = own.ask<object[]>(now, 'balance', 'R31-021');
    expect(balance).toMatchObject({
      ...{started, emerged: 0, parasitised: killed, lost: dead + escaped + lost, preserved: kept},
      ...{splitOff: split, alive: {larva: alive - lost}},
    });
    const daybook = said(own, now, 'daybook', 'R31-021');
    expect(daybook).toContain('heads left');
    if (cause !== undefined) expect(daybook).toContain(cause);
  });

  it('applies an answer with its key once only, and takes none for one animal or for a part', () => {
    const own = newRoom();
    applied(own, '2031-06-10T09:00', records);
    const count = ['count', 'R31-021', `larva=${counted}`, '--others', 'not-found'];
    expect(refused(own, now, ...count, '--animal', '07')).toContain('tells of all that were not seen');
    expect(refused(own, now, ...count, '--part')).toContain('says that all were looked at');
    said(own, now, ...count, '--key', 'round 9');
    said(own, now, 'found', 'R31-021', 'larva', '1');
    expect(said(own, now, ...count, '--key', 'round 9')).toContain('nothing was added');
    const [balance] = own.ask<object[]>(now, 'balance', 'R31-021');
    expect(balance).toMatchObject({alive: {larva: counted + 1}});
  });

  it('shows the warmth that the part brought along, its own number and its sample', () => {
    const warm = newRoom();
    const [heldC, lower] = [20, 8];
    applied(warm, '2031-06-10T09:00', [
      kind({lower, degreeDays: 900, cv: 0.1}, {stages: [larva(lower)], classification: {}}),
      ...records.map(record => ({
        ...record,
        ...('type' in record ? {setPoints: {constant: heldC}} : {}),
        ...('sample' in record
          ? {progress: [0, 0], ages: 'one-brood', candidates: [{profile: 'kind', weight: 1}]}
          : {}),
      })),
    ]);
    const [part] = warm.ask<{alive: number; degreeDays: {accumulated: number}}[]>(
      now,
      'forecast',
      'R31-021.2',
    );
    const days = (Date.parse(`${now}Z`) - Date.parse('2031-05-31T09:00Z')) / DAY_MS;
    expect(part!.alive).toBe(split);
    expect(part!.degreeDays.accumulated).toBeCloseTo(days * (heldC - lower), 3);
  });

  it('traces the part to the field sample, and prints the original locality for its adults', () => {
    expect(said(room, now, 'trace', 'R31-021.2')).toContain('field sample S31-0061');
    said(room, '2031-06-20T11:00', 'emerge', 'R31-021.2', '--female', '2', '--sure');
    const file = join(temporaryFolder(), 'labels.txt');
    said(room, '2031-06-20T12:00', 'labels', '--lot', 'R31-021.2', '--out', file);
    const labels = readFileSync(file, 'utf8');
    expect(labels).toContain('Heron wood');
    expect(labels).toContain('30.v.2031');
    expect(labels).toContain('lot R31-021.2');
  });

  it('reckons survival from those whose fate could be seen here', () => {
    said(room, '2031-06-20T11:00', 'emerge', 'R31-021', '--female', String(alive), '--sure');
    expect(said(room, '2031-06-20T12:00', 'outcome', 'R31-021')).toContain(
      `became adult ${alive} of ${started - kept - split}`,
    );
  });
});
