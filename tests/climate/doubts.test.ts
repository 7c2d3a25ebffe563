// The rules by which readings are doubted, each on a course that has what it looks for, and on courses that do not.
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import type {LoggerPlace} from '../../src/climate/doubt.ts';
import type {DoubtSettings} from '../../src/climate/doubt-rules.ts';
import {cleaned, doubtsOf} from '../../src/climate/doubts.ts';
import type {Series} from '../../src/climate/series.ts';

const STEP_DAYS = 10 / 1440;
const place: LoggerPlace = {inWater: false, hourOf: at => (at % 1) * 24};

/** Readings every ten minutes for so many days, 21 to 23 °C by the hour; changed as asked. */
function course(
  days: number,
  change: (hours: number, usual: number) => number = (_, usual) => usual,
): Series {
  const rows = Math.round(days / STEP_DAYS);
  const atDays = Float64Array.from({length: rows}, (_, row) => 20_000 + row * STEP_DAYS);
  return {
    atDays,
    temperatureC: atDays.map((at, row) => {
      const usual = 22 + Math.sin(2 * Math.PI * (at % 1)) + 0.01 * (row % 7);
      return change((at - 20_000) * 24, usual);
    }),
    rhPercent: atDays.map((_, row) => 60 + (row % 5)),
  };
}

const found = (series: Series, settings: DoubtSettings = {}, where: LoggerPlace = place) =>
  doubtsOf(series, where, settings).map(({rule, first, last}) => [
    rule,
    Math.round((series.atDays[first]! - 20_000) * 1440) / 60,
    last - first + 1,
  ]);
const between = (hours: number, from: number, to: number) => hours >= from - 1e-6 && hours < to - 1e-6;

describe('doubtsOf(series, place, settings)', () => {
  it('doubts nothing of an ordinary week', () => {
    expect(found(course(7))).toEqual([]);
  });

  it('doubts nothing of a unit whose day is 7 °C warmer than its night, switched within minutes', () => {
    expect(
      found(
        course(7, (hours, usual) => usual + (between(hours % 24, 6, 22) ? 7 : 0)),
        {jump: 'off'},
      ),
    ).toEqual([]);
  });

  it('finds what cannot be, and a spike of one or two readings', () => {
    expect(found(course(2, (hours, usual) => (between(hours, 10, 10.5) ? 75 : usual)))).toEqual([
      ['too-warm', 10, 3],
    ]);
    expect(found(course(2, (hours, usual) => (between(hours, 10, 10.3) ? 29 : usual)))).toEqual([
      ['spike', 10, 2],
    ]);
  });

  it('finds a value that stays the same for hours, but not what a coarse sensor repeats', () => {
    expect(found(sameHumidity(course(3, (hours, usual) => (between(hours, 10, 20) ? 22.5 : usual))))).toEqual(
      [['stuck', expect.closeTo(10.17, 1), 59]],
    );
    expect(found(sameHumidity(course(7, () => 22)))).toEqual([]);
  });

  it('finds a step that stays', () => {
    expect(found(course(2, (hours, usual) => (hours >= 30 ? usual - 9 : usual)))).toEqual([['jump', 30, 1]]);
  });

  it('finds a while on the bench, also at the end of the file', () => {
    expect(found(course(4, (hours, usual) => (between(hours, 57, 58.5) ? 17.5 : usual)))).toEqual([
      ['bench', 57, 9],
    ]);
    expect(found(course(4, (hours, usual) => (hours >= 95 ? 18 : usual))).map(([rule]) => rule)).toEqual([
      'bench',
    ]);
  });

  it('finds a logger in the sun, by the days around', () => {
    const sunny = course(9, (hours, usual) =>
      between(hours, 106, 109) ? usual + 9 * Math.sin((Math.PI * (hours - 106)) / 3) : usual,
    );
    expect(found(sunny, {bench: 'off'}).map(([rule]) => rule)).toEqual(['sun']);
  });

  it('finds a logger of an aquarium that reads air', () => {
    const water: LoggerPlace = {...place, inWater: true};
    const slow = course(4, (_, usual) => 18 + (usual - 22) / 4);
    expect(found(slow, {}, water)).toEqual([]);
    const out = {
      ...slow,
      temperatureC: slow.temperatureC.map((t, row) => (row > 300 ? t + 3 * Math.sin(row / 6) : t)),
    };
    expect(found(out, {bench: 'off'}, water).map(([rule]) => rule)).toEqual(['out-of-water']);
  });

  it('finds a wet humidity sensor', () => {
    const wet = course(3);
    wet.rhPercent.fill(100, 100, 250);
    expect(found(wet)).toEqual([['wet', expect.closeTo(16.67, 1), 150]]);
  });

  it('follows the number that is set for a logger, and leaves out a rule that is off', () => {
    const spiked = course(2, (hours, usual) => (between(hours, 10, 10.1) ? usual + 4 : usual));
    expect(found(spiked)).toEqual([]);
    expect(found(spiked, {spike: 3})).toEqual([['spike', 10, 1]]);
    expect(
      found(
        course(2, (hours, usual) => (hours >= 30 ? usual - 9 : usual)),
        {jump: 'off'},
      ),
    ).toEqual([]);
  });
});

describe('cleaned(series, settings, isTrusted)', () => {
  const spiked = course(2, (hours, usual) => (between(hours, 10, 10.1) ? 40 : usual));

  it('leaves out what cannot be, and keeps what a person trusts', () => {
    expect(cleaned(spiked, {}, () => false).atDays).toHaveLength(spiked.atDays.length - 1);
    expect(cleaned(spiked, {}, () => true).atDays).toHaveLength(spiked.atDays.length);
  });

  it('never alters a reading, and only leaves some out, whatever the series', () => {
    const value = fc.oneof(fc.double({min: -60, max: 80, noNaN: true}), fc.constantFrom(21, Number.NaN));
    fc.assert(
      fc.property(fc.array(value, {maxLength: 80}), values => {
        const series: Series = {
          atDays: Float64Array.from(values, (_, row) => row / 24),
          temperatureC: Float64Array.from(values),
          rhPercent: new Float64Array(values.length).fill(Number.NaN),
        };
        const left = cleaned(series, {}, () => false);
        left.atDays.forEach((at, row) => {
          expect(left.temperatureC[row]).toBe(values[Math.round(at * 24)]);
        });
        doubtsOf(series, place);
      }),
    );
  });
});

function sameHumidity(series: Series): Series {
  return {...series, rhPercent: new Float64Array(series.atDays.length).fill(60)};
}
