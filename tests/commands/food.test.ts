// The food of the days ahead from the command line, from the amounts that a room gave its rules.
import {expect, it} from 'vitest';
import {newRoom} from './program.ts';

const NOW = '2031-06-12T08:00';

interface Told {
  days: {tasks: {task: string; amount: string | null}[]}[];
  food: {
    foods: {
      of: string;
      amount: number;
      estimated: boolean;
      perDay: Record<string, number>;
      units: string[];
    }[];
    byEye: {unit: string; lot: string | null}[];
  };
}

it('teneral ahead adds up the food of rules and counts, by day and together, in words and as JSON', () => {
  const here = newRoom();
  const {status, err} = here.apply(NOW, [
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
    {record: 'unit', code: 'C2', type: 'cage', place: 'rack A/2'},
    {record: 'sample', code: 'S1', collected: {from: '2031-05-30'}, method: 'search'},
    {record: 'lot', code: 'A', sample: 'S1', unit: 'C1', at: '2031-06-12T07:00', stages: {'larva-3': 8}},
    {
      ...{record: 'lot', code: 'B', sample: 'S1', unit: 'C2', at: '2031-06-12T07:00', stages: {'larva-4': 5}},
      counted: 'estimated',
    },
  ]);
  expect(err).toBe('');
  expect(status).toBe(0);
  const ahead = () => here.ask<Told>(NOW, 'ahead', '--days', '3');
  expect(ahead().food).toMatchObject({
    foods: [],
    byEye: [
      {unit: 'C1', lot: 'A'},
      {unit: 'C2', lot: 'B'},
    ],
  });

  here.at(
    NOW,
    'rule',
    'feed-cage',
    '--every',
    '1',
    '--earliest',
    '0.9',
    '--latest',
    '1.2',
    '--amount',
    '3 aphids each',
  );
  const {food, days} = ahead();
  const fed = days.flatMap(({tasks}) => tasks.filter(({task}) => task === 'feed').map(({amount}) => amount));
  expect(fed.filter(amount => amount === '24 aphids')).toHaveLength(3);
  expect(fed.filter(amount => amount === 'about 15 aphids')).toHaveLength(3);
  expect(food).toMatchObject({
    foods: [
      {
        ...{of: 'aphids', amount: 117, estimated: true, units: ['C1', 'C2']},
        perDay: {'2031-06-12': 39, '2031-06-13': 39, '2031-06-14': 39},
      },
    ],
    byEye: [],
  });
  expect(here.at(NOW, 'ahead', '--days', '3').out).toMatch(/^ aphids +39 +39 +39 +about 117$/m);
});
