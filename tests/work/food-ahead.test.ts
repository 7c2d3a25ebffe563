// How much food the week takes, as the animals were counted and as they are to grow; and how it is told.
import {mkdtempSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import type {FoodAhead} from '../../src/care/food-ahead.ts';
import {foodLines} from '../../src/exchange/pictures/food.ts';
import {textOfLines} from '../../src/exchange/pictures/line.ts';
import {createRoom} from '../../src/room/create.ts';
import {ahead} from '../../src/work/ahead.ts';
import {type Desk, openDesk} from '../../src/work/desk.ts';
import {foodOfDays} from '../../src/work/food-ahead.ts';
import {type KeptStages, keptStages, stageDays} from '../../src/work/kept-stages.ts';
import {record} from '../../src/work/record.ts';
import {careInput} from '../../src/work/today.ts';

// A Friday, so that the second and third day are closed. At 20 °C an instar takes 30 degree-days, three days.
const NOW = '2026-05-01T08:00:00Z';
const moth = {
  ...{record: 'profile', profile: 'moth', name: 'moth', rank: 'species', rearing: ['cage'], paceSd: 0},
  stages: ['larva-1', 'larva-2', 'pupa'].map(stage => ({
    stage,
    rate: {kind: 'degree-day', lower: 10, degreeDays: 30},
    cv: 0.01,
  })),
  sources: [{id: 'a', citation: 'invented for the test', provenance: 'computed'}],
};
const open = ['09:00-17:00'];

let desk: Desk;
let food: FoodAhead;
let keptByList: KeptStages;

beforeAll(async () => {
  const dir = join(mkdtempSync(join(tmpdir(), 'food-')), 'room');
  const session = {dir, by: 'A. Keeper', now: NOW, warn: () => {}};
  await createRoom(dir, {name: 'r', zone: 'UTC', by: session.by, now: Date.parse(NOW)});
  await record(session, [
    moth,
    {record: 'calendar', open: {mon: open, tue: open, wed: open, thu: open, fri: open, sat: [], sun: []}},
    {record: 'unit', code: 'C1', type: 'cage', place: 'a', setPoints: {constant: 20}},
    {record: 'unit', code: 'C2', type: 'cage', place: 'b', setPoints: {constant: 20}},
    {record: 'sample', code: 'S', method: 'search', collected: {from: '2026-04-29'}, host: 'Urtica dioica'},
    {
      ...{record: 'lot', code: 'A', sample: 'S', unit: 'C1', at: '2026-04-30T20:00:00Z'},
      ...{stages: {'larva-1': 10}, progress: [0, 0], candidates: [{profile: 'moth'}]},
    },
    {record: 'lot', code: 'B', sample: 'S', unit: 'C2', at: '2026-05-01T07:00:00Z', stages: {larva: 4}},
    {
      ...{record: 'rule', code: 'leaf', task: 'feed', for: {lot: 'A'}, every: {days: 1}},
      ...{earliestDays: 0.9, latestDays: 1.1, amount: {each: {'larva-1': 1, 'larva-2': 8}, of: 'cm² leaf'}},
    },
  ]);
  desk = await openDesk(session);
  await careInput(desk);
  keptByList = await keptStages(desk);
  food = await foodOfDays(desk, await ahead(desk, 7));
});

describe('foodOfDays(desk, days)', () => {
  it('adds up what those counted take, by day, on the plant they were found on', () => {
    expect(food.foods).toMatchObject([
      {of: 'cm² leaf', plant: 'Urtica dioica', units: ['C1'], perDay: {'2026-05-01': 10, '2026-05-07': 10}},
    ]);
  });

  it('follows them as they grow: eightfold as second instars after three days, nothing as pupae after six', () => {
    const perDay = food.foods[0]!.grownPerDay!;
    expect([perDay['2026-05-01'], perDay['2026-05-02']]).toEqual([10, 10]);
    expect([perDay['2026-05-05'], perDay['2026-05-06']]).toEqual([80, 80]);
    expect(perDay['2026-05-07'] ?? 0).toBeLessThan(1);
  });

  it('says what visits on closed days take, and who is fed by eye', () => {
    expect(food.beforeClosed).toMatchObject([
      {by: '2026-05-01', from: '2026-05-02', to: '2026-05-03', foods: [{amount: 20}]},
    ]);
    expect(food.byEye).toEqual([{unit: 'C2', lot: 'B'}]);
  });

  it('rests on what the care list kept of its forecasts: the stages of a fortnight', () => {
    expect(Object.keys(keptByList)).toEqual(['A', 'B']);
    expect(Object.keys(keptByList.A!.shares)).toEqual(stageDays(desk));
    expect(keptByList.B!.shares).toEqual({});
  });

  it('answers the same from what was kept', async () => {
    expect(await foodOfDays(desk, await ahead(desk, 7))).toEqual(food);
  });

  it('says nothing of growing further ahead than a fortnight', async () => {
    const {foods} = await foodOfDays(desk, await ahead(desk, 15));
    expect(foods[0]).toMatchObject({grown: null, grownPerDay: null});
  });
});

describe('foodLines(food, days)', () => {
  const lines = async (days: number, columns: number) => {
    const plan = await ahead(desk, days);
    const said = foodLines(
      await foodOfDays(desk, plan),
      plan.days.map(({day}) => day),
      desk.civil,
      columns,
    );
    return textOfLines(said).split('\n');
  };

  it('has a row for each food, a column for each day, within 80 columns', async () => {
    const said = await lines(7, 80);
    expect(said.every(text => text.length <= 80)).toBe(true);
    expect(said.slice(0, 5)).toEqual([
      ' Food, for the animals and stages last counted',
      '                   Fri 1  Sat 2  Sun 3  Mon 4  Tue 5  Wed 6  Thu 7    together',
      ' cm² leaf             10     10     10     10     10     10     10          70',
      '   as they grow       10     10     10     80     80     80      –   about 270',
      '   Urtica dioica, C1',
    ]);
    expect(said.join(' ')).toContain('to get before Sat 2 May, closed: 20 cm² leaf');
    expect(said.at(-1)).toBe(' by eye, no amount is known: C2 (B)');
  });

  it('tells the totals alone for a month, and nothing where nobody is fed', async () => {
    expect((await lines(31, 80))[2]).toMatch(/^ cm² leaf +310$/);
    expect(foodLines({foods: [], byEye: [], beforeClosed: []}, ['2026-05-01'], desk.civil, 80)).toEqual([]);
  });
});
