// Degree-day totals of open weather series against independent integrations of the same files.
//
// Files: npm vega-datasets 3.2.1, data/seattle-weather-hourly-normals.csv (NOAA hourly normals 1981–2010) and
// data/seattle-weather.csv (NOAA NCDC daily, 2012–2015); US Government data. Totals: computed, not published; the
// trace by an exact line and, again, by a fine trapezoid; the daily methods by adaptive quadrature (SciPy) of each day.
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import type {DailyMethod} from '../../src/thermal/daily.ts';
import {degreeDay, type Thresholds} from '../../src/thermal/degree-day.ts';
import {degreeDaysByDay, extremesByDay} from '../../src/thermal/degree-days.ts';
import {doseBetween} from '../../src/thermal/dose.ts';

const folder = join(import.meta.dirname, '../../node_modules/vega-datasets/data');
const rows = (file: string) =>
  readFileSync(join(folder, file), 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map(line => line.split(','));
const daysOf = (iso: string) => Date.parse(`${iso}Z`) / 86_400_000;
const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);

const hourly = rows('seattle-weather-hourly-normals.csv').map(
  ([date, , temperature]) => [daysOf(date!), Number(temperature)] as const,
);
const traceOf = (readings: readonly (readonly [number, number])[]) => ({
  atDays: Float64Array.from(readings, ([at]) => at),
  temperatureC: Float64Array.from(readings, ([, temperature]) => temperature),
  maxGapDays: 3 / 24,
});
const year = traceOf(hourly);
const summer = traceOf(
  hourly.filter(([at]) => at >= daysOf('2010-04-01T00:00') && at < daysOf('2010-10-01T00:00')),
);

describe('hourly normals, straight lines between readings', () => {
  it.each([
    ['the year', year, 30, 1032.6986],
    ['April to September', summer, 30, 977.8888],
    ['the year, upper threshold 20 °C', year, 20, 980.3263],
  ])('%s', (_, trace, upper, total) => {
    const model = degreeDay({kind: 'degree-day', lower: 10, upper, degreeDays: 1});
    const {dose, gapDays} = doseBetween(trace, model, trace.atDays[0]!, trace.atDays.at(-1)!);
    expect(Math.abs(dose - total)).toBeLessThan(0.0001);
    expect(gapDays).toBe(0);
  });
});

describe('hourly normals, daily methods on the extremes of the readings of each day', () => {
  const byDay = (trace: typeof year, method: DailyMethod, thresholds: Thresholds) => {
    const first = Math.floor(trace.atDays[0]!);
    const days = Math.floor(trace.atDays.at(-1)!) - first + 1;
    const bounds = Float64Array.from({length: days + 1}, (_, day) => first + day);
    return sum(degreeDaysByDay(method, extremesByDay(trace, bounds), thresholds));
  };

  it.each<[string, typeof year, number, Record<DailyMethod, number>]>([
    [
      'the year',
      year,
      30,
      {
        sine: 1089.4038,
        'double-sine': 1089.5372,
        triangle: 1074.5285,
        'double-triangle': 1074.7088,
        average: 1046.15,
      },
    ],
    [
      'April to September',
      summer,
      30,
      {
        sine: 1020.2783,
        'double-sine': 1020.8896,
        triangle: 1011.3782,
        'double-triangle': 1012.1292,
        average: 992,
      },
    ],
    [
      'the year, upper threshold 20 °C (the average never reaches it)',
      year,
      20,
      {
        sine: 1028.5477,
        'double-sine': 1028.6774,
        triangle: 1033.8434,
        'double-triangle': 1034.0186,
        average: 1046.15,
      },
    ],
  ])('%s', (_, trace, upper, totals) => {
    for (const [method, total] of Object.entries(totals))
      expect(Math.abs(byDay(trace, method as DailyMethod, {lower: 10, upper}) - total)).toBeLessThan(0.01);
  });

  it.each([
    ['intermediate', 967.6915],
    ['vertical', 717.2554],
  ] as const)('single sine, upper threshold 20 °C, %s', (cutoff, total) => {
    expect(Math.abs(byDay(year, 'sine', {lower: 10, upper: 20, cutoff}) - total)).toBeLessThan(0.01);
  });
});

describe('daily extremes of Seattle, 2012 to 2015, between 10 and 20 °C', () => {
  const daily = rows('seattle-weather.csv').map(([date, , maximum, minimum]) => ({
    year: date!.slice(0, 4),
    minimum: Number(minimum),
    maximum: Number(maximum),
  }));

  it.each([
    ['2012', 1091.5, 1074.2019, 1074.7446, 1067.0005, 1067.2836],
    ['2013', 1280.75, 1242.6008, 1241.1578, 1229.1065, 1228.0575],
    ['2014', 1397.55, 1358.0092, 1357.3863, 1340.7151, 1340.1604],
    ['2015', 1401.2, 1369.3112, 1368.7061, 1355.9581, 1355.5033],
  ])('%s', (of, ...totals) => {
    const days = daily.filter(day => day.year === of);
    const extremes = {
      minimum: Float64Array.from(days, day => day.minimum),
      maximum: Float64Array.from(days, day => day.maximum),
    };
    const methods = ['average', 'triangle', 'double-triangle', 'sine', 'double-sine'] as const;
    methods.forEach((method, i) => {
      const total = sum(degreeDaysByDay(method, extremes, {lower: 10, upper: 20}));
      expect(Math.abs(total - totals[i]!)).toBeLessThan(0.01);
    });
  });
});
