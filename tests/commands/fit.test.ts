import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import {command} from '../../src/commands/fit.ts';
import type {Compared, CurveAnswer, LineAnswer} from '../../src/work/fit.ts';
import type {FitSaved} from '../../src/work/fit-saved.ts';
import {run} from './in-process.ts';
import {asked, newRoom, type RoomAt, temporaryFolder, teneral} from './program.ts';

function file(text: string): string {
  const path = join(temporaryFolder(), 'days.csv');
  writeFileSync(path, text);
  return path;
}

// Honek, Jarosik and others 2003, European Journal of Entomology 100:295–300: Gastrophysa viridula, printed 7.1 °C and
// 304.6 degree-days (seen).
const GASTROPHYSA = 'temperature,days\n18,28.2\n21.5,21.6\n25,16.1\n28,15.0\n';

describe('fit', () => {
  it('answers a line with threshold, constant, standard errors and predicted days, without a room', () => {
    const answer = asked<LineAnswer>(['fit', file(GASTROPHYSA)]);
    expect(answer).toMatchObject({method: 'linear', n: 4});
    expect(answer.lower).toBeCloseTo(7.1, 1);
    expect(answer.degreeDays).toBeCloseTo(304.6, 1);
    expect(answer.lowerSe).toBeCloseTo(1.89, 2);
    expect(answer.degreeDaysSe).toBeCloseTo(35.1, 1);
    expect(answer.r2).toBeCloseTo(0.974, 3);
    expect(answer.predicted.map(({temperature}) => temperature)).toEqual([18, 21.5, 25, 28]);
    expect(answer.predicted[0]!.days).toBeCloseTo(answer.degreeDays / (18 - answer.lower), 9);
  });

  it.each([
    ['semicolons and decimal commas', 'Temperature;Days\n18;28,2\n21,5;21,6\n25;16,1\n28;15,0\n'],
    [
      'tabs, other columns, a mark of order',
      '\uFEFFnote\tdays\ttemperature (°C)\nx\t28.2\t18\ny\t21.6\t21.5\nz\t16.1\t25\n\t15\t28\n',
    ],
    ['°F', 'temperature_F,days\n64.4,28.2\n70.7,21.6\n77,16.1\n82.4,15\n'],
    ['no heading', '18,28.2\n21.5,21.6\n25,16.1\n28,15\n'],
  ])('reads a table with %s', async (_, text) => {
    const {answer} = await run<LineAnswer>(command, [file(text)]);
    expect(answer.lower).toBeCloseTo(7.095, 3);
  });

  it('takes typed days, the reduced major axis, and part of the rows', async () => {
    const typed = ['18=28.2', '21.5=21.6', '25=16.1', '28=15'];
    expect((await run<LineAnswer>(command, [...typed, '--method', 'rma'])).answer.lower).toBeCloseTo(
      7.796,
      3,
    );
    const part = (await run<LineAnswer>(command, [...typed, '--from-c', '20', '--to-c', '26'])).answer;
    expect(part).toMatchObject({n: 2, lowerSe: null});
  });

  it('weighs rows by sd and n only when asked to', async () => {
    const table = file('temperature,days,sd,n\n18,28.2,3,5\n21.5,21.6,0.5,40\n25,16.1,0.4,40\n28,15,3,5\n');
    const plain = (await run<LineAnswer>(command, [table])).answer;
    const weighed = (await run<LineAnswer>(command, [table, '--weighted'])).answer;
    expect(plain.lower).toBeCloseTo(7.095, 3);
    expect(Math.abs(weighed.lower - plain.lower)).toBeGreaterThan(0.5);
  });

  it('answers a curve with its parameters, what is left over and where it begins, is fastest and ends', async () => {
    const rows = ['15=40', '20=21.5', '25=13.2', '28=11.9', '30=12.1', '33=14'];
    const {answer} = await run<CurveAnswer>(command, [...rows, '--model', 'briere-1']);
    expect(answer.model.kind).toBe('briere-1');
    expect(answer).toMatchObject({
      n: 6,
      rss: expect.any(Number),
      aicc: expect.any(Number),
      upper: expect.any(Number),
    });
    expect(answer.optimum).toBeGreaterThan(26);
    expect(answer.optimum).toBeLessThan(32);
    expect(answer.predicted).toHaveLength(6);
  });

  it('compares all models of the same rows, the best supported first, and draws the one to keep', async () => {
    const rows = [
      '12=75',
      '15=40',
      '18=27.5',
      '20=21.5',
      '23=15.6',
      '25=13.2',
      '28=11.9',
      '30=12.1',
      '33=14',
    ];
    const {answer, text} = await run<Compared[]>(command, [...rows, '--compare']);
    expect(answer.map(({model}) => model.kind).sort()).toEqual([
      'briere-1',
      'briere-2',
      'degree-day',
      'lactin-1',
      'lactin-2',
      'logan-6',
      'schoolfield',
    ]);
    const supported = answer.flatMap(({aicc}) => (aicc === null ? [] : [aicc]));
    expect(supported).toEqual([...supported].sort((a, b) => a - b));
    expect(text).toContain(`--save keeps ${answer[0]!.model.kind}`);
    expect(text).toMatch(/\d d │.*o/);
  });

  it.each<[string, readonly string[], RegExp]>([
    ['few temperatures', ['18=28', '22=20', '26=15.5'], /3 temperatures are few/],
    [
      'rows outside the linear range',
      ['15=50', '18=31', '21=22.7', '24=17.9', '27=14.7', '33=17'],
      /33 °C lies outside the linear range/,
    ],
    ['an impossible threshold', ['10=20', '20=15', '30=12'], /impossible/],
    ['a threshold drawn out far', ['22=20', '25=17.2', '28=15', '30=13.8'], /below the coldest row/],
  ])('warns of %s', async (_, words, warning) => {
    const {answer, text} = await run<LineAnswer>(command, words);
    expect(answer.warnings.join('\n')).toMatch(warning);
    expect(text).toContain('Look again');
  });

  it('says where a table gives no days', async () => {
    const {text, answer} = await run<LineAnswer>(command, [file(`${GASTROPHYSA}34,\n`)]);
    expect(answer.n).toBe(4);
    expect(text).toContain('no days are given at 34 °C: left out');
  });

  it.each<[string, readonly string[], RegExp]>([
    ['one temperature', ['18=28'], /one temperature fixes no line/],
    ['days that rise', ['15=10', '20=14', '25=19'], /days do not fall as it gets warmer/],
    ['°F without saying so', ['59=55', '68=31'], /is no development/],
    [
      'a table in °F',
      [file('temperature,days\n59,55\n68,31\n')],
      /row 2, temperature: no animal develops at 59 °C.*temperature_F/,
    ],
    ['days below 0', [file('temperature,days\n20,-3\n25,9\n')], /row 2, days: -3 is not above 0/],
    ['no number', [file('temperature,days\n20,many\n25,9\n')], /row 2, days: "many" is no number/],
    ['no such column', [file('temp,weeks\n20,3\n')], /names no column days/],
    ['an empty table', [file('temperature,days\n')], /no row with days/],
    ['a curve of too few rows', ['15=40', '20=21', '--model', 'briere-2'], /fix no briere-2 curve/],
    ['nothing within', ['15=40', '20=21', '--from-c', '30'], /no row lies within/],
    [
      'several stages',
      [file('stage,temperature,days\negg,20,5\npupa,20,9\n')],
      /holds several stages: egg, pupa/,
    ],
  ])('refuses %s', async (_, words, message) => {
    await expect(run(command, words)).rejects.toThrow(message);
  });

  it('without a table is wrong usage', () => {
    expect(teneral(['fit']).status).toBe(2);
  });
});

