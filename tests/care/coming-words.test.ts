import {describe, expect, it} from 'vitest';
import type {Written} from '../records/daybook-of.ts';
import {alertsAt, care, lot, sample, unit} from './care-of.ts';

/** Fed on Friday morning, every day; the room is closed at the weekend. */
const room = (units: number): Written[] => {
  const codes = Array.from({length: units}, (_, i) => `${i + 1}`);
  return [
    {record: 'calendar', at: '2031-01-01T00:00', open: {fri: ['09:00-17:00'], mon: ['09:00-17:00']}},
    sample,
    ...codes.flatMap(code => [
      unit(`C${code}`),
      lot(`L${code}`, `C${code}`, {larva: 10}, '2031-05-19T09:00'),
      {
        ...{
          record: 'rule',
          code: `feed-${code}`,
          task: 'feed',
          for: {lot: `L${code}`},
          at: '2031-01-01T00:00',
        },
        ...{every: {days: 1}, latestDays: 2, minutes: 10},
      },
      ...['clean', 'moisten'].map(task => ({
        ...{record: 'rule', code: `no-${task}-${code}`, task, for: {lot: `L${code}`}, every: {days: 1}},
        off: true,
      })),
      care('feed', `L${code}`, '2031-05-23T09:00'),
    ]),
  ];
};
const visit = (units: number) =>
  alertsAt(room(units), '2031-05-23T09:30').find(({id}) => id.startsWith('visit:2031-05-24'))!;

describe('what a visit is for', () => {
  it('names the units while they are few', () => {
    const {what, where} = visit(3);
    expect(what).toContain('(feed C1, C2, C3); cost: 1 visit, 3 units, about 30 min');
    expect(where).toBe('C1, C2, C3');
  });

  it('counts many, and still says where', () => {
    const {what, where} = visit(13);
    expect(what).toContain('(feed 13 units); cost: 1 visit, 13 units, about 2 h 10');
    expect(where.split(', ')).toHaveLength(13);
    expect(where).toMatch(/^C1, C2, C3/);
  });
});
