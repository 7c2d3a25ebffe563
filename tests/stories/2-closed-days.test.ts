// A bank-holiday weekend: intervals with tolerances, heat, and the fewest visits. All units, lots and dates are
// invented; "every two days, never over three" and shorter limits in heat are common practice, no source.
import {describe, expect, it} from 'vitest';
import {alertsAt, care, feedRule, lot, openTask, sample, tasksAt, unit, wall} from '../care/care-of.ts';

const days = (...hours: string[]) => ({mon: hours, tue: hours, wed: hours, thu: hours});
const room = [
  {
    record: 'calendar',
    open: {...days('09:00-12:00'), fri: ['09:00-12:00', '16:30-17:30'], sat: [], sun: []},
    closed: [{from: '2031-05-24', to: '2031-05-26', why: 'long weekend'}],
  },
  sample,
  unit('A3'),
  unit('A5'),
  lot('L3', 'A3', {larva: 10}, '2031-05-01T09:00'),
  lot('L5', 'A5', {larva: 10}, '2031-05-01T09:00'),
  ...others('L3', 'L5'),
];

/** Only the feeding is of interest here. */
function others(...lots: string[]) {
  return lots.flatMap(code =>
    ['clean', 'moisten'].map(task => ({
      record: 'rule',
      code: `no-${task}-${code}`,
      task,
      for: {lot: code},
      every: {days: 1},
      off: true,
    })),
  );
}

describe('closed days, with food every 48 h, at the soonest after 24 h, at the latest after 72 h', () => {
  const rules = [feedRule('L3', [1, 2, 3]), feedRule('L5', [1, 2, 3])];
  const fed = [care('feed', 'L5', '2031-05-22T09:00'), care('feed', 'L3', '2031-05-23T16:30')];

  it('counts from when it was really done: due Sunday 16:30, at the latest Monday 16:30', () => {
    const task = openTask(tasksAt([...room, ...rules, ...fed], '2031-05-23T17:00'), 'feed', 'L3');
    expect([wall(task!.earliest), wall(task!.target), wall(task!.latest)]).toEqual([
      '2031-05-24T16:30',
      '2031-05-25T16:30',
      '2031-05-26T16:30',
    ]);
    expect(task!.planned).toBeNull();
  });

  it('pulls a task whose limit falls on a closed day forward to the last round that is not too soon', () => {
    const task = openTask(tasksAt([...room, ...rules, ...fed.slice(0, 1)], '2031-05-23T09:00'), 'feed', 'L5');
    expect(wall(task!.target)).toBe('2031-05-24T09:00');
    expect(wall(task!.planned)).toBe('2031-05-23T16:30');
    expect(task!.state).toBe('due');
    expect(task!.why()).toContain('brought forward');
  });

  it('asks for one visit that covers both once both were fed on Friday evening', () => {
    const both = [...fed, care('feed', 'L5', '2031-05-23T16:30')];
    const alerts = alertsAt([...room, ...rules, ...both], '2031-05-23T17:00').filter(({id}) =>
      id.startsWith('visit:'),
    );
    expect(alerts.map(({id, where}) => [id, where])).toEqual([['visit:2031-05-24', 'A3, A5']]);
    expect(alerts[0]!.what).toBe(
      'closed Sat 24 May to Mon 26 May (long weekend), and a visit is needed: between Sat 24 May 16:30 and Mon 26 May 16:30 (feed A3, A5); cost: 1 visit, 2 units, about 6 min',
    );
    expect(wall(alerts[0]!.since)).toBe('2031-05-24T16:30');
  });

  it('asks for the same visit on Friday morning already, before anybody was fed', () => {
    const before = [care('feed', 'L3', '2031-05-21T16:30'), care('feed', 'L5', '2031-05-22T09:00')];
    const alerts = alertsAt([...room, ...rules, ...before], '2031-05-23T09:00').filter(({id}) =>
      id.startsWith('visit:'),
    );
    expect(alerts.map(({where}) => where)).toEqual(['A3, A5']);
  });

  it('is safe on Tuesday after the visit', () => {
    const visited = [...fed, care('feed', 'L3', '2031-05-26T10:00'), care('feed', 'L5', '2031-05-26T10:00')];
    expect(
      alertsAt([...room, ...rules, ...visited], '2031-05-26T11:00').filter(({id}) => id.startsWith('visit:')),
    ).toEqual([]);
  });

  it('pushes a task whose target alone falls on a closed day to the next round', () => {
    const elastic = [feedRule('L3', [1, 2, 4]), feedRule('L5', [1, 2, 4])];
    const task = openTask(tasksAt([...room, ...elastic, ...fed], '2031-05-23T17:00'), 'feed', 'L3');
    expect(wall(task!.planned)).toBe('2031-05-27T09:00');
    expect(task!.why()).toContain('put off');
  });
});

describe('the same weekend at 26 °C, with food every 24 degree-days above 8 °C (2 days at 20 °C)', () => {
  const warm = (code: string) => ({
    record: 'rule',
    code: `feed-${code}`,
    task: 'feed',
    for: {lot: code},
    every: {degreeDays: 24, lower: 8},
  });
  const heat = {
    instantAfterDegreeDays: (_: string, from: number, degreeDays: number, lower: number) =>
      from + (degreeDays / (26 - lower)) * 86_400_000,
  };
  const fed = [care('feed', 'L5', '2031-05-23T16:30'), care('feed', 'L3', '2031-05-23T16:30')];
  const records = [...room, warm('L3'), warm('L5'), ...fed];

  it('shortens interval and limit by 12/18: due after 32 h, at the latest after 48 h', () => {
    const task = openTask(tasksAt(records, '2031-05-23T17:00', heat), 'feed', 'L3');
    expect([wall(task!.target), wall(task!.latest)]).toEqual(['2031-05-25T00:30', '2031-05-25T16:30']);
    expect(task!.why()).toContain('warmth moves it up 16 hours');
  });

  it('wants the visit by Sunday 16:30, late enough that Tuesday is safe again', () => {
    const alerts = alertsAt(records, '2031-05-23T17:00', heat);
    expect(alerts[0]!.id).toBe('visit:2031-05-24');
    expect(alerts[0]!.what).toContain('on Sun 25 May, 09:00 to 16:30');
  });
});
