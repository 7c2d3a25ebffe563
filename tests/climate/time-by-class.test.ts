import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import type {Course} from '../../src/climate/course.ts';
import {evaporationOf} from '../../src/climate/evaporation.ts';
import {humiditySummaries} from '../../src/climate/humidity-summaries.ts';
import {timeByClass} from '../../src/climate/time-by-class.ts';
import {courseRows} from '../../src/work/course-rows.ts';

const courseOf = (
  nodes: readonly (readonly [number, number])[],
  filledFrom = Number.POSITIVE_INFINITY,
): Course => {
  const atDays = Float64Array.from(nodes, ([at]) => at);
  const end = atDays.at(-1)!;
  const cut = Math.min(filledFrom, end);
  return {
    atDays,
    temperatureC: Float64Array.from(nodes, ([, value]) => value),
    stretches: [
      {fromDays: atDays[0]!, toDays: cut, basis: 'logger'},
      ...(cut < end ? [{fromDays: cut, toDays: end, basis: 'mean-day' as const}] : []),
    ],
    expectedFromDays: end,
  };
};
const span = {fromDays: 0, toDays: 2};

describe('timeByClass(course, span, width)', () => {
  it('cuts straight lines where they leave a class', () => {
    const rising = courseOf(
      [
        [0, 10],
        [1, 14],
        [2, 14],
      ],
      1,
    );
    expect(timeByClass(rising, span, 2)).toEqual([
      {fromC: 10, toC: 12, hours: 12, filledHours: 0},
      {fromC: 12, toC: 14, hours: 12, filledHours: 0},
      {fromC: 14, toC: 16, hours: 24, filledHours: 24},
    ]);
  });

  it('leaves unknown time out', () => {
    const broken = courseOf([
      [0, 10],
      [1, 10],
      [1, Number.NaN],
      [2, Number.NaN],
    ]);
    expect(timeByClass(broken, span, 5)).toEqual([{fromC: 10, toC: 15, hours: 24, filledHours: 0}]);
  });

  it('adds up to the time of the course, whatever it does', () => {
    const value = fc.double({min: -20, max: 45, noNaN: true});
    fc.assert(
      fc.property(
        fc.array(value, {minLength: 2, maxLength: 40}),
        fc.constantFrom(0.5, 1, 2, 5),
        (values, width) => {
          const course = courseOf(values.map((each, i) => [i / 10, each]));
          const sum = timeByClass(course, {fromDays: 0, toDays: 100}, width).reduce(
            (all, {hours}) => all + hours,
            0,
          );
          expect(sum).toBeCloseTo(((values.length - 1) / 10) * 24, 6);
        },
      ),
    );
  });
});

describe('courseRows(course, from, to)', () => {
  it('gives every full hour its value and what it rests on', () => {
    const rows = courseRows(
      courseOf(
        [
          [0, 10],
          [1, 34],
        ],
        0.5,
      ),
      0,
      1,
    );
    expect(rows).toHaveLength(25);
    expect(rows[6]).toMatchObject({temperatureC: expect.closeTo(16, 9), basis: 'logger'});
    expect(rows[18]).toMatchObject({temperatureC: expect.closeTo(28, 9), basis: 'mean-day'});
  });
});

describe('humiditySummaries(series, bounds)', () => {
  it('summarises each day that was read', () => {
    const series = {
      atDays: Float64Array.of(-0.5, 0.1, 0.2, 2.5),
      rhPercent: Float64Array.of(99, 40, 60, Number.NaN),
    };
    expect(humiditySummaries(series, [0, 1, 2, 3])).toEqual([
      {minimum: 40, mean: 50, maximum: 60},
      null,
      null,
    ]);
  });
});

describe('evaporationOf(water, care)', () => {
  const day = 86_400_000;
  const level = (days: number, litres: number) => ({
    unit: 'T1',
    at: days * day,
    entry: '',
    values: {levelLitres: litres},
  });
  const done = (task: string, days: number, litres?: number) => ({
    entry: '',
    task,
    unit: 'T1',
    at: days * day,
    by: '',
    seen: litres === undefined ? {} : {litres},
  });

  it('is what levels fell by, with what was topped up in between', () => {
    expect(evaporationOf([level(0, 12), level(4, 11.5)], [done('top-up', 2, 0.7)])).toEqual({
      litresPerDay: expect.closeTo(0.3, 12),
      days: 4,
      intervals: 1,
    });
  });

  it('is what top-ups replaced, where no level was read', () => {
    expect(evaporationOf([], [done('top-up', 0, 1), done('top-up', 2, 0.8)])?.litresPerDay).toBeCloseTo(
      0.4,
      12,
    );
  });

  it('is not told over a change of water or a top-up of unknown size', () => {
    expect(evaporationOf([level(0, 12), level(4, 11)], [done('change-water', 2)])).toBeUndefined();
    expect(evaporationOf([level(0, 12), level(4, 12)], [done('top-up', 2)])).toBeUndefined();
  });
});
