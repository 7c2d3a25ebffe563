import fc from 'fast-check';
import {expect, test} from 'vitest';
import {columnText} from '../../src/room/column-text.ts';

const asJson = (numbers: readonly number[]) => JSON.stringify(Array.from(numbers, number => number));

test('columnText writes what JSON.stringify writes, for the numbers that loggers give', () => {
  const hundredths = fc.integer({min: -10_000_000, max: 10_000_000}).map(whole => whole / 100);
  const thousandths = fc.integer().map(whole => whole / 1000);
  const seconds = fc.integer({min: 0, max: 2_678_400});
  fc.assert(
    fc.property(fc.array(fc.oneof(hundredths, thousandths, seconds)), numbers => {
      expect(columnText(Float64Array.from(numbers)).toString()).toBe(asJson(numbers));
    }),
    {numRuns: 500},
  );
});

test('columnText writes what JSON.stringify writes, for any number at all', () => {
  fc.assert(
    fc.property(fc.array(fc.double()), numbers => {
      expect(columnText(Float64Array.from(numbers)).toString()).toBe(asJson(numbers));
    }),
    {numRuns: 500},
  );
});

test.each([
  [[], '[]'],
  [[0, -0, 1, -1, 10, 100], '[0,0,1,-1,10,100]'],
  [[0.001, -0.05, 19.5, 20.01, 9.999], '[0.001,-0.05,19.5,20.01,9.999]'],
  [[0.1 + 0.2, 1e21, 5e-324], '[0.30000000000000004,1e+21,5e-324]'],
  [[Number.NaN, Number.POSITIVE_INFINITY], '[null,null]'],
])('columnText writes %j as %s', (numbers, text) => {
  expect(columnText(Float64Array.from(numbers)).toString()).toBe(text);
});
