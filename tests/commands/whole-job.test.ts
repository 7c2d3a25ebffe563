// The whole job once through, typed by hand: from an empty folder to a closed lot whose every specimen traces back.
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {asked, temporaryFolder, teneral} from './program.ts';

const dir = join(temporaryFolder(), 'north');
/** Hourly temperatures of Seattle, NOAA normals, as npm's vega-datasets holds them. */
const weather = new URL(
  '../../node_modules/vega-datasets/data/seattle-weather-hourly-normals.csv',
  import.meta.url,
).pathname;

/** A command as typed: words in one text, longer ones after it. */
function typed(now: string, line: string, ...more: string[]): string {
  const {status, out, err} = teneral([...line.split(' '), ...more, '--room', dir, '--now', now]);
  if (status !== 0) throw new Error(`teneral ${line} ended with ${status}: ${err}`);
  return out;
}

function ask<Answer>(now: string, line: string): Answer {
  return asked(['--room', dir, '--now', now, ...line.split(' ')]);
}

interface Task {
  readonly id: string;
  readonly task: string;
  readonly state: string;
  readonly observe: readonly string[];
}
interface Node {
  readonly code: string;
  readonly kind: string;
  readonly entries: readonly {readonly record: {readonly record: string}}[];
  readonly up: readonly Node[];
  readonly down: readonly Node[];
}

const taskOf = (now: string, task: string): Task | undefined =>
  ask<{tasks: Task[]}>(now, 'today').tasks.find(each => each.task === task);

