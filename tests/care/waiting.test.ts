// "Can this wait until Monday?": the answer for tasks. Rooms and dates are invented.
import {describe, expect, it} from 'vitest';
import {openTimeOf} from '../../src/care/calendar.ts';
import {nextAfterClosing, waitingTasks} from '../../src/care/waiting.ts';
import {at, care, careInput, feedRule, lot, sample, unit, wall} from './care-of.ts';

const hours = ['09:00-17:00'];
const room = (days: readonly [number, number, number]) => [
  {
    record: 'calendar',
    at: '2031-01-01T00:00',
    open: {mon: hours, tue: hours, wed: hours, thu: hours, fri: hours},
  },
  sample,
  unit('A3'),
  lot('L3', 'A3', {larva: 10}, '2031-05-01T09:00'),
  feedRule('L3', days),
  ...['clean', 'moisten'].map(task => ({
    record: 'rule',
    code: `no-${task}`,
    task,
    for: {lot: 'L3'},
    every: {days: 1},
    off: true,
  })),
  care('feed', 'L3', '2031-05-15T10:00'),
];
const friday = '2031-05-16T10:00';
const asked = (days: readonly [number, number, number]) => {
  const input = careInput(room(days), friday);
  const until = nextAfterClosing(openTimeOf(input.state.calendar, input.civil), input)!;
  return {until, tasks: waitingTasks(input, until)};
};

describe('waitingTasks(input, until)', () => {
  it('waits by itself for the first round after the next closed day', () => {
    expect(wall(asked([1, 2, 3]).until)).toBe('2031-05-19T09:00');
  });

  it('says until when a task is safe that can wait', () => {
    const [task] = asked([1, 3, 5]).tasks;
    expect(task).toMatchObject({canWait: true, cure: 'nothing', safeUntil: at('2031-05-20T10:00')});
  });

  it('says where doing it before the room closes is enough', () => {
    const [task] = asked([1, 2, 3]).tasks;
    expect(task).toMatchObject({canWait: false, cure: 'now', safeUntil: at('2031-05-18T10:00')});
  });

  it('says when to come where it is not', () => {
    const [task] = asked([0.5, 1, 1.5]).tasks;
    expect(task).toMatchObject({canWait: false, cure: 'now-and-visit'});
    expect([wall(task!.visit!.from), wall(task!.visit!.to)]).toEqual([
      '2031-05-17T04:30',
      '2031-05-18T04:30',
    ]);
    const [late] = asked([1.5, 2, 2.5]).tasks;
    expect(late).toMatchObject({canWait: false, cure: 'visit'});
  });

  it('leaves out what is not due before then', () => {
    expect(asked([3, 6, 8]).tasks).toEqual([]);
  });
});
