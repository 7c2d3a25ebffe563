// How often a rule asks, typed on its sheet: in days or in warmth.
import {describe, expect, test} from 'vitest';
import {allStartRules} from '../../src/care/start-rules.ts';
import {recorded} from '../../src/terminal/ask/recorded.ts';
import type {View} from '../../src/terminal/sheet.ts';

const rule = allStartRules.find(({code}) => code === 'feed-lepidoptera')!;
const typed = (text: string) => recorded({for: 'interval', rule}, text, {} as View);
const written = (text: string) => typed(text).effects?.[0];

describe('how often a rule asks', () => {
  test.each([
    ['2', {every: {days: 2}, earliestDays: rule.earliestDays, latestDays: rule.latestDays}],
    ['2 1 3', {every: {days: 2}, earliestDays: 1, latestDays: 3}],
    ['24 dd above 8', {every: {degreeDays: 24, lower: 8}, latestDays: rule.latestDays}],
    ['24,5dd above 7,5 °C 1 4', {every: {degreeDays: 24.5, lower: 7.5}, earliestDays: 1, latestDays: 4}],
    ['30 degree-days above -1 0.5', {every: {degreeDays: 30, lower: -1}, earliestDays: 0.5}],
  ])('is taken from "%s"', (text, expected) => {
    expect(written(text)).toMatchObject({
      do: 'record',
      records: [{record: 'rule', code: rule.code, ...expected}],
    });
  });

  test.each([
    '',
    'often',
    '0',
    '-1',
    '2 1 3 4',
    '24 dd',
    '24 dd above',
    'dd above 8',
    '24 dd above warm',
    '2 x',
  ])('cannot be read from "%s", and says how to write it', text => {
    expect(typed(text)).toMatchObject({say: expect.stringContaining('24 dd above 8 1 4')});
  });
});
