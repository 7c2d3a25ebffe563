// A room's own rule says how long its adults may wait unseen, shorter or longer than their kind bears.
import {describe, expect, it} from 'vitest';
import {at, lot, sample, tasksAt, unit, wall} from './care-of.ts';

const calendar = {
  record: 'calendar',
  at: '2031-01-01T00:00',
  open: Object.fromEntries(
    ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map(day => [day, ['09:00-17:00']]),
  ),
};
const room = [calendar, sample, unit('C1'), lot('A', 'C1', {pupa: 8}, '2031-05-12T09:00')];
const looked = {record: 'check', lot: 'A', found: 0, at: '2031-05-20T09:00'};
const ownRule = (days: number) => ({
  record: 'rule',
  code: 'moths-wait',
  task: 'look',
  for: {lot: 'A'},
  every: {days},
  at: '2031-01-01T00:00',
});
/** The kind bears a day; the forecast asks for the next look as it is told how long an adult may wait. */
const emergence = (nextCheck: string) =>
  new Map([
    [
      'A',
      {
        startChecking: at('2031-05-17T09:00'),
        nextCheck: at(nextCheck),
        p05: at('2031-05-20T09:00'),
        p95: at('2031-05-27T09:00'),
        holdHours: 24,
      },
    ],
  ]);
const look = (nextCheck: string, days?: number) =>
  tasksAt([...room, looked, ...(days === undefined ? [] : [ownRule(days)])], '2031-05-20T10:00', {
    emergence: emergence(nextCheck),
  }).find(({task, state}) => task === 'look' && state !== 'done')!;

describe('a look rule of the room’s own', () => {
  it('leaves the plan to the forecast where there is none', () => {
    const {target, latest, why} = look('2031-05-21T09:00');
    expect(wall(target)).toBe('2031-05-21T09:00');
    expect(wall(latest)).toBe('2031-05-21T09:00');
    expect(why()).toContain('none is to wait over 24 hours');
    expect(why()).not.toContain('rule');
  });

  it('lets adults wait longer than their kind bears, and says so', () => {
    const {target, latest, why} = look('2031-05-23T09:00', 3);
    expect(wall(target)).toBe('2031-05-23T09:00');
    expect(wall(latest)).toBe('2031-05-23T09:00');
    expect(why()).toContain(
      'by this room’s rule moths-wait none is to wait over 3 days (its kind: 24 hours)',
    );
  });

  it('asks for looks sooner than their kind does, within opening hours', () => {
    const {target, latest, why} = look('2031-05-20T15:00', 0.25);
    expect(wall(target)).toBe('2031-05-20T15:00');
    expect(wall(latest)).toBe('2031-05-20T15:00');
    expect(why()).toContain('none is to wait over 6 hours');
  });
});
