import {expect, it} from 'vitest';
import {textTable} from '../../src/exchange/text-table.ts';

const columns = [
  {head: 'name', cell: (row: {name: string; n: number}) => row.name},
  {head: 'n', right: true, cell: (row: {name: string; n: number}) => String(row.n)},
];

it('aligns columns by what a terminal shows: numbers to the right, wide signs counted as two', () => {
  const rows = [
    {name: 'a', n: 1},
    {name: '中 é', n: 100},
  ];
  expect(`\n${textTable(rows, columns)}`).toBe(`
name    n
─────────
a       1
中 é  100`);
});

it('has a heading and a rule even without rows', () => {
  expect(textTable([], columns)).toBe('name  n\n───────');
});
