import {describe, expect, it} from 'vitest';
import {daySummaries} from '../../src/climate/day-summaries.ts';

const course = (nodes: readonly (readonly [number, number])[]) => ({
  atDays: Float64Array.from(nodes, ([at]) => at),
  temperatureC: Float64Array.from(nodes, ([, temperature]) => temperature),
});

describe('daySummaries(course, bounds)', () => {
  it('cuts straight lines at midnight: a rise from 10 to 20 °C over two days is 12.5 °C, then 17.5 °C on average', () => {
    const [first, second] = daySummaries(
      course([
        [0, 10],
        [2, 20],
      ]),
      [0, 1, 2],
    );
    expect(first).toMatchObject({minimumC: 10, meanC: 12.5, maximumC: 15, known: 1});
    expect(second).toMatchObject({minimumC: 15, meanC: 17.5, maximumC: 20, known: 1});
  });

  it('weighs by time, not by readings', () => {
    const [day] = daySummaries(
      course([
        [0, 10],
        [0.75, 10],
        [0.75, 30],
        [0.875, 30],
        [1, 30],
      ]),
      [0, 1],
    );
    expect(day?.meanC).toBeCloseTo(15, 12);
  });

  it('says which share of a day is known, and nothing of a day of which nothing is', () => {
    const [half, none] = daySummaries(
      course([
        [0, 20],
        [0.5, 20],
        [0.5, Number.NaN],
        [2, Number.NaN],
      ]),
      [0, 1, 2],
    );
    expect(half).toMatchObject({minimumC: 20, meanC: 20, maximumC: 20, known: 0.5});
    expect(none).toMatchObject({minimumC: null, meanC: null, maximumC: null, known: 0});
  });

  it('has one summary less than bounds', () => {
    expect(daySummaries(course([]), [0])).toEqual([]);
  });
});