const NOW = '2026-06-30T12:00';

describe('fit --save', () => {
  let room: RoomAt;
  const paper = file(
    'stage,temperature,days\negg,15,12\negg,20,6.6\negg,25,4.5\negg,30,3.4\nlarva,15,60\nlarva,20,33\nlarva,25,22\nlarva,30,17\npupa,15,28\npupa,20,15.2\npupa,25,10.4\npupa,30,8\n',
  );
  beforeAll(() => {
    room = newRoom();
  });

  it('keeps every stage of a table as a profile of the room, with the source, and forecasts from it', () => {
    const saved = room.ask<FitSaved>(
      NOW,
      'fit',
      paper,
      '--save',
      'my-moth',
      '--name',
      'My moth',
      '--source',
      'Smith 2019',
      '--locator',
      'Table 2',
    );
    expect(saved.stages.map(({stage}) => stage)).toEqual(['egg', 'larva', 'pupa']);
    expect(saved.doubts).toEqual([]);
    const profile = room.ask<Record<string, unknown>>(NOW, 'profile', 'show', 'my-moth');
    expect(profile).toMatchObject({
      name: 'My moth',
      rank: 'species',
      sources: [{citation: 'Smith 2019', locator: 'Table 2', provenance: 'seen'}],
    });
    expect(room.at(NOW, 'profile', 'check', 'my-moth').status).toBe(0);
    room.apply('2026-06-01T09:00', [
      {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', setPoints: {constant: 20}},
      {record: 'sample', code: 'S1', collected: {from: '2026-05-31'}, method: 'beating'},
      {
        record: 'lot',
        code: 'S1-A',
        sample: 'S1',
        unit: 'C1',
        at: '2026-06-01T09:00',
        stages: {pupa: 9},
        progress: [0, 0],
        candidates: [{profile: 'my-moth'}],
      },
    ]);
    const [forecast] = room.ask<{adults: {animal: {p50: string}}}[]>('2026-06-02T09:00', 'forecast', 'S1-A');
    // 15 days at 20 °C.
    expect(forecast!.adults.animal.p50.slice(0, 10)).toMatch(/2026-06-1[56]/);
  });

  it('changes one stage of a profile that is there, and keeps the others', () => {
    room.ask<FitSaved>(
      NOW,
      'fit',
      '15=30',
      '20=16',
      '25=11',
      '30=8.6',
      '--stage',
      'pupa',
      '--save',
      'my-moth',
      '--source',
      'own',
      '--model',
      'table',
    );
    const {stages, sources} = room.ask<{
      stages: {stage: string; rate: {kind: string}; source: string}[];
      sources: {id: string}[];
    }>(NOW, 'profile', 'show', 'my-moth');
    expect(stages.map(({stage}) => stage)).toEqual(['egg', 'larva', 'pupa']);
    expect(stages[2]).toMatchObject({rate: {kind: 'table'}, source: 'fit-2'});
    expect(sources.map(({id}) => id)).toEqual(['fit-1', 'fit-2']);
  });

  it('asks about a figure that looks wrong, and takes it from whoever is sure', () => {
    const slow = [
      '10=20',
      '20=15',
      '25=13.5',
      '30=12',
      '--stage',
      'pupa',
      '--save',
      'odd',
      '--name',
      'Odd',
      '--source',
      'own',
      '--model',
      'degree-day',
    ];
    const {status, err} = room.at(NOW, 'fit', ...slow);
    expect(status).toBe(1);
    expect(err).toMatch(/stages\.0\.rate\.lower: a lower threshold of -\d+\.?\d* °C is unusual.*--sure/);
    expect(room.at(NOW, 'fit', ...slow, '--sure').status).toBe(0);
  });

  it('asks the same of a profile that is applied', () => {
    const profile = {
      record: 'profile',
      profile: 'made-up',
      name: 'Made up',
      rank: 'species',
      stages: [
        {
          stage: 'pupa',
          rate: {
            kind: 'table',
            points: [
              {temperature: 15, days: 10},
              {temperature: 20, days: 15},
              {temperature: 25, days: 22},
            ],
            lower: 5,
            upper: 35,
          },
        },
      ],
      sources: [],
    };
    const refused = room.apply(NOW, [profile]);
    expect(refused.status).toBe(1);
    expect(refused.err).toMatch(
      /stages\.0\.rate\.points\.1\.days: 15 days at 20 °C are more than 10 at 15 °C/,
    );
    expect(room.apply(NOW, [{...profile, sure: true}]).status).toBe(0);
  });

  it.each<[string, readonly string[], RegExp]>([
    ['no source', ['--save', 'my-moth', '--stage', 'pupa'], /where the days come from is not said/],
    ['no stage', ['--save', 'my-moth', '--source', 'own'], /which stage the days are of is not said/],
    [
      'no name of a new profile',
      ['--save', 'new', '--stage', 'pupa', '--source', 'own'],
      /what it is of is not said/,
    ],
    ['a group', ['--save', 'lepidoptera', '--stage', 'pupa', '--source', 'own'], /a group of unlike members/],
    [
      'a stage that is none',
      ['--save', 'new', '--name', 'New', '--stage', 'chrysalis', '--source', 'own'],
      /stages\.0\.stage/,
    ],
  ])('refuses %s, and writes nothing', (_, options, message) => {
    const before = room.at(NOW, 'daybook').out;
    const {status, err} = room.at(NOW, 'fit', '15=30', '20=16', '25=11', '30=8.6', ...options);
    expect(status).toBe(1);
    expect(err).toMatch(message);
    expect(room.at(NOW, 'daybook').out).toBe(before);
  });
});

describe('fit --lots', () => {
  it('takes the days of stages from the room’s own lots, at the mean temperatures they lived at', () => {
    const room = newRoom();
    const warm = [
      ['W', 25, 10],
      ['M', 20, 15],
      ['K', 17, 21],
    ] as const;
    const records = warm.flatMap(([code, constant, days]) => {
      const day = (after: number) => `2026-05-${String(1 + after).padStart(2, '0')}T09:00`;
      return [
        {record: 'unit', code: `C${code}`, type: 'cage', place: `rack ${code}`, setPoints: {constant}},
        {record: 'sample', code, collected: {from: '2026-04-30'}, method: 'beating'},
        {
          record: 'lot',
          code: `${code}-A`,
          sample: code,
          unit: `C${code}`,
          at: day(0),
          stages: {pupa: 8},
          progress: [0, 0],
          candidates: [{profile: 'pieris-rapae'}],
        },
        {record: 'check', lot: `${code}-A`, at: day(days - 1), found: 0},
        {
          record: 'emergence',
          lot: `${code}-A`,
          since: day(days - 1),
          at: day(days),
          adults: [{sex: 'unknown', count: 8}],
        },
      ];
    });
    expect(room.apply(NOW, records).err).toBe('');
    const list = room.ask<{lots: {lot: string; temperature: number; days: number}[]}>(NOW, 'fit', '--lots');
    expect(list.lots.map(({lot, temperature, days}) => [lot, temperature, days])).toEqual([
      ['W-A', expect.closeTo(25, 6), expect.closeTo(9.5, 6)],
      ['M-A', expect.closeTo(20, 6), expect.closeTo(14.5, 6)],
      ['K-A', expect.closeTo(17, 6), expect.closeTo(20.5, 6)],
    ]);
    const answer = room.ask<LineAnswer>(NOW, 'fit', '--lots', 'pieris-rapae', '--stage', 'pupa');
    expect(answer.n).toBe(3);
    expect(answer.lower).toBeGreaterThan(8);
    expect(answer.lower).toBeLessThan(13);
    const saved = room.ask<FitSaved>(
      NOW,
      'fit',
      '--lots',
      'W-A',
      'M-A',
      'K-A',
      '--stage',
      'pupa',
      '--save',
      'ours',
      '--name',
      'Ours',
    );
    expect(saved.stages[0]!.rate).toMatchObject({kind: 'degree-day', lower: answer.lower});
    expect(room.at(NOW, 'fit', '--lots', 'nobody').err).toMatch(/there is no lot "nobody"/);
  });
});
