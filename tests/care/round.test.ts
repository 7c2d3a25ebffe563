import {describe, expect, it} from 'vitest';
import {compareNaturally} from '../../src/care/walking-order.ts';
import {care, feedRule, lot, roundAt, sample, unit} from './care-of.ts';

const only = (...codes: string[]) =>
  codes.flatMap(code =>
    ['clean', 'moisten'].map(task => ({
      record: 'rule',
      code: `no-${task}-${code}`,
      task,
      for: {lot: code},
      every: {days: 1},
      off: true,
      at: '2031-01-01T00:00',
    })),
  );

describe('roundOf(input)', () => {
  const room = [
    sample,
    unit('C10', 'cage', {place: 'rack A/10'}),
    unit('C2', 'cage', {place: 'rack A/2'}),
    unit('C3', 'cage', {place: 'bench'}),
    ...['A', 'B', 'C'].flatMap((code, i) => [
      lot(code, ['C10', 'C2', 'C3'][i]!, {larva: 4}, '2031-05-19T09:00'),
      feedRule(code, [1, 2, 3], {minutes: 4}),
    ]),
    ...only('A', 'B', 'C'),
    care('feed', 'A', '2031-05-19T10:00'),
    care('feed', 'B', '2031-05-20T10:00'),
    care('feed', 'C', '2031-05-20T10:00'),
  ];
  const lots = (now: string, ...more: object[]) =>
    roundAt([...room, ...(more as typeof room)], now).tasks.map(({lot: code, state}) => `${code} ${state}`);

  it('lists overdue tasks first, then by place in walking order', () => {
    expect(lots('2031-05-22T08:00')).toEqual(['A overdue', 'C due', 'B due']);
  });

  it('groups the same tasks by shelf in walking order, where shelf 2 comes before shelf 10', () => {
    const {places} = roundAt(room, '2031-05-22T08:00');
    expect(places.map(({place, tasks}) => [place, tasks.map(({unit: code}) => code)])).toEqual([
      ['bench', ['C3']],
      ['rack A', ['C2', 'C10']],
    ]);
  });

  it('comes to a unit with mould last of those at one place, and in its turn once it is gone', () => {
    const together = [
      unit('C2', 'cage', {place: 'rack A', at: '2031-05-19T10:00'}),
      unit('C10', 'cage', {place: 'rack A', at: '2031-05-19T10:00'}),
    ];
    const seen = (mould: boolean, at: string) => ({...care('inspect', 'B', at), seen: {mould}});
    const feeds = (...more: object[]) =>
      roundAt([...room, ...together, ...(more as typeof room)], '2031-05-23T09:00')
        .places.find(({place}) => place === 'rack A')!
        .tasks.flatMap(({task, unit: code}) => (task === 'feed' ? [code] : []));
    expect(feeds()).toEqual(['C2', 'C10']);
    expect(feeds(seen(true, '2031-05-22T09:00'))).toEqual(['C10', 'C2']);
    expect(feeds(seen(true, '2031-05-22T09:00'), seen(false, '2031-05-22T15:00'))).toEqual(['C2', 'C10']);
  });

  it('puts what is done last and counts it apart', () => {
    const {tasks, summary} = roundAt([...room, care('feed', 'A', '2031-05-22T08:30')], '2031-05-22T09:00');
    expect(tasks.map(({lot: code, state}) => `${code} ${state}`)).toEqual(['C due', 'B due', 'A done']);
    expect(summary).toEqual({toDo: 2, late: 0, skipped: 0, done: 1, minutes: 8});
  });

  it('keeps a skipped task on the list, but not among those to do', () => {
    const skip = {record: 'skip', lot: 'A', task: 'feed', at: '2031-05-22T09:30', why: 'locked'};
    const {tasks, summary} = roundAt([...room, skip], '2031-05-22T10:00');
    expect(tasks).toHaveLength(3);
    expect(summary).toMatchObject({toDo: 2, skipped: 1, late: 0});
  });

  it('lets a task join that is nearly due, where the same is done on the same shelf', () => {
    const soon = [...room, feedRule('B', [1, 2, 3])];
    expect(roundAt(soon, '2031-05-21T08:00').tasks.map(({lot: code}) => code)).toEqual(['A']);
    expect(
      roundAt([...room, feedRule('B', [1, 1.7, 3])], '2031-05-21T08:00').tasks.map(
        ({lot: code, state}) => `${code} ${state}`,
      ),
    ).toEqual(['A due', 'B early']);
  });

  it('is empty in an empty room', () => {
    expect(roundAt([], '2031-05-22T08:00')).toEqual({
      tasks: [],
      places: [],
      summary: {toDo: 0, late: 0, skipped: 0, done: 0, minutes: 0},
    });
  });
});

describe('compareNaturally(a, b)', () => {
  it('orders numbers by size, and letters without regard to case', () => {
    const places = ['rack B/1', 'rack A/10', 'Rack A/2', 'bench', 'rack A'];
    expect(places.sort(compareNaturally)).toEqual(['bench', 'rack A', 'Rack A/2', 'rack A/10', 'rack B/1']);
  });

  it('tells apart what differs in case only', () => {
    expect(compareNaturally('a', 'A')).not.toBe(0);
    expect(compareNaturally('a', 'a')).toBe(0);
  });
});
