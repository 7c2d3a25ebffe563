// The fields of every JSON answer that the contract names, and what stands in them.
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import {asked, newRoom, type RoomAt, temporaryFolder} from './program.ts';
import {SEASON_NOW, season} from './season.ts';
import {type Form, misfits} from './shape.ts';

const stages: Form = {'larva-5': 'whole', pupa: 'whole'};
const window: Form = {p10: 'instant?', p50: 'instant?', p90: 'instant?'};
const quantiles: Form = {...window, p05: 'instant?', p25: 'instant?', p75: 'instant?', p95: 'instant?'};
const alert: Form = {id: 'text', what: 'text', where: 'text', since: 'instant', mend: 'text'};
const entry: Form = {
  id: 'text',
  request: 'text',
  recordedAt: 'instant',
  by: 'text',
  record: {record: 'text'},
};

describe('the answer of', () => {
  let room: RoomAt;
  const files = temporaryFolder();

  beforeAll(() => {
    room = newRoom('Europe/Vienna');
    const {status, err} = room.apply(SEASON_NOW, season);
    if (status !== 0) throw new Error(err);
  });

  const ask = (...words: string[]): unknown => room.ask(SEASON_NOW, ...words);
  const file = (name: string, ...lines: string[]): string => {
    const path = join(files, name);
    writeFileSync(path, lines.join('\n'));
    return path;
  };

  it('forecast', () => {
    const [told, ...others] = asked<unknown[]>([
      ...['--room', room.dir, '--now', '2026-06-10T12:00', 'forecast', '26-031-A'],
    ]);
    expect(others).toEqual([]);
    const form: Form = {
      ...{lot: 'text', asOf: 'instant', unit: 'text', alive: 'whole', stagesNow: {pupa: 'number'}},
      adults: {
        expected: 'number',
        ...{animal: quantiles, first: window, half: window, last: window},
        perDay: [{day: 'day', expected: 'number'}],
      },
      ...{startChecking: 'instant', nextCheck: 'instant'},
      pace: {p10: 'number', p50: 'number', p90: 'number'},
      candidates: [{profile: 'text', weight: 'number'}],
      readings: {coverage: 'number', filledHours: 'number', basis: 'text'},
      ...{status: 'text', assumptions: ['text']},
    };
    expect(misfits(told, form)).toEqual([]);
    expect(told).toHaveProperty('degreeDays');
  });

  it('forecast in degree-days, where the likeliest candidate counts its stage in them', () => {
    const dd = newRoom('Europe/Vienna');
    const records = season.filter(
      ({record, code}) => record === 'profile' || record === 'sample' || record === 'logger' || code === 'C3',
    );
    const lot = {record: 'lot', code: 'D', sample: '26-031', unit: 'C3', at: '2026-06-18T12:00'};
    dd.apply('2026-06-18T12:00', [
      ...records,
      {...lot, stages: {'larva-5': 9}, progress: [0, 0], candidates: [{profile: 'pieris-rapae'}]},
    ]);
    const [told] = dd.ask<{degreeDays: Record<string, unknown>}[]>('2026-06-19T12:00', 'forecast');
    // One day at 22 °C above 7 °C, for all that are in the stage alike.
    expect(told!.degreeDays).toMatchObject({stage: 'larva-5', required: 80, lower: 7});
    expect(told!.degreeDays.accumulated).toBeCloseTo(15, 1);
  });

  it('forecast of hidden animals: one taken at random, no numbers', () => {
    const galls = newRoom();
    galls.apply('2026-06-01T09:00', [
      ...season.filter(({record, code}) => record === 'sample' || code === 'T1'),
      {
        ...{record: 'lot', code: 'G', sample: '26-031', unit: 'T1', candidates: [{profile: 'lepidoptera'}]},
        material: {what: 'galls', amount: 40, unit: 'pieces'},
      },
      {
        ...{record: 'lot', code: 'U', sample: '26-031', unit: 'T1', candidates: [{profile: 'lepidoptera'}]},
        ...{stages: {larva: 50}, counted: 'unknown'},
      },
    ]);
    const form: Form = {
      adults: {animal: {p10: 'instant', p50: 'instant', p90: 'instant'}, perDay: [{day: 'day'}]},
      assumptions: ['text'],
    };
    const answers = galls.ask<{alive: null; adults: object}[]>('2026-06-02T09:00', 'forecast');
    expect(answers).toHaveLength(2);
    for (const told of answers) {
      expect(misfits(told, form)).toEqual([]);
      expect(told).toMatchObject({
        alive: null,
        adults: {expected: null, first: null, half: null, last: null},
      });
      expect(told).toHaveProperty('adults.perDay.0.expected', null);
    }
  });

  it('today', () => {
    const form: Form = {
      day: 'day',
      tasks: [
        {
          ...{id: 'text', task: 'text', title: 'text', unit: 'text', lot: 'text?', place: 'text'},
          ...{target: 'instant', earliest: 'instant', latest: 'instant', caution: 'text?', why: 'text'},
        },
      ],
      alerts: [alert],
    };
    const told = ask('today') as {tasks: Record<string, unknown>[]};
    expect(misfits(told, form)).toEqual([]);
    expect(told).toEqual(ask('today'));
    for (const {id, state, harm, observe} of told.tasks) {
      expect(id).toMatch(/^[\w.-]+:[\w.-]+:\d{4}-\d{2}-\d{2}$/);
      expect(['due', 'overdue', 'early', 'done']).toContain(state);
      expect(['high', 'medium', 'low']).toContain(harm);
      expect(observe).toBeInstanceOf(Array);
    }
    expect(ask('today', '--on', '2026-06-23')).toMatchObject({day: '2026-06-23'});
  });

  it('trace, whose nodes are all of one form', () => {
    const lot: Readonly<Record<string, Form>> = {code: 'text', kind: 'text', entries: [entry]};
    const up: Form = {...lot, up: [{...lot, up: [lot]}]};
    const specimen = ask('trace', '26-031-A-1') as {up: object[]; down: object[]};
    expect(misfits(specimen, up)).toEqual([]);
    expect(specimen).toMatchObject({code: '26-031-A-1', kind: 'specimen', down: []});
    const down: Form = {...lot, down: [{...lot, down: [lot]}]};
    const lots = ask('trace', '26-031') as {up: object[]; down: Record<string, unknown>[]};
    expect(misfits({...lots, down: [lots.down[0]]}, down)).toEqual([]);
    expect(lots).toMatchObject({code: '26-031', kind: 'sample', up: []});
    for (const each of lots.down)
      expect(each).toMatchObject({kind: 'lot', up: expect.any(Array), down: expect.any(Array)});
  });

  it('balance', () => {
    const sums = ['started', 'hatched', 'mergedIn', 'found', 'emerged', 'parasitised', 'lost'];
    const form = Object.fromEntries(
      [...sums, 'preserved', 'splitOff', 'mergedOut'].map(sum => [sum, 'whole']),
    );
    expect(misfits(ask('balance'), [{lot: 'text', ...form, alive: {}, exact: 'yes-no'}])).toEqual([]);
    expect(misfits(ask('balance', '26-031-A'), [{...form, alive: stages}])).toEqual([]);
    expect(ask('balance', '26-031-A')).toHaveLength(1);
  });

  it('degree-days', () => {
    const readings = file('readings.csv', 'time,temperature', '2026-05-01T00:00Z,12', '2026-05-01T02:00Z,14');
    const form: Form = {
      ...{method: 'text', cutoff: 'text', unit: 'text', lower: 'number', upper: 'number?', total: 'number'},
      ...{from: 'instant', to: 'instant', coverage: 'number', gapHours: 'number'},
      days: [{day: 'day', degreeDays: 'number', cumulative: 'number'}],
    };
    const told = asked(['degree-days', readings, '--lower', '10', '--upper', '30']);
    expect(misfits(told, form)).toEqual([]);
    expect(told).toMatchObject({method: 'trace', cutoff: 'horizontal', unit: 'C', lower: 10, upper: 30});
  });

  it('import, file by file', () => {
    const one = file('one.csv', 'time,temperature', '2026-06-03T09:00,20', '2026-06-03T10:00,warm');
    const two = file('two.csv', 'time,temperature', '2026-06-03T09:00,20', '2026-06-03T11:00,21');
    const told = ask('import', 'L1', one, two);
    const form: Form = {
      ...{file: 'text', rows: 'whole', added: 'whole', duplicates: 'whole'},
      ...{from: 'instant', to: 'instant', unit: 'text'},
    };
    expect(misfits(told, [form])).toEqual([]);
    expect(told).toMatchObject([
      {file: one, rows: 2, added: 1, duplicates: 0, rejected: [{row: 3, what: expect.any(String)}]},
      {file: two, rows: 2, added: 1, duplicates: 1, rejected: []},
    ]);
  });

  it('verify', () => {
    expect(misfits(ask('verify'), {sound: 'yes-no', documents: 'whole'})).toEqual([]);
    expect(ask('verify')).toMatchObject({sound: true, problems: []});
  });

  it.each<[string, Form]>([
    ['samples', {code: 'text', method: 'text', collected: {from: 'text'}, lots: ['text']}],
    ['lots', {code: 'text', sample: 'text', unit: 'text', alive: 'whole?', stages: {}, closed: 'instant?'}],
    ['units', {code: 'text', type: 'text', place: 'text', logger: 'text?'}],
    ['loggers', {code: 'text', kind: 'text', readings: 'whole', from: 'instant?', to: 'instant?'}],
    ['specimens', {code: 'text', lot: 'text', sample: 'text', at: 'instant', taxon: 'text?', sex: 'text?'}],
  ])('list %s', (what, form) => {
    expect(misfits(ask('list', what), [form])).toEqual([]);
  });

  it('daybook', () => {
    const form: Form = {id: 'text', at: 'instant', recordedAt: 'instant', by: 'text', what: 'text'};
    expect(misfits(ask('daybook', '26-031-A'), [form])).toEqual([]);
  });

  it('profile list and show, with their sources', () => {
    expect(misfits(ask('profile', 'list'), [{profile: 'text', name: 'text', rank: 'text'}])).toEqual([]);
    const source: Form = {id: 'text', citation: 'text', provenance: 'text'};
    expect(misfits(ask('profile', 'show', 'lepidoptera'), {sources: [source]})).toEqual([]);
    expect(ask('profile', 'show', 'pieris-rapae')).toMatchObject({sources: [{citation: 'invented'}]});
  });

  it('schema: a JSON Schema of every kind of record', () => {
    const text = JSON.stringify(asked(['schema']));
    for (const {record} of [...season, {record: 'void'}]) expect(text).toContain(`"const":"${record}"`);
  });
});
