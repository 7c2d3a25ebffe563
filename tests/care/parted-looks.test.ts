// Lots that were parted or put together keep the time of their last look. Rooms and dates are invented.
import {describe, expect, it} from 'vitest';
import {at, lot, sample, tasksAt, unit, wall} from './care-of.ts';

const emergence = new Map(
  ['A', 'B'].map(code => [
    code,
    {
      ...{startChecking: at('2031-05-17T09:00'), nextCheck: at('2031-05-21T09:00'), holdHours: 24},
      ...{p05: at('2031-05-20T09:00'), p95: at('2031-05-27T09:00')},
    },
  ]),
);
const room = [sample, unit('C1'), unit('C2'), lot('A', 'C1', {pupa: 8}, '2031-05-12T09:00')];
const looked = (code: string, when: string) => ({record: 'check', lot: code, found: 0, at: when});
const look = (records: readonly object[], of: string) =>
  tasksAt(records as typeof room, '2031-05-20T11:00', {emergence}).find(
    ({task, lot: code, state}) => task === 'look' && code === of && state !== 'done',
  );

describe('looks for adults', () => {
  it('are due for a part of a lot when they are for the lot it was split off from', () => {
    const split = {
      ...{record: 'split', lot: 'A', into: 'B', stages: {pupa: 3}, unit: 'C2'},
      at: '2031-05-20T10:00',
    };
    const task = look([...room, looked('A', '2031-05-20T09:00'), split], 'B');
    expect([task?.state, wall(task?.target ?? null)]).toEqual(['early', '2031-05-21T09:00']);
  });

  it('are due at once for a part of a lot that nobody has looked at yet', () => {
    const split = {
      ...{record: 'split', lot: 'A', into: 'B', stages: {pupa: 3}, unit: 'C2'},
      at: '2031-05-20T10:00',
    };
    expect(look([...room, split], 'B')?.state).toBe('overdue');
  });
});
