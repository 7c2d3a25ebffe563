// Air that has failed is the most pressing matter of a room: said at once, looked at again within the hour (common
// practice, no source). The room is invented.
import {describe, expect, it} from 'vitest';
import type {Written} from '../records/daybook-of.ts';
import {alertsAt, lot, openTask, sample, tasksAt, unit, wall} from './care-of.ts';

const checked = (at: string, bubbles: boolean): Written => ({
  ...{record: 'care', task: 'check-air', unit: 'T2', at},
  seen: {bubbles},
});
const room = [
  sample,
  unit('T2', 'aquarium'),
  lot('A', 'T2', {nymph: 16}, '2031-05-01T09:00'),
  checked('2031-05-20T09:00', true),
];
const failed = [...room, checked('2031-05-21T09:00', false)];
const air = (records: readonly Written[], now: string) =>
  alertsAt(records, now).filter(({id}) => id.startsWith('air:'));

describe('water whose air supply has failed', () => {
  it('is told of first, as long as nobody has seen bubbles again', () => {
    const [first] = alertsAt(failed, '2031-05-21T09:05');
    expect(first).toMatchObject({id: 'air:T2:2031-05-21', where: 'T2'});
    expect(first!.what).toBe('the air of T2 had failed today 09:00, no bubbles: A');
    expect(first!.mend).toContain('within the hour');
    expect(air(failed, '2031-05-22T09:00').map(({id}) => id)).toEqual(['air:T2:2031-05-21']);
    expect(air([...failed, checked('2031-05-21T09:30', true)], '2031-05-21T09:35')).toEqual([]);
    expect(air(room, '2031-05-21T09:05')).toEqual([]);
  });

  it('is looked at again at once, at the latest in an hour, and then as ever', () => {
    const again = openTask(tasksAt(failed, '2031-05-21T09:05'), 'check-air')!;
    expect([again.state, wall(again.target), wall(again.latest)]).toEqual([
      'due',
      '2031-05-21T09:00',
      '2031-05-21T10:00',
    ]);
    expect(openTask(tasksAt(failed, '2031-05-21T10:30'), 'check-air')!.state).toBe('overdue');
    const mended = tasksAt([...failed, checked('2031-05-21T09:30', true)], '2031-05-21T09:35');
    expect(wall(openTask(mended, 'check-air')!.target)).toBe('2031-05-22T09:30');
  });

  it('asks nobody to come back for what is on the list already', () => {
    const onTheRound = [...room, checked('2031-05-21T09:10', false)];
    const ids = alertsAt(onTheRound, '2031-05-21T09:15').map(({id}) => id);
    expect(ids).toEqual(['air:T2:2031-05-21']);
  });

  it('ends with whoever lived there', () => {
    const gone = {record: 'loss', lot: 'A', at: '2031-05-21T09:10', stage: 'nymph', count: 16, cause: 'dead'};
    expect(air([...failed, gone], '2031-05-21T09:15')).toEqual([]);
  });
});
