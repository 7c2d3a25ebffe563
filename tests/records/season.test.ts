// In which month of the northern year animals were found.
import {expect, test} from 'vitest';
import {fold} from '../../src/records/fold.ts';
import {monthOfSeason, seasonLagDays} from '../../src/records/season.ts';
import {daybook, type Written} from './daybook-of.ts';

const MAY = Date.parse('2026-05-15T12:00:00Z');
const sample = (code: string, latitude?: number) => ({
  record: 'sample',
  code,
  collected: {from: '2026-05-14'},
  method: 'search',
  ...(latitude === undefined ? {} : {place: {latitude, longitude: 20}}),
});
const months = (...records: readonly Written[]) => {
  const room = fold(daybook(sample('N', 47), sample('S', -34), sample('X'), ...records), MAY);
  return ['N', 'S', 'X'].map(code => monthOfSeason(MAY, seasonLagDays(room, code)));
};

test('south of the equator the season is half a year on; where no latitude is told it is that of the north', () => {
  expect(months()).toEqual([5, 11, 5]);
});

test('a midsummer set for the room comes before latitudes, either way round the year, until it is set anew', () => {
  expect(months({record: 'setting', midsummer: '12-21'})).toEqual([11, 11, 11]);
  expect(months({record: 'setting', midsummer: '07-21'})).toEqual([4, 4, 4]);
  expect(
    months(
      {record: 'setting', midsummer: '12-21'},
      {record: 'setting', midsummer: '06-21', at: '2026-05-14T00:00:00Z'},
    ),
  ).toEqual([5, 5, 5]);
});

test('another setting leaves it as it was', () => {
  const later = {record: 'setting', finishedLots: 'left-out', at: '2026-05-14T00:00:00Z'};
  expect(months({record: 'setting', midsummer: '12-21'}, later)).toEqual([11, 11, 11]);
});
