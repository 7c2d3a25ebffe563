// Stage triggers and an empty unit. Lot, unit, counts and dates are invented; that prepupae do not eat and are left
// alone for three days, and pupae moved after four, is common practice, no source.
import {describe, expect, it} from 'vitest';
import {care, lot, openTask, roundAt, sample, tasksAt, unit, wall} from '../care/care-of.ts';
import {newRoom} from '../commands/program.ts';
import {applied, sample as fieldSample, refused, said} from './story-room.ts';

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
    expect(feed.why()).toContain('12 of 30 still eat: 40 % of the ration');
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
    expect(openTask(tasksAt(emptied, '2031-07-02T10:00'), 'label')!.title).toBe(
      'label 27 adults and 1 other specimen',
    );
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

interface Story {
  readonly larvae: number;
  readonly open: string;
  readonly some: {readonly at: string; readonly prepupae: number};
  /** All are prepupae; three days of rest and four until they are moved are counted by hand from here. */
  readonly all: string;
  readonly rest: string;
  readonly move: string;
  readonly ended: {
    readonly at: string;
    readonly adults: number;
    readonly dead: number;
    readonly killed: number;
  };
}

const told: Story[] = [
  {
    ...{larvae: 30, open: '09:00-17:00', some: {at: '2031-06-09T09:30', prepupae: 18}},
    ...{all: '2031-06-11T09:30', rest: 'Sat 14 June 09:30', move: 'Mon 16 June 09:00'},
    ended: {at: '2031-07-02T09:00', adults: 27, dead: 2, killed: 1},
  },
  {
    ...{larvae: 44, open: '08:00-16:00', some: {at: '2031-09-07T14:00', prepupae: 11}},
    ...{all: '2031-09-09T14:00', rest: 'Fri 12 September 14:00', move: 'Mon 15 September 08:00'},
    ended: {at: '2031-10-01T11:00', adults: 38, dead: 1, killed: 5},
  },
];

interface Listed {
  readonly task: string;
  readonly title: string;
  readonly why: string;
}

describe.each(told)('$larvae larvae, told through the program', story => {
  const {larvae, open, some: first, all: rested, rest, move, ended} = story;
  const room = newRoom();
  const eating = larvae - first.prepupae;
  const began = `${rested.slice(0, 8)}01T09:00`;
  const days = Object.fromEntries(['mon', 'tue', 'wed', 'thu', 'fri'].map(day => [day, [open]]));
  applied(room, began, [
    {record: 'calendar', at: began, open: days},
    {record: 'rule', code: 'own', task: 'feed', for: {lot: 'R31-033'}, every: {days: 1}, latestDays: 2},
    fieldSample('S31-0061', began.slice(0, 10)),
    {record: 'unit', code: 'A6', type: 'cage', place: 'rack A/6'},
    {
      ...{record: 'lot', code: 'R31-033', sample: 'S31-0061', unit: 'A6', at: began},
      stages: {'larva-6': larvae},
    },
  ]);
  const minutesLater = (at: string) => `${at.slice(0, 14)}45`;
  const tasks = (now: string) =>
    room.ask<{tasks: Listed[]}>(now, 'today').tasks.filter(task => !('done' in task && task.done !== null));

  it('goes on feeding those that still eat, with the ration in proportion', () => {
    const ration = `${eating} of ${larvae} still eat`;
    const share = `${Math.round((100 * eating) / larvae)} % of the ration`;
    const counts = [`larva-6=${eating}`, `prepupa=${first.prepupae}`];
    expect(said(room, first.at, 'count', 'R31-033', ...counts)).toContain(`${ration}: feed ${share}`);
    const feed = tasks(minutesLater(first.at)).find(({task}) => task === 'feed');
    expect(feed?.why).toContain(`${ration}: ${share}`);
  });

  it('says until when prepupae are left alone, and when their pupae are moved: not on a closed day', () => {
    const words = said(room, rested, 'count', 'R31-033', `prepupa=${larvae}`);
    expect(words).toContain(`no food, and leave it alone until ${rest}`);
    expect(words).toContain(`move ${larvae} prepupae ${move}`);
    expect(tasks(minutesLater(rested))).toEqual([]);
  });

  it('asks at once, when nobody is alive any more, for labels, waste, a clean unit and a closed lot', () => {
    const {at, adults, dead, killed} = ended;
    said(room, at, 'emerge', 'R31-033', '--unsexed', String(adults));
    said(room, at, 'loss', 'R31-033', String(dead), '--stage', 'pupa', '--cause', 'dead');
    const wasps = ['--taxon', 'Ichneumonidae', '--hosts', String(killed)];
    said(room, at, 'parasitoid', 'R31-033', String(killed), ...wasps, '--sure');
    expect(said(room, at, 'balance', 'R31-033')).toContain(
      `${larvae} started = 0 alive + ${adults} emerged + ${killed} parasitised + ${dead} lost`,
    );
    const left = tasks(minutesLater(at));
    expect(left.map(({task}) => task).sort()).toEqual(['clean-out', 'close', 'freeze-waste', 'label']);
    const others = `${killed} other ${killed === 1 ? 'specimen' : 'specimens'}`;
    expect(left.find(({task}) => task === 'label')?.title).toBe(`label ${adults} adults and ${others}`);
  });
});

it('says in the sum of a box of dead wood that more may live in it, and closes it only with a reason', () => {
  const room = newRoom();
  applied(room, '2031-03-01T10:00', [
    fieldSample('S31-0007', '2031-02-25'),
    {record: 'unit', code: 'E1', type: 'emergence-box', place: 'rack B/1'},
    {
      ...{record: 'lot', code: 'R31-007', sample: 'S31-0007', unit: 'E1'},
      ...{material: {what: 'dead wood', amount: 3, unit: 'm'}, candidates: [{profile: 'wood-borers'}]},
    },
  ]);
  const later = '2031-06-03T10:00';
  expect(said(room, later, 'balance', 'R31-007')).toContain(
    'nobody knows how many more live in its 3 m of dead wood',
  );
  expect(refused(room, later, 'close', 'R31-007')).toContain(
    'nobody knows whether lot R31-007 still holds animals',
  );
});
