// Open weather tables read as logger files and summed as `teneral degree-days` does, against totals found otherwise.
//
// Files: npm vega-datasets 3.2.1, data/seattle-weather-hourly-normals.csv (NOAA hourly normals 1981–2010) and
// data/seattle-weather.csv (NOAA NCDC daily, 2012–2015); US Government data, no rights reserved.
// Totals of the hourly file: computed independently, not published (the trace as an exact line and again by a fine
// trapezoid). Of the daily file: summed here by hand from its raw lines.
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {chunksOf} from '../../src/exchange/logger-file/chunks.ts';
import {readLoggerFile} from '../../src/exchange/logger-file/logger-file.ts';
import {type DegreeDayMethod, type DegreeDayWishes, degreeDaysOfFile} from '../../src/work/degree-days.ts';

const folder = join(import.meta.dirname, '../../node_modules/vega-datasets/data');
const open = (name: string) => readLoggerFile(chunksOf(join(folder, name)), name, {zone: 'UTC'});
const wishes = {lower: 10, cutoff: 'horizontal', unit: 'C', maxGapHours: 3} as const;

describe('hourly normals of Seattle, read as a logger file', () => {
  const hourly = open('seattle-weather-hourly-normals.csv');
  const total = (more: Partial<DegreeDayWishes>) => degreeDaysOfFile(hourly, {...wishes, ...more}).total;

  it('every row is a reading', () => {
    expect(hourly).toMatchObject({kind: 'readings', rows: 8759, duplicates: 0, rejected: []});
  });

  const season = {from: '2010-04-01', to: '2010-09-30'};
  it.each<[string, Partial<DegreeDayWishes>, Record<DegreeDayMethod, number>]>([
    [
      'the year, 10 to 30 °C',
      {upper: 30},
      {
        trace: 1032.6986,
        sine: 1089.4038,
        'double-sine': 1089.5372,
        triangle: 1074.5285,
        'double-triangle': 1074.7088,
        average: 1046.15,
      },
    ],
    [
      'April to September, 10 to 30 °C',
      {upper: 30, ...season},
      {
        trace: 977.8888,
        sine: 1020.2783,
        'double-sine': 1020.8896,
        triangle: 1011.3782,
        'double-triangle': 1012.1292,
        average: 992,
      },
    ],
    [
      'the year, 10 to 20 °C',
      {upper: 20},
      {
        trace: 980.3263,
        sine: 1028.5477,
        'double-sine': 1028.6774,
        triangle: 1033.8434,
        'double-triangle': 1034.0186,
        average: 1046.15,
      },
    ],
  ])('%s', (_, asked, totals) => {
    for (const [method, expected] of Object.entries(totals))
      expect(Math.abs(total({...asked, method: method as DegreeDayMethod}) - expected)).toBeLessThan(0.01);
  });

  it.each([
    ['intermediate', 967.6915],
    ['vertical', 717.2554],
  ] as const)('the year by the single sine, %s above 20 °C', (cutoff, expected) => {
    expect(Math.abs(total({upper: 20, cutoff, method: 'sine'}) - expected)).toBeLessThan(0.01);
  });

  it('without an upper threshold the single sine gives 1089.4038', () => {
    expect(Math.abs(total({method: 'sine'}) - 1089.4038)).toBeLessThan(0.01);
  });
});

describe('daily extremes of Seattle, read as a logger file', () => {
  const daily = open('seattle-weather.csv');
  const raw = readFileSync(join(folder, 'seattle-weather.csv'), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map(line => line.split(','))
    .map(([date = '', , maximum, minimum]) => ({date, minimum: Number(minimum), maximum: Number(maximum)}));

  it('every row is a day', () => {
    expect(daily).toMatchObject({kind: 'extremes', rows: 1461, duplicates: 0, rejected: []});
  });

  it.each(['2012', '2013', '2014', '2015'])('%s: average and single sine are the sums by hand', year => {
    const days = raw.filter(({date}) => date.startsWith(year));
    const asked = {...wishes, upper: 20, from: `${year}-01-01`, to: `${year}-12-31`};
    const average = days.reduce(
      (sum, d) => sum + Math.max(0, Math.min((d.minimum + d.maximum) / 2, 20) - 10),
      0,
    );
    expect(Math.abs(degreeDaysOfFile(daily, {...asked, method: 'average'}).total - average)).toBeLessThan(
      0.01,
    );
    const sine = days.reduce((sum, {minimum, maximum}) => sum + sineByHand(minimum, maximum, 10, 20), 0);
    expect(Math.abs(degreeDaysOfFile(daily, {...asked, method: 'sine'}).total - sine)).toBeLessThan(0.01);
  });
});

/** Half a wave in thin slices; the other half is its mirror image. */
function sineByHand(minimum: number, maximum: number, lower: number, upper: number): number {
  const slices = 2000;
  let sum = 0;
  for (let i = 0; i < slices; i++) {
    const temperature =
      (minimum + maximum) / 2 - ((maximum - minimum) / 2) * Math.cos((Math.PI * (i + 0.5)) / slices);
    sum += Math.max(0, Math.min(temperature, upper) - lower);
  }
  return sum / slices;
}
