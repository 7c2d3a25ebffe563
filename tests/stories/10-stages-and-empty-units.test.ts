// Stage triggers and an empty unit. Lot, unit, counts and dates are invented; that prepupae do not eat and are left
// alone for three days, and pupae moved after four, is common practice, no source.
import {describe, expect, it} from 'vitest';
import {care, lot, openTask, roundAt, sample, tasksAt, unit, wall} from '../care/care-of.ts';

const hours = ['09:00-17:00'];
const began = [
  {
    record: 'calendar',
    at: '2031-01-01T00:00',
    open: {mon: hours, tue: hours, wed: hours, thu: hours, fri: hours},
  },
  sample,
  unit('A6'),
  lot('R31-033', 'A6', {'larva-6': 30}, '2031-06-02T09:00'),
  care('feed', 'R31-033', '2031-06-08T09:00'),
];
const count = (day: string, stages: Record<string, number>) => ({
  record: 'count',
  lot: 'R31-033',
  at: `2031-06-${day}T09:30`,
  stages,
});
const some = [...began, count('09', {'larva-6': 12, prepupa: 18})];
const all = [...some, count('11', {prepupa: 30})];
const emptied = [
  ...all,
  {
    record: 'emergence',
    lot: 'R31-033',
    at: '2031-07-01T09:00',
    adults: [
      {sex: 'female', count: 14},
      {sex: 'male', count: 13},
    ],
  },
  {record: 'loss', lot: 'R31-033', at: '2031-07-02T09:00', stage: 'pupa', count: 2, cause: 'dead'},
  {record: 'parasitoid', lot: 'R31-033', at: '2031-07-02T09:00', taxon: 'Ichneumonidae', count: 1, hosts: 1},
];

const kinds = (records: typeof all, now: string) =>
  tasksAt(records, now)
    .map(({task}) => task)
    .sort();

describe('a lot whose larvae turn into prepupae', () => {
  it('is still fed while some eat, with the ration in proportion', () => {
    const feed = openTask(tasksAt(some, '2031-06-09T10:00'), 'feed')!;
    expect(feed.title).toBe('feed 12 larvae');
    expect(feed.why).toContain('12 of 30 still eat: 40 % of the ration');
    expect(openTask(tasksAt(some, '2031-06-09T10:00'), 'move-pupae')).toBeUndefined();
  });

  it('is not fed or cleaned once all are prepupae, and its cage not disturbed for three days', () => {
    expect(kinds(all, '2031-06-11T10:00')).toEqual(['moisten', 'move-pupae']);
    const moisten = openTask(tasksAt(all, '2031-06-11T10:00'), 'moisten')!;
    expect(wall(moisten.earliest)).toBe('2031-06-14T09:30');
  });

  it('has its pupae moved after four days, put off from a closed Sunday to the Monday', () => {
    const move = openTask(tasksAt(all, '2031-06-11T10:00'), 'move-pupae')!;
    expect([wall(move.target), wall(move.planned)]).toEqual(['2031-06-15T09:30', '2031-06-16T09:00']);
  });
});

describe('a counted lot in which nobody is alive any more', () => {
  it('asks for nothing but to be finished: labels, waste, a clean unit, a closed lot', () => {
    expect(kinds(emptied, '2031-07-02T10:00')).toEqual(['clean-out', 'close', 'freeze-waste', 'label']);
    expect(openTask(tasksAt(emptied, '2031-07-02T10:00'), 'label')!.title).toBe('label 28 specimens');
  });

  it('asks for each of these once', () => {
    const labelled = [...emptied, care('label', 'R31-033', '2031-07-02T11:00')];
    expect(openTask(tasksAt(labelled, '2031-07-03T09:00'), 'label')).toBeUndefined();
  });

  it('does not have its unit cleaned out while another lot lives in it', () => {
    const shared = [...emptied, lot('B', 'A6', {pupa: 3}, '2031-06-20T09:00')];
    expect(tasksAt(shared, '2031-07-02T10:00').some(({task}) => task === 'clean-out')).toBe(false);
  });

  it('asks for nothing once it is closed', () => {
    const closed = [...emptied, {record: 'close', lot: 'R31-033', at: '2031-07-02T12:00'}];
    expect(roundAt(closed, '2031-07-03T09:00').tasks).toEqual([]);
  });
});

describe('a box of wood without an adult for 90 days', () => {
  const wood = {
    record: 'lot',
    code: 'W1',
    sample: 'S1',
    unit: 'E1',
    at: '2031-03-03T09:00',
    material: {what: 'logs', amount: 4, unit: 'pieces'},
  };

  it('keeps its tasks: hidden animals are never taken for gone', () => {
    const tasks = tasksAt([sample, unit('E1', 'emergence-box'), wood], '2031-06-20T09:00');
    expect(tasks.map(({task}) => task).sort()).toEqual(['clean', 'look', 'moisten']);
  });
});