describe('the whole job, by hand', () => {
  it('begins with a room, a logger, units, a field sample and a lot', () => {
    const made = teneral([
      ...['init', dir, '--name', 'north room', '--zone', 'America/Los_Angeles'],
      ...['--now', '2010-05-01T08:00'],
    ]);
    expect(made).toMatchObject({status: 0, err: ''});
    expect(made.out).toContain('teneral');
    expect(typed('2010-05-01T08:10', 'logger L1 automatic')).toContain('L1');
    typed('2010-05-01T08:11', 'unit C1 cage --logger L1 --offset 6', 'rack A/1');
    typed('2010-05-01T08:12', 'unit C2 cage --logger L1 --offset 6', 'rack A/2');
    typed(
      '2010-05-01T16:00',
      'sample 10-001 beating --collected 2010-04-30/2010-05-01 --latitude -33.5 --longitude -70.25 --host Brassica --locality',
      'Heron wood',
    );
    const begun = typed(
      '2010-05-01T17:00',
      'lot 10-001-A C1 larva-4=12 larva-5=4 --sample 10-001 --candidate pieris-rapae=0.7 --candidate lepidoptera=0.3',
    );
    expect(begun).toContain('10-001-A');
    expect(ask<object[]>('2010-05-01T17:01', 'list samples')[0]).toMatchObject({
      code: '10-001',
      collected: {from: '2010-04-30', to: '2010-05-01'},
      locality: 'Heron wood',
      lots: ['10-001-A'],
    });
  });

  it('imports a year of hourly readings once, however often it is asked', () => {
    const [dry] = ask<object[]>('2010-05-01T17:30', `import L1 ${weather} --dry-run`);
    expect(dry).toMatchObject({rows: 8759, added: 8758, duplicates: 0});
    expect(ask<object[]>('2010-05-01T17:30', 'list loggers')[0]).toMatchObject({readings: 0});
    const [first] = ask<object[]>('2010-05-01T17:30', `import L1 ${weather}`);
    expect(first).toMatchObject({
      rows: 8759,
      added: 8758,
      duplicates: 0,
      // The clocks go forward that night: nobody read two o'clock.
      rejected: [{row: 1731}],
      from: '2010-01-01T01:00:00-08:00',
      to: '2010-12-31T23:00:00-08:00',
      unit: 'C',
    });
    const [again] = ask<object[]>('2010-05-01T17:31', `import L1 ${weather}`);
    expect(again).toMatchObject({added: 0, duplicates: 8758});
    expect(ask<object[]>('2010-05-01T17:31', 'list loggers')[0]).toMatchObject({
      code: 'L1',
      readings: 8758,
      units: ['C1', 'C2'],
    });
  });

  it('says when adults will be out, in words and as JSON', () => {
    interface Told {
      readonly adults: {readonly half: Readonly<Record<'p10' | 'p50' | 'p90', string>>};
      readonly startChecking: string;
    }
    const [told] = ask<Told[]>('2010-05-02T09:00', 'forecast 10-001-A');
    expect(told).toMatchObject({lot: '10-001-A', unit: 'C1', alive: 16, status: 'developing'});
    const {half} = told!.adults;
    expect(half.p10 < half.p50 && half.p50 < half.p90).toBe(true);
    expect(told!.startChecking > '2010-05-02' && told!.startChecking < half.p50).toBe(true);
    const words = typed('2010-05-02T09:00', 'forecast 10-001-A');
    expect(words).toContain('first');
    expect(words).toContain('pieris-rapae');
  });

  it('says what is due, and ticks it off only with what was seen', () => {
    const now = '2010-05-02T09:00';
    const feed = taskOf(now, 'feed')!;
    expect(feed.observe).toEqual(['foodLeft', 'mould', 'alive']);
    expect(['due', 'overdue']).toContain(feed.state);
    const bare = teneral(['--room', dir, '--now', now, 'done', feed.id]);
    expect(bare.status).toBe(1);
    expect(bare.err).toMatch(/--seen foodLeft=\S+ --seen mould=\S+ --seen alive=/);
    expect(taskOf(now, 'feed')).toEqual(feed);
    typed(now, `done ${feed.id} --seen foodLeft=none --seen mould=no --seen alive=16`);
    expect(taskOf('2010-05-02T09:30', 'feed')).toMatchObject({id: feed.id, state: 'done'});
    expect(typed('2010-05-02T09:30', 'today')).toContain('done today 09:00 by A. Keeper');
    expect(taskOf('2010-05-03T10:00', 'feed')!.id).not.toBe(feed.id);
  });

  it('follows the animals: counts, a loss, a voucher, a part set apart', () => {
    typed('2010-05-08T09:00', 'loss 10-001-A 1 --stage larva-5 --cause dead');
    typed('2010-05-08T09:01', 'voucher 10-001-A larva-5');
    typed('2010-05-12T09:00', 'count 10-001-A larva-5=5 pupa=9');
    typed('2010-05-12T09:05', 'split 10-001-A 10-001-B pupa=4 --unit C2');
    expect(ask('2010-05-12T09:06', 'balance 10-001-A')).toEqual([
      {
        lot: '10-001-A',
        ...{started: 16, hatched: 0, mergedIn: 0, found: 0, alive: {'larva-5': 5, pupa: 5}},
        ...{emerged: 0, parasitised: 0, lost: 1, preserved: 1, splitOff: 4, mergedOut: 0, exact: true},
        ...{counted: 'exact', within: null},
      },
    ]);
  });

  it('is there when adults come out, and keeps a parasitoid apart from its host', () => {
    typed('2010-05-19T09:00', 'check 10-001-A');
    typed('2010-05-20T09:00', 'emerge 10-001-A --female 1 --exuviae X7 --association 2');
    typed('2010-05-20T09:01', 'emerge 10-001-A --female 1 --male 1');
    typed('2010-05-21T09:00', 'parasitoid 10-001-A 3 --taxon Braconidae --hosts 1 --host-stage larva-5');
    typed('2010-05-26T09:00', 'emerge 10-001-A --unsexed 6');
    typed('2010-05-27T09:00', 'emerge 10-001-B --unsexed 4');
    typed('2010-06-02T11:00', 'identify 10-001-A-1 --rank species', 'Pieris rapae');
    expect(ask<object[]>('2010-06-02T11:01', 'list specimens')).toHaveLength(1 + 3 + 3 + 6 + 4);
    expect(ask<object[]>('2010-06-02T11:01', 'list specimens')).toContainEqual(
      expect.objectContaining({
        code: '10-001-A-1',
        taxon: 'Pieris rapae',
        sex: 'female',
        since: '2010-05-19T09:00:00-07:00',
        at: '2010-05-20T09:00:00-07:00',
        sample: '10-001',
      }),
    );
  });

  it('traces every specimen up to its field sample, and the sample down to every specimen', () => {
    const now = '2010-06-02T12:00';
    const specimens = ask<{code: string; lot: string}[]>(now, 'list specimens');
    const sample = ask<Node>(now, 'trace 10-001');
    const below = (node: Node): Node[] => [node, ...node.down.flatMap(below)];
    const all = below(sample);
    expect(new Set(all.map(({code}) => code)).size).toBe(all.length);
    expect(all.filter(({kind}) => kind === 'specimen').map(({code}) => code)).toEqual(
      expect.arrayContaining(specimens.map(({code}) => code)),
    );
    const split = all.find(({code}) => code === '10-001-B')!;
    expect(split.entries.map(({record}) => record.record)).toContain('split');
    for (const {code, lot} of specimens) {
      const node = ask<Node>(now, `trace ${code}`);
      const above = (each: Node): string[] => [each.code, ...each.up.flatMap(above)];
      const expected = lot === '10-001-B' ? [code, lot, '10-001-A', '10-001'] : [code, lot, '10-001'];
      expect(above(node)).toEqual(expected);
      expect(node.entries.length).toBeGreaterThan(0);
    }
    expect(ask<Node>(now, 'trace X7')).toMatchObject({code: '10-001-A-1', kind: 'specimen'});
    expect(typed(now, 'trace 10-001-A-1')).toContain('10-001');
  });

  it('closes the lots once all is accounted for, and the room is sound', () => {
    const [balance] = ask<object[]>('2010-06-02T12:00', 'balance 10-001-A');
    expect(balance).toMatchObject({
      started: 16,
      alive: {},
      emerged: 9,
      parasitised: 1,
      lost: 1,
      preserved: 1,
    });
    typed('2010-06-02T12:10', 'close 10-001-A');
    typed('2010-06-02T12:11', 'close 10-001-B');
    expect(typed('2010-06-02T12:12', 'forecast')).toBe('no lot is open\n');
    expect(ask('2010-06-02T12:12', 'forecast 10-001-A')).toMatchObject([{status: 'finished', alive: 0}]);
    expect(ask('2010-06-02T12:12', 'verify')).toMatchObject({sound: true, problems: []});
    expect(typed('2010-06-02T12:13', 'daybook 10-001-A-1')).toContain('Pieris rapae');
  });
});
