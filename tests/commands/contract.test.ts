// What scripts hold on to: options, exit statuses, streams, batches, times. The fields of answers are in answers.test.ts.
import {spawnSync} from 'node:child_process';
import {existsSync, writeFileSync} from 'node:fs';
import {dirname, join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import {asked, newRoom, program, type RoomAt, temporaryFolder, teneral} from './program.ts';
import {bare, SEASON_NOW, season, type Written} from './season.ts';

interface Balance {
  readonly lot: string;
  readonly alive: Readonly<Record<string, number>>;
}
interface Line {
  readonly id: string;
  readonly by: string;
  readonly at: string;
  readonly recordedAt: string;
  readonly record: Written;
}
interface Applied {
  readonly applied: number;
  readonly passedOver: number;
  readonly entries: readonly string[];
}

/** A room with a unit, a sample and a lot of ten pupae, written down on the first of June at nine in Vienna. */
const NOW = '2026-06-01T09:00+02:00';
const furnished: readonly Written[] = [
  {record: 'logger', code: 'L1', kind: 'hand'},
  {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', logger: 'L1', setPoints: {constant: 20}},
  {record: 'sample', code: 'S', method: 'search', collected: {from: '2026-05-30'}},
  {record: 'lot', code: 'A', sample: 'S', unit: 'C1', stages: {pupa: 10}, at: NOW},
];

function furnishedRoom(): RoomAt {
  const room = newRoom('Europe/Vienna');
  const {status, err} = room.apply(NOW, furnished);
  if (status !== 0) throw new Error(err);
  return room;
}

describe('the command line', () => {
  let room: RoomAt;
  beforeAll(() => {
    room = furnishedRoom();
  });

  it('takes global options before and after the command', () => {
    const before = teneral(['--room', room.dir, '--now', NOW, '--by', 'B', '--json', 'balance', 'A']);
    const after = teneral(['balance', 'A', '--json', '--by', 'B', '--now', NOW, '--room', room.dir]);
    expect(before).toMatchObject({status: 0, err: ''});
    expect(after).toEqual(before);
    expect(teneral([`--room=${room.dir}`, 'balance', `--now=${NOW}`, 'A', '--json'])).toEqual(before);
  });

  it('finds the room by --room, else TENERAL_ROOM, else ./room', () => {
    const byVariable = teneral(['--now', NOW, 'list', 'lots', '--json'], '', {TENERAL_ROOM: room.dir});
    expect(JSON.parse(byVariable.out)).toHaveLength(1);
    expect(teneral(['list', 'lots', '--now', NOW, '--json'], '', {}, dirname(room.dir)).out).toBe(
      byVariable.out,
    );
    const other = teneral(['--room', room.dir, 'list', 'lots', '--now', NOW], '', {
      TENERAL_ROOM: 'elsewhere',
    });
    expect(other.status).toBe(0);
    expect(teneral(['list', 'lots'], '', {TENERAL_ROOM: 'elsewhere'}).err).toContain('elsewhere');
  });

  it('writes who acts: --by, else TENERAL_BY, else the system user', () => {
    const writtenBy = (words: readonly string[], environment = {}) => {
      const args = ['--room', room.dir, '--now', NOW, 'note', 'C1', 'seen', '--json', ...words];
      const {out, err} = teneral(args, '', environment);
      expect(err).toBe('');
      const [id] = (JSON.parse(out) as Applied).entries;
      return room.ask<Line[]>(NOW, 'daybook', 'C1').find(line => line.id === id)!.by;
    };
    expect(writtenBy(['--by', 'Ida'], {TENERAL_BY: 'Otto'})).toBe('Ida');
    expect(writtenBy([], {TENERAL_BY: 'Otto'})).toBe('Otto');
    expect(writtenBy([], {TENERAL_BY: undefined})).toMatch(/./);
  });

  it('takes negative numbers as values', () => {
    expect(room.at(NOW, 'log', 'L1', '-3.5')).toMatchObject({status: 0, err: ''});
    expect(room.at(NOW, 'unit', 'C2', 'cage', 'shed', '--offset', '-0.5', '--hold', '-2').status).toBe(0);
    const place = ['--latitude', '-33.5', '--longitude', '-70.25'];
    expect(room.at(NOW, 'sample', 'S2', 'sweep', '--collected', '2026-05-30', ...place).status).toBe(0);
    expect(room.at(NOW, 'forecast', 'A', '--hold', '-1').status).toBe(0);
    expect(asked(['degree-days', '--extremes', '-4', '-2', '--lower', '-5', '--json'])).toMatchObject({
      total: 2,
    });
    const records = room.ask<Line[]>(NOW, 'daybook').map(({record}) => record);
    expect(records).toContainEqual(expect.objectContaining({record: 'reading', temperature: -3.5}));
    expect(records).toContainEqual(expect.objectContaining({offsetC: -0.5, setPoints: {constant: -2}}));
    expect(records).toContainEqual(expect.objectContaining({place: {latitude: -33.5, longitude: -70.25}}));
  });

  it('ends with 0 when done, 1 when refused, 2 for wrong usage', () => {
    expect(teneral(['--version'])).toMatchObject({status: 0, err: ''});
    expect(teneral(['--help']).status).toBe(0);
    expect(teneral(['lot', '--help']).status).toBe(0);
    expect(room.at(NOW, 'balance', 'nobody').status).toBe(1);
    for (const wrong of [['frobnicate'], ['balance', '--frob'], ['count'], ['log', 'L1', 'warm']])
      expect(teneral(['--room', room.dir, ...wrong]), wrong.join(' ')).toMatchObject({status: 2, out: ''});
  });

  it('says a refusal in one line on standard error, and with --json on standard output too', () => {
    const plain = room.at(NOW, 'balance', 'B');
    expect(plain).toMatchObject({status: 1, out: ''});
    expect(plain.err).toMatch(/^teneral: [^\n]+\n$/);
    const json = room.at(NOW, 'balance', 'B', '--json');
    expect(json).toMatchObject({status: 1, err: plain.err});
    const {error} = JSON.parse(json.out) as {error: Record<string, string>};
    expect(Object.keys(error)).toEqual(['what', 'where', 'mend']);
    for (const part of Object.values(error)) expect(plain.err).toContain(part);
  });

  it('is silent when its reader stops early', () => {
    const line = '"$0" "$1" schema | true; "$0" "$1" --help | true';
    const {stderr} = spawnSync('sh', ['-c', line, process.execPath, program], {encoding: 'utf8'});
    expect(stderr).toBe('');
  });

  it('prints the care list where it is called alone and nobody sits at a terminal', () => {
    const alone = teneral(['--room', room.dir, '--now', NOW]);
    expect(alone.status).toBe(0);
    expect(alone.out).toBe(room.at(NOW, 'today').out);
    expect(alone.out).not.toContain('\u001b');
  });
});

describe('apply', () => {
  it('takes a JSON array or JSON lines, from a file or standard input', () => {
    const lines = furnished.map(record => JSON.stringify(record)).join('\r\n');
    const file = join(temporaryFolder(), 'records');
    const answers = [JSON.stringify(furnished, null, 2), `\ufeff${lines}\n\n`].flatMap(text => {
      writeFileSync(file, text);
      const [first, second] = [newRoom(), newRoom()];
      return [
        asked<Applied>(['apply', file, '--room', first.dir, '--now', NOW]),
        asked<Applied>(['apply', '-', '--room', second.dir, '--now', NOW], text),
      ];
    });
    for (const {applied, passedOver, entries} of answers) {
      expect({applied, passedOver}).toEqual({applied: 4, passedOver: 0});
      expect(new Set(entries).size).toBe(4);
    }
  });

  it('passes over records whose key was applied before, and is so safe to repeat', () => {
    const room = newRoom('Europe/Vienna');
    const keyed = season.map((record, i) => ({...record, key: `season-${i}`}));
    const half = room.apply(SEASON_NOW, keyed.slice(0, 8));
    expect(half).toMatchObject({status: 0, err: ''});
    const repeat = (now: string) =>
      asked<Applied>(['--room', room.dir, '--now', now, 'apply', '-'], JSON.stringify(keyed));
    expect(repeat(SEASON_NOW)).toMatchObject({applied: season.length - 8, passedOver: 8});
    const balance = room.ask(SEASON_NOW, 'balance');
    expect(repeat('2026-06-21T09:00')).toEqual({applied: 0, passedOver: season.length, entries: []});
    expect(room.ask(SEASON_NOW, 'balance')).toEqual(balance);
    const twice = room.apply('2026-06-21T09:00', [
      {record: 'note', about: 'C3', text: 'once', key: 'k'},
      {record: 'note', about: 'C3', text: 'once', key: 'k'},
    ]);
    expect(twice.out).toContain('1 passed over');
  });

  it('takes a whole season at once, in any order: a record may name one that comes later', () => {
    const [forwards, backwards] = [newRoom('Europe/Vienna'), newRoom('Europe/Vienna')];
    expect(forwards.apply(SEASON_NOW, season)).toMatchObject({status: 0, err: ''});
    expect(backwards.apply(SEASON_NOW, season.toReversed())).toMatchObject({status: 0, err: ''});
    for (const question of [['balance'], ['list', 'specimens'], ['list', 'lots']]) {
      const sorted = ({dir}: RoomAt) =>
        asked<object[]>(['--room', dir, '--now', SEASON_NOW, ...question])
          .map(each => JSON.stringify(each))
          .sort();
      expect(sorted(backwards)).toEqual(sorted(forwards));
    }
    const balances = forwards.ask<Balance[]>(SEASON_NOW, 'balance');
    expect(balances.find(({lot}) => lot === '26-031-A')).toMatchObject({
      ...{started: 24, found: 2, mergedIn: 4, splitOff: 4, emerged: 3, parasitised: 1, lost: 1, preserved: 1},
      alive: {'larva-5': 15, pupa: 5},
    });
    // A profile of the batch is one a lot of the batch is forecast by.
    const [told] = forwards.ask<{candidates: object[]; adults: {half: object}}[]>(
      '2026-06-20T14:00:01+02:00',
      'forecast',
      '26-031-A',
    );
    expect(told!.candidates).toHaveLength(2);
    expect(told!.adults.half).not.toBeNull();
    // Records with only what is required, about what is there.
    expect(forwards.apply(SEASON_NOW, bare)).toMatchObject({status: 0, err: ''});
  });

  it('numbers specimens by their lot where no codes are given, and uses none twice', () => {
    const room = furnishedRoom();
    const emergence = {record: 'emergence', lot: 'A', adults: [{count: 2}]};
    room.apply(NOW, [emergence, {record: 'parasitoid', lot: 'A', count: 2}, {record: 'voucher', lot: 'A'}]);
    room.apply(NOW, [{...emergence, codes: ['X-1', 'X-2']}, emergence]);
    const codes = room.ask<{code: string}[]>(NOW, 'list', 'specimens').map(({code}) => code);
    const expected = ['A-1', 'A-2', 'A-3', 'A-4', 'A-p1', 'A-p2', 'A-v1', 'X-1', 'X-2'];
    expect(codes.toSorted()).toEqual(expected);
  });
});

describe('times', () => {
  it('are written and answered in the zone of the room, with its offset', () => {
    const room = furnishedRoom();
    room.apply('2026-12-01T08:00Z', [
      {record: 'note', about: 'C1', at: '2026-07-01T12:00Z', text: 'summer'},
      {record: 'note', about: 'C1', at: '2026-12-01T07:30', text: 'winter, without an offset'},
      {record: 'note', about: 'C1', at: '2026-10-25T02:30', text: 'twice that night: the first'},
    ]);
    const lines = room.ask<Line[]>('2026-12-01T08:00Z', 'daybook', 'C1');
    expect(lines.slice(-3).map(({at, recordedAt}) => [at, recordedAt])).toEqual([
      ['2026-07-01T14:00:00+02:00', '2026-12-01T09:00:00+01:00'],
      ['2026-10-25T02:30:00+02:00', '2026-12-01T09:00:00+01:00'],
      ['2026-12-01T07:30:00+01:00', '2026-12-01T09:00:00+01:00'],
    ]);
  });

  it('leave out entries dated after --now', () => {
    const room = furnishedRoom();
    const later = [
      {record: 'loss', lot: 'A', at: '2026-06-03T09:00', count: 4},
      {record: 'emergence', lot: 'A', at: '2026-06-05T09:00', adults: [{count: 2}]},
    ];
    expect(room.apply('2026-06-05T10:00', later).status).toBe(0);
    const aliveAt = (now: string) => room.ask<Balance[]>(now, 'balance', 'A')[0]!.alive.pupa;
    expect(['2026-06-02T09:00', '2026-06-04T09:00', '2026-06-06T09:00'].map(aliveAt)).toEqual([10, 6, 4]);
    expect(room.ask('2026-06-04T09:00', 'list', 'specimens')).toEqual([]);
  });

  it('warn, and serve, where the clock stands before the newest entry', () => {
    const room = furnishedRoom();
    const early = room.at('2026-05-31T09:00', 'list', 'units');
    expect(early.status).toBe(0);
    expect(early.err).toMatch(/^teneral: [^\n]*2026-05-31[^\n]*2026-06-01[^\n]*\n$/);
    expect(early.out).toContain('C1');
    expect(room.at(NOW, 'list', 'units').err).toBe('');
  });

  it('let an old diary say when it was written down: at ≤ recordedAt ≤ now', () => {
    const room = furnishedRoom();
    const note = {record: 'note', about: 'C1', text: 'old'};
    const at = '2026-05-02T09:00';
    expect(room.apply(NOW, [{...note, at, recordedAt: '2026-05-02T18:00'}]).status).toBe(0);
    expect(room.ask<Line[]>(NOW, 'daybook', 'C1')).toContainEqual(
      expect.objectContaining({recordedAt: '2026-05-02T18:00:00+02:00'}),
    );
    expect(room.apply(NOW, [{...note, at, recordedAt: '2026-05-01T18:00'}]).status).toBe(1);
    expect(room.apply(NOW, [{...note, at, recordedAt: '2026-06-02T18:00'}]).status).toBe(1);
  });
});

it('numbers in JSON are never rounded', () => {
  const readings = join(temporaryFolder(), 'readings.csv');
  writeFileSync(readings, 'time,temperature\n2026-05-01T00:00Z,10.1\n2026-05-01T00:50Z,20.3\n');
  const {total} = asked<{total: number}>(['degree-days', readings, '--lower', '3.7']);
  expect(Math.abs(total - ((10.1 + 20.3) / 2 - 3.7) * (50 / 1440))).toBeLessThan(1e-9);
  const room = furnishedRoom();
  const candidates = ['lepidoptera', 'diptera', 'coleoptera'].map(profile => ({profile}));
  room.apply(NOW, [
    {record: 'lot', code: 'T', sample: 'S', unit: 'C1', stages: {pupa: 3}, at: NOW, candidates},
  ]);
  const [told] = room.ask<{candidates: {weight: number}[]; pace: {p10: number}}[]>(NOW, 'forecast', 'T');
  for (const {weight} of told!.candidates) expect(weight).toBeCloseTo(1 / 3, 12);
  expect(String(told!.pace.p10).length).toBeGreaterThan(8);
});

it('a refusal writes nothing, not even a new folder', () => {
  const nowhere = join(temporaryFolder(), 'nowhere');
  expect(teneral(['--room', nowhere, 'log', 'L1', '20']).status).toBe(1);
  expect(teneral(['init', nowhere, '--name', 'x', '--zone', 'Nowhere/Land']).status).toBe(1);
  expect(existsSync(nowhere)).toBe(false);
});

it('a command offers --at only where its record has an instant of its own', () => {
  expect(teneral(['count', '--help']).out).toContain('--at');
  for (const words of [
    ['void', 'e1'],
    ['extremes', 'M1', '17', '25', '--from', '2026-06-11T08:30'],
  ]) {
    const {status, err} = teneral([...words, '--at', '2026-06-12T08:30']);
    expect(status).toBe(2);
    expect(err).toContain("unknown option '--at'");
  }
});
