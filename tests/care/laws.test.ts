// Laws of the care list, on rules and rooms at random.
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {MS_PER_DAY, MS_PER_HOUR} from '../../src/records/entry.ts';
import type {Written} from '../records/daybook-of.ts';
import {at, care, civil, feedRule, lot, openTask, sample, tasksAt, unit, wall} from './care-of.ts';

const DAYS = 16;

/** A rule whose window is a day wide at least, so that a daily round always falls into it. */
const interval = fc
  .record({
    earliest: fc.double({min: 0.1, max: 4, noNaN: true}),
    more: fc.double({min: 1, max: 4, noNaN: true}),
    share: fc.double({min: 0, max: 1, noNaN: true}),
  })
  .map(({earliest, more, share}) => [earliest, earliest + share * more, earliest + more] as const);

/** In winter, so that no clock changes; at any minute of the day. */
const beginning = fc
  .integer({min: 0, max: 24 * 60 - 1})
  .map(minute => at('2031-01-13T00:00') + minute * 60_000);

describe('a list that is worked through each morning at 09:00', () => {
  it('leaves no gap above the latest when every day is open', () => {
    fc.assert(
      fc.property(interval, beginning, (days, began) => {
        const room: Written[] = [
          sample,
          unit('C1'),
          lot('A', 'C1', {larva: 5}, civil.iso(began)),
          feedRule('A', days),
        ];
        let last = began;
        for (let n = 0; n <= DAYS; n++) {
          const now = `${civil.addDays(civil.dayOf(began), n)}T09:00`;
          if (at(now) < began) continue;
          const task = openTask(tasksAt(room, now), 'feed')!;
          if (task.state === 'early') continue;
          const limit = room.length === 4 ? days[1] : days[2];
          expect(at(now) - last).toBeLessThanOrEqual(Math.max(limit, 1) * MS_PER_DAY + 1);
          room.push(care('feed', 'A', now));
          last = at(now);
        }
        expect(room.length).toBeGreaterThan(4);
      }),
      {numRuns: 60},
    );
  });

  it('never feeds twice within the earliest, save on the day on which it becomes allowed', () => {
    fc.assert(
      fc.property(interval, beginning, (days, began) => {
        const room = [
          sample,
          unit('C1'),
          lot('A', 'C1', {larva: 5}, civil.iso(began)),
          feedRule('A', days),
          care('feed', 'A', civil.iso(began)),
        ];
        for (let n = 0; n <= 4; n++) {
          const now = `${civil.addDays(civil.dayOf(began), n)}T23:59`;
          const task = openTask(tasksAt(room, now), 'feed')!;
          if (task.state !== 'early') expect(task.earliest).toBeLessThan(at(now) + MS_PER_HOUR);
        }
      }),
      {numRuns: 60},
    );
  });
});

describe('the ids of tasks', () => {
  const room = (began: number, days: readonly [number, number, number]): Written[] => [
    sample,
    unit('C1'),
    unit('T1', 'aquarium'),
    lot('A', 'C1', {'larva-2': 3, pupa: 2}, civil.iso(began)),
    lot('B', 'T1', {nymph: 9}, civil.iso(began)),
    feedRule('A', days),
  ];

  it('are the same from one call to the next, and later while nothing is done', () => {
    fc.assert(
      fc.property(interval, beginning, fc.integer({min: 0, max: 600}), (days, began, minutes) => {
        const records = room(began, days);
        const now = at('2031-01-16T08:00');
        const ids = (instant: number) => tasksAt(records, wall(instant)!).map(({id}) => id);
        expect(ids(now + minutes * 60_000)).toEqual(ids(now));
      }),
      {numRuns: 40},
    );
  });

  it('are each of one task only', () => {
    fc.assert(
      fc.property(interval, beginning, (days, began) => {
        const ids = tasksAt(room(began, days), '2031-01-16T08:00').map(({id}) => id);
        expect(new Set(ids).size).toBe(ids.length);
      }),
      {numRuns: 40},
    );
  });
});

describe('any task that is done', () => {
  it('is shown as done under its id, and is wanted again counted from when it was done', () => {
    fc.assert(
      fc.property(interval, beginning, fc.integer({min: 0, max: 600}), (days, began, minutes) => {
        const records = [
          sample,
          unit('C1'),
          lot('A', 'C1', {larva: 5}, civil.iso(began)),
          feedRule('A', days),
        ];
        const before = openTask(tasksAt(records, '2031-01-16T08:00'), 'feed')!;
        const done = wall(at('2031-01-16T08:00') + minutes * 60_000)!;
        const after = tasksAt([...records, care('feed', 'A', done)], '2031-01-16T20:00').filter(
          ({task}) => task === 'feed',
        );
        expect(after[0]).toMatchObject({id: before.id, state: 'done'});
        expect(after).toHaveLength(2);
        expect(after[1]!.since).toBe(at(done));
        expect(after[1]!.target).toBeCloseTo(at(done) + days[1] * MS_PER_DAY, -1);
      }),
      {numRuns: 40},
    );
  });
});
