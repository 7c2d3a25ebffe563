// When to look for adults, from the forecast of a lot of band larvae. Lot, unit and dates are invented: T0 10 °C,
// K 250 degree-days, CV 8 %, placed at 22 °C on Mon 3 Mar 2031 12:00, so that 5 % are out after 217.1 degree-days.
// The lead of three days and daily looks are common practice, no source.
import {describe, expect, it} from 'vitest';
import type {EmergenceOutlook} from '../../src/care/task.ts';
import {alertsAt, at, care, lot, openTask, sample, tasksAt, unit, wall} from '../care/care-of.ts';

const hours = ['09:00-17:00'];
const room = [
  {
    record: 'calendar',
    at: '2031-01-01T00:00',
    open: {mon: hours, tue: hours, wed: hours, thu: hours, fri: hours},
  },
  sample,
  unit('C2', 'emergence-box'),
  lot('R31-014', 'C2', {larva: 38}, '2031-03-03T12:00'),
];
const before: EmergenceOutlook = {
  startChecking: at('2031-03-18T09:00'),
  nextCheck: at('2031-03-18T09:00'),
  p05: at('2031-03-21T14:12'),
  p95: at('2031-03-27T01:48'),
  holdHours: 24,
};
const warmer: EmergenceOutlook = {
  ...before,
  startChecking: at('2031-03-17T09:00'),
  nextCheck: at('2031-03-17T09:00'),
  p05: at('2031-03-19T23:21'),
  p95: at('2031-03-24T08:38'),
};
const asked = (outlook: EmergenceOutlook) => ({emergence: new Map([['R31-014', outlook]])});
const looks = (now: string, outlook: EmergenceOutlook, ...more: Parameters<typeof tasksAt>[0][]) =>
  openTask(tasksAt([...room, ...more.flat()], now, asked(outlook)), 'look');
const visits = (now: string, outlook: EmergenceOutlook) =>
  alertsAt(room, now, asked(outlook)).flatMap(({id, what}) =>
    what.includes('(look C2)') ? [`${id} ${what}`] : [],
  );

const weekend =
  'visit:2031-03-22 closed Sat 22 Mar to Sun 23 Mar, and 2 visits are needed: on Sat 22 Mar (look C2); on Sun 23 Mar (look C2); cost: 2 visits, 1 unit, about 6 min';

describe('looking for adults by the forecast', () => {
  it('does not open the box before the first look that the forecast wants', () => {
    const task = looks('2031-03-10T09:00', before);
    expect(task?.state).toBe('early');
    expect(task?.id).toBe('look-emergence-box:R31-014:2031-03-18');
  });

  it('wants the first look on the day the forecast names, at the latest a day before 5 % are out', () => {
    const task = looks('2031-03-18T08:30', before);
    expect(task?.state).toBe('due');
    expect([wall(task!.target), wall(task!.latest)]).toEqual(['2031-03-18T09:00', '2031-03-20T14:12']);
  });

  it('wants a look each day after the first', () => {
    const first = [{record: 'check', lot: 'R31-014', at: '2031-03-18T09:10'}];
    const after = {...before, nextCheck: at('2031-03-19T09:00')};
    expect(wall(looks('2031-03-18T10:00', after, first)!.target)).toBe('2031-03-19T09:00');
  });

  it('calls a look overdue that was missed, though the forecast has moved its next one on', () => {
    const first = [{record: 'check', lot: 'R31-014', at: '2031-03-18T09:10'}];
    const later = {...before, nextCheck: at('2031-03-20T09:00')};
    expect(looks('2031-03-20T08:30', later, first)?.state).toBe('overdue');
  });

  it('takes a care record, a check, a complete count and an emergence each as a look', () => {
    const after = {...before, nextCheck: at('2031-03-19T09:00')};
    for (const seen of [
      care('look', 'R31-014', '2031-03-18T09:10'),
      {record: 'check', lot: 'R31-014', at: '2031-03-18T09:10'},
      {record: 'count', lot: 'R31-014', at: '2031-03-18T09:10', stages: {pupa: 38}, complete: true},
      {record: 'emergence', lot: 'R31-014', at: '2031-03-18T09:10', adults: [{sex: 'unknown', count: 1}]},
    ]) {
      const tasks = tasksAt([...room, seen], '2031-03-18T10:00', asked(after)).filter(
        ({task}) => task === 'look',
      );
      expect(tasks.map(({state}) => state)).toEqual(['done', 'early']);
    }
  });

  it('asks beforehand for a visit on each closed day that lies in the window', () => {
    expect(visits('2031-03-03T13:00', before)).toEqual([weekend]);
  });

  it('follows the forecast when a warmer regime moves it: Monday the 17th, and the same two visits', () => {
    expect(wall(looks('2031-03-13T12:30', warmer)!.planned)).toBe('2031-03-17T09:00');
    expect(visits('2031-03-13T12:30', warmer)).toEqual([weekend]);
  });

  it('looks not at all where no adult is to be expected within the horizon', () => {
    const never = {startChecking: null, nextCheck: null, p05: null, p95: null};
    expect(looks('2031-03-10T09:00', never)).toBeUndefined();
  });
});

describe('looking for adults without a forecast', () => {
  const hidden = {
    record: 'lot',
    code: 'G1',
    sample: 'S1',
    unit: 'C2',
    at: '2031-03-03T09:00',
    material: {what: 'galls', amount: 40, unit: 'pieces'},
  };
  const records = [...room.slice(1, 3), hidden];

  it('looks into a box of hidden animals once a week', () => {
    const task = openTask(tasksAt(records, '2031-03-04T09:00'), 'look');
    expect(wall(task!.target)).toBe('2031-03-10T09:00');
    expect(task!.title).toBe('look for adults: 40 galls');
  });

  it('looks daily once an adult is out, and weekly again two weeks after the last', () => {
    const out = {record: 'emergence', lot: 'G1', at: '2031-03-10T09:00', adults: [{sex: 'female', count: 1}]};
    expect(wall(openTask(tasksAt([...records, out], '2031-03-10T10:00'), 'look')!.target)).toBe(
      '2031-03-11T09:00',
    );
    const quiet = {record: 'check', lot: 'G1', at: '2031-03-25T09:00'};
    expect(wall(openTask(tasksAt([...records, out, quiet], '2031-03-25T10:00'), 'look')!.target)).toBe(
      '2031-04-01T09:00',
    );
  });

  it('leaves larvae of unknown kind in a cage alone, and looks at pupae daily', () => {
    const caged = (stages: Record<string, number>) => [
      sample,
      unit('C1'),
      lot('A', 'C1', stages, '2031-03-03T09:00'),
    ];
    expect(openTask(tasksAt(caged({larva: 5}), '2031-03-04T09:00'), 'look')).toBeUndefined();
    expect(wall(openTask(tasksAt(caged({pupa: 5}), '2031-03-04T08:00'), 'look')!.target)).toBe(
      '2031-03-04T09:00',
    );
  });
});
