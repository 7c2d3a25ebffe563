// How far warmth moves an interval in degree-days: as far as they say, but in the cold not past two weeks, or twice what it
// is at 20 °C (common practice, no source), unless the rule says itself how late it may be. Rooms and dates are invented.
import {describe, expect, it} from 'vitest';
import {lot, openTask, sample, tasksAt, unit} from './care-of.ts';

const FED = '2031-05-20T09:00';
const room = [
  sample,
  unit('A3'),
  lot('L3', 'A3', {larva: 10}, '2031-05-01T09:00'),
  {record: 'care', task: 'feed', lot: 'L3', at: FED},
];
/** Every 24 degree-days above 8 °C: two days at 20 °C. */
const feeding = (constantC: number, more: object = {}) => {
  const rule = {
    ...{record: 'rule', code: 'warm', task: 'feed', for: {lot: 'L3'}, every: {degreeDays: 24, lower: 8}},
    ...{at: '2031-05-01T09:00', ...more},
  };
  const task = openTask(
    tasksAt([...room, rule], '2031-05-20T10:00', {
      instantAfterDegreeDays: (_, from, degreeDays, lower) =>
        constantC <= lower
          ? Number.POSITIVE_INFINITY
          : from + (degreeDays / (constantC - lower)) * 86_400_000,
    }),
    'feed',
  )!;
  const days = (at: number) => (at - task.since) / 86_400_000;
  return {target: days(task.target), latest: days(task.latest), why: task.why};
};

describe('an interval in degree-days', () => {
  it.each([
    [26, 24 / 18],
    [14, 4],
    [12, 6],
    [40, 0.75],
  ])('is what they take at %d °C: %d days', (constantC, days) => {
    const {target, latest} = feeding(constantC);
    expect(target).toBeCloseTo(days, 6);
    expect(latest).toBeCloseTo(1.5 * days, 6);
  });

  it('is not more than two weeks, however cold, and says so', () => {
    for (const constantC of [9, 8.1, 6]) {
      const {target, latest, why} = feeding(constantC);
      expect([target, latest], String(constantC)).toEqual([14, 21]);
      expect(why()).toContain('cool puts it off 12 days, the most it may');
    }
  });

  it('is not more than twice what it is at 20 °C where that is longer', () => {
    expect(feeding(10, {every: {degreeDays: 120, lower: 8}}).target).toBe(20);
  });

  it('goes on to the limit that a rule states itself', () => {
    const {target, latest} = feeding(11, {latestDays: 10});
    expect(target).toBeCloseTo(8, 6);
    expect(latest).toBe(10);
    expect(feeding(6, {latestDays: 10}).target).toBe(10);
  });
});
