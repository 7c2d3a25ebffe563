// Water measured beside the air. Everything is invented.
import {describe, expect, it} from 'vitest';
import {composeCourse} from '../../src/climate/compose-course.ts';
import type {CourseInput} from '../../src/climate/course-input.ts';
import {heldFutures} from '../../src/climate/futures.ts';
import {readBeside} from '../../src/climate/water-offset.ts';
import {MS_PER_DAY} from '../../src/records/entry.ts';
import {days} from './fake-civil.ts';
import {courseInput, series} from './room.ts';

const unit = {type: 'aquarium', place: 'bench/1', logger: 'L'} as const;
const sketch = {
  from: '2031-02-03 00:00',
  now: '2031-02-08 00:00',
  to: '2031-02-10 00:00',
  loggers: {L: {kind: 'automatic', maxGapHours: 3}},
  readings: {
    L: series('2031-02-03 00:00', '2031-02-08 00:00', 60, at => (at < days('2031-02-06 00:00') ? 22 : 26)),
  },
} as const;
const measured = (...water: readonly (readonly [at: string, temperature: number])[]) =>
  water.map(([at, temperature]) => ({
    unit: 'T',
    at: days(at) * MS_PER_DAY,
    temperature,
    entry: 'e',
    values: {},
  }));
const courseOf = (own: object, water: ReturnType<typeof measured>, more: Partial<CourseInput> = {}) => {
  const input = courseInput({...sketch, units: {T: [['always', {...unit, ...own}]]}});
  return composeCourse({...input, room: {...input.room, water}, ...more});
};
const three = measured(['2031-02-04 09:00', 20], ['2031-02-05 09:00', 20.3], ['2031-02-07 09:00', 23.7]);

describe('a course in water', () => {
  it('goes by the mean of what the water was unlike its logger, from three measurements on', () => {
    const {water, temperatureC} = courseOf({}, three);
    // −2, −1.7 and −2.3.
    expect(water).toMatchObject({unit: 'T', logger: 'L', n: 3, used: true});
    expect(water!.offsetC).toBeCloseTo(-2, 9);
    expect(water!.sdC).toBeCloseTo(0.3, 9);
    expect(temperatureC[0]).toBeCloseTo(20, 9);
  });

  it('goes by the logger below that, or when asked to, and tells what was learned', () => {
    expect(courseOf({}, three.slice(0, 2)).water).toMatchObject({n: 2, used: false});
    expect(courseOf({}, three.slice(0, 2)).temperatureC[0]).toBe(22);
    expect(courseOf({}, three, {waterAs: 'air'}).temperatureC[0]).toBe(22);
    expect(courseOf({}, three.slice(0, 1), {waterAs: 'measured'}).temperatureC[0]).toBeCloseTo(20, 9);
  });

  it('learns nothing where a person gave an offset, 0 too, in a cage, or where nothing was read beside', () => {
    for (const offsetC of [0, -1]) {
      expect(courseOf({offsetC}, three).water).toBeUndefined();
      expect(courseOf({offsetC}, three).temperatureC[0]).toBe(22 + offsetC);
    }
    expect(courseOf({type: 'cage'}, three).water).toBeUndefined();
    expect(courseOf({}, measured(['2031-02-09 09:00', 20], ['2031-01-02 09:00', 20])).water).toBeUndefined();
  });
});

describe('readBeside', () => {
  it('is what was read nearest, within an hour', () => {
    const trace = {atDays: Float64Array.of(1, 1.02, 1.5), temperatureC: Float64Array.of(20, Number.NaN, 25)};
    expect(readBeside(trace, 1.018)).toBe(20);
    expect(readBeside(trace, 1.49)).toBe(25);
    expect(readBeside(trace, 1.2)).toBeUndefined();
  });
});

describe('heldFutures', () => {
  it('holds a temperature throughout, or one until an instant and then another', () => {
    const {days: all, orders} = heldFutures([18, {firstC: 24, afterDays: 2.25, thenC: 15}], 100, 105);
    const lived = orders.map(order => [...order].map(place => all[place]!));
    expect(lived[0]!.flatMap(day => [...day.temperatureC])).toEqual(Array.from({length: 10}, () => 18));
    expect(lived[1]!.map(day => [...day.temperatureC])).toEqual([
      [24, 24],
      [24, 24],
      [24, 24, 15, 15],
      [15, 15],
      [15, 15],
    ]);
    expect([...lived[1]![2]!.atDays]).toEqual([0, 0.25, 0.25, 1]);
  });
});
