import {describe, expect, it} from 'vitest';
import {along, constant, cover, joined, type Source, unknown} from '../../src/climate/part.ts';

const trace = {
  atDays: Float64Array.of(0, 1, 2, 6, 7, 7, 8),
  temperatureC: Float64Array.of(10, 12, 14, 20, 22, 30, 32),
  maxGapDays: 1.5,
};
const read = along(trace, {basis: 'logger', of: 'L1'});

describe('along', () => {
  it('gives the runs between gaps, clipped to the span', () => {
    const parts = read({fromDays: 0.5, toDays: 6.5});
    expect(parts.map(({fromDays, toDays}) => [fromDays, toDays])).toEqual([
      [0.5, 2],
      [6, 6.5],
    ]);
    expect(parts[0]!.temperatureC).toEqual([11, 12, 14]);
    expect(parts[1]!.temperatureC).toEqual([20, 21]);
  });

  it('keeps a step inside a run, and moves every temperature by the offset', () => {
    const [part] = along(trace, {basis: 'logger'}, 0.5)({fromDays: 6, toDays: 8});
    expect(part!.atDays).toEqual([6, 7, 7, 8]);
    expect(part!.temperatureC).toEqual([20.5, 22.5, 30.5, 32.5]);
  });

  it('knows nothing outside its readings, in a gap, or next to an unknown temperature', () => {
    expect(read({fromDays: 2.5, toDays: 5})).toEqual([]);
    expect(read({fromDays: 9, toDays: 12})).toEqual([]);
    expect(read({fromDays: -3, toDays: 0})).toEqual([]);
    const broken = {atDays: Float64Array.of(0, 1, 2), temperatureC: Float64Array.of(10, Number.NaN, 12)};
    expect(along(broken, {basis: 'logger'})({fromDays: 0, toDays: 2})).toEqual([]);
  });
});

describe('cover', () => {
  const asked: [number, number][] = [];
  const watched: Source = span => {
    asked.push([span.fromDays, span.toDays]);
    return constant(5, {basis: 'set-points'})(span);
  };

  it('asks a later source only for what earlier ones left', () => {
    const parts = cover({fromDays: 0, toDays: 10}, [read, watched, unknown]);
    expect(asked).toEqual([
      [2, 6],
      [8, 10],
    ]);
    expect(parts.map(({basis, fromDays, toDays}) => [basis, fromDays, toDays])).toEqual([
      ['logger', 0, 2],
      ['set-points', 2, 6],
      ['logger', 6, 8],
      ['set-points', 8, 10],
    ]);
  });

  it('of a span without length is nothing', () => {
    expect(cover({fromDays: 3, toDays: 3}, [unknown])).toEqual([]);
  });
});

describe('joined', () => {
  it('makes a step where temperatures differ and one node where they agree; unknown is NaN', () => {
    const course = joined(
      [
        ...constant(20, {basis: 'logger', of: 'L1'})({fromDays: 0, toDays: 1}),
        ...constant(20, {basis: 'logger', of: 'L1'})({fromDays: 1, toDays: 2}),
        ...constant(25, {basis: 'set-points'})({fromDays: 2, toDays: 3}),
        ...unknown({fromDays: 3, toDays: 4}),
      ],
      3,
    );
    expect(course.atDays).toEqual(Float64Array.of(0, 1, 2, 2, 3, 3, 4));
    expect(course.temperatureC).toEqual(Float64Array.of(20, 20, 20, 25, 25, Number.NaN, Number.NaN));
    expect(course.stretches).toEqual([
      {fromDays: 0, toDays: 2, basis: 'logger', of: 'L1'},
      {fromDays: 2, toDays: 3, basis: 'set-points'},
      {fromDays: 3, toDays: 4, basis: 'unknown'},
    ]);
  });
});
