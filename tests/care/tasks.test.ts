import {describe, expect, it} from 'vitest';
import {at, care, feedRule, lot, openTask, profile, sample, tasksAt, unit, wall} from './care-of.ts';

const room = [sample, unit('C1'), lot('A', 'C1', {'larva-3': 18}, '2031-05-20T10:00')];
const everyTwo = feedRule('A', [1, 2, 3]);
const feed = (records: Parameters<typeof tasksAt>[0], now: string) => openTask(tasksAt(records, now), 'feed');

describe('a task', () => {
  it('of food is due the day a lot begins, within one interval', () => {
    const task = feed([...room, everyTwo], '2031-05-20T11:00')!;
    expect(task.state).toBe('due');
    expect([wall(task.target), wall(task.latest)]).toEqual(['2031-05-20T10:00', '2031-05-22T10:00']);
  });

  it('of a first feeding is late only once one interval has passed, not on the next morning', () => {
    const states = ['2031-05-21T09:00', '2031-05-22T09:00', '2031-05-22T10:01'].map(
      now => feed([...room, everyTwo], now)!.state,
    );
    expect(states).toEqual(['due', 'due', 'overdue']);
  });

  it('counts from when it was really done, not from the plan', () => {
    const fed = [care('feed', 'A', '2031-05-20T10:30'), care('feed', 'A', '2031-05-23T16:30')];
    const task = feed([...room, everyTwo, ...fed], '2031-05-24T09:00')!;
    expect([task.earliest, task.target, task.latest].map(wall)).toEqual([
      '2031-05-24T16:30',
      '2031-05-25T16:30',
      '2031-05-26T16:30',
    ]);
  });

  it('is early before its day, due on it, and overdue after it or once its latest instant has passed', () => {
    const fed = [...room, everyTwo, care('feed', 'A', '2031-05-20T10:30')];
    const states = ['2031-05-21T09:00', '2031-05-22T09:00', '2031-05-22T20:00', '2031-05-23T08:40'].map(
      now => feed(fed, now)!.state,
    );
    expect(states).toEqual(['early', 'due', 'due', 'overdue']);
    const daily = [...room, feedRule('A', [0.5, 0.9, 1]), care('feed', 'A', '2031-05-20T10:30')];
    expect(feed(daily, '2031-05-21T10:31')!.state).toBe('overdue');
  });

  it('that is done stays on the day’s list as done, under the same id, and the next one is early', () => {
    const fed = [...room, everyTwo, care('feed', 'A', '2031-05-20T10:30')];
    const before = feed(fed, '2031-05-22T09:00')!;
    const after = tasksAt([...fed, care('feed', 'A', '2031-05-22T09:10')], '2031-05-22T09:30').filter(
      ({task}) => task === 'feed',
    );
    expect(after.map(({id, state}) => [id, state])).toEqual([
      [before.id, 'done'],
      ['feed-A:A:2031-05-24', 'early'],
    ]);
    expect(after[0]!.done).toEqual({at: at('2031-05-22T09:10'), by: 'Ida'});
  });

  it('that is wanted twice a day has a number behind the second', () => {
    const mosquitoes = [
      ...room,
      feedRule('A', [0.1, 0.25, 0.5]),
      care('feed', 'A', '2031-05-21T09:00'),
      care('feed', 'A', '2031-05-21T15:00'),
    ];
    const ids = tasksAt(mosquitoes, '2031-05-21T15:30').flatMap(({task, id, state}) =>
      task === 'feed' ? [`${id} ${state}`] : [],
    );
    expect(ids).toEqual([
      'feed-A:A:2031-05-20 done',
      'feed-A:A:2031-05-21 done',
      'feed-A:A:2031-05-21.2 due',
    ]);
  });

  it('that could not be done stays due with the reason, until the next round', () => {
    const skipped = [
      ...room,
      everyTwo,
      {record: 'skip', lot: 'A', task: 'feed', at: '2031-05-20T12:00', why: 'no leaves left'},
    ];
    expect(feed(skipped, '2031-05-20T13:00')!.skipped?.why).toBe('no leaves left');
    expect(feed(skipped, '2031-05-20T13:00')!.state).toBe('due');
    expect(feed(skipped, '2031-05-21T09:30')!.skipped).toBeUndefined();
    expect(feed(skipped, '2031-05-21T09:30')!.state).toBe('due');
    expect(feed(skipped, '2031-05-22T10:01')!.state).toBe('overdue');
  });

  it('keeps its time of day over a change of clocks', () => {
    const autumn = [
      sample,
      unit('C1'),
      lot('A', 'C1', {larva: 3}, '2031-10-20T09:00'),
      feedRule('A', [0.5, 1, 1]),
      care('feed', 'A', '2031-10-25T09:00'),
    ];
    const task = feed(autumn, '2031-10-25T10:00')!;
    expect(task.latest - at('2031-10-25T09:00')).toBe(25 * 3_600_000);
    expect(wall(task.planned)).toBe('2031-10-26T09:00');
  });

  it('has an id a shell takes without quotes', () => {
    for (const {id} of tasksAt(room, '2031-05-21T09:00')) expect(id).toMatch(/^[\w.:-]+$/);
  });

  it('can be asked for on another day than today', () => {
    const tasks = tasksAt([...room, everyTwo, care('feed', 'A', '2031-05-20T10:30')], '2031-05-20T11:00', {
      day: '2031-05-22',
    });
    expect(openTask(tasks, 'feed')!.state).toBe('due');
  });
});

describe('what was done counts', () => {
  const at10 = (more: object) => [
    ...room,
    everyTwo,
    {record: 'care', task: 'feed', at: '2031-05-21T10:00', ...more},
  ];
  const since = (records: Parameters<typeof tasksAt>[0]) => wall(feed(records, '2031-05-21T12:00')!.since);

  it('when it was written down for the lot, for its unit, or for both', () => {
    for (const whose of [{lot: 'A'}, {unit: 'C1'}, {unit: 'C1', lot: 'A'}])
      expect(since(at10(whose))).toBe('2031-05-21T10:00');
  });

  it('for nobody else: not when another lot of the unit is named, nor in a unit it did not live in', () => {
    const other = lot('B', 'C1', {larva: 2}, '2031-05-20T10:00');
    expect(since([...at10({unit: 'C1', lot: 'B'}), other])).toBe('2031-05-20T10:00');
    expect(since([...at10({unit: 'C2'}), unit('C2')])).toBe('2031-05-20T10:00');
  });

  it('for the unit, when it was done for a lot that lived there', () => {
    const cleaned = [...room, care('clean', 'A', '2031-05-21T10:00')];
    expect(wall(openTask(tasksAt(cleaned, '2031-05-21T12:00'), 'clean', 'C1')!.since)).toBe(
      '2031-05-21T10:00',
    );
  });

  it('for what was split off, as for the lot it comes from', () => {
    const split = {record: 'split', lot: 'A', into: 'B', at: '2031-05-21T11:00', stages: {'larva-3': 4}};
    const tasks = tasksAt([...at10({lot: 'A'}), split], '2031-05-21T12:00');
    expect(wall(openTask(tasks, 'feed', 'B')!.since)).toBe('2031-05-21T10:00');
  });

  it('for merged lots, from the one that waits longer', () => {
    const merged = [
      ...at10({lot: 'A'}),
      lot('B', 'C1', {'larva-3': 4}, '2031-05-19T09:00'),
      care('feed', 'B', '2031-05-19T09:30'),
      {record: 'merge', lot: 'B', into: 'A', at: '2031-05-21T11:00'},
    ];
    expect(since(merged)).toBe('2031-05-19T09:30');
  });

  it('also where a lot was split off and merged back', () => {
    const back = [
      ...at10({lot: 'A'}),
      {record: 'split', lot: 'A', into: 'B', at: '2031-05-21T10:30', stages: {'larva-3': 4}},
      {record: 'merge', lot: 'B', into: 'A', at: '2031-05-21T11:00'},
    ];
    expect(since(back)).toBe('2031-05-21T10:00');
  });

  it('for a unit only since it was last lived in without a break', () => {
    const again = [
      sample,
      unit('T1', 'aquarium'),
      lot('A', 'T1', {nymph: 5}, '2031-03-01T09:00'),
      care('change-water', 'A', '2031-03-08T09:00'),
      {record: 'close', lot: 'A', at: '2031-03-10T09:00', reason: 'given away'},
      lot('B', 'T1', {nymph: 5}, '2031-05-20T09:00'),
    ];
    expect(wall(openTask(tasksAt(again, '2031-05-21T12:00'), 'change-water')!.target)).toBe(
      '2031-05-27T09:00',
    );
  });
});

describe('which tasks a room has', () => {
  const kinds = (...records: Parameters<typeof tasksAt>[0]) =>
    tasksAt([sample, unit('C1'), unit('T1', 'aquarium'), ...records], '2031-05-21T09:00')
      .map(({task}) => task)
      .sort();

  it('eggs are looked over, not fed', () => {
    expect(kinds(lot('A', 'C1', {egg: 20}, '2031-05-20T09:00'))).toEqual(['inspect', 'moisten']);
  });

  it('food begins when eggs have hatched, at once', () => {
    const hatched = [
      sample,
      unit('C1'),
      lot('A', 'C1', {egg: 20}, '2031-05-10T09:00'),
      {record: 'hatch', lot: 'A', at: '2031-05-20T16:00', count: 12, stage: 'larva-1'},
    ];
    const task = openTask(tasksAt(hatched, '2031-05-20T16:30'), 'feed')!;
    expect(wall(task.target)).toBe('2031-05-20T16:00');
    expect(task.title).toBe('feed 12 larvae');
  });

  it('an aquarium has water tasks, of which the most demanding lot sets the pace', () => {
    const gnats = profile('gnats', {order: 'Diptera', family: 'Culicidae'});
    const records = [
      sample,
      unit('T1', 'aquarium'),
      lot('A', 'T1', {nymph: 5}, '2031-05-20T09:00'),
      lot('B', 'T1', {larva: 50}, '2031-05-20T09:00', {candidates: [{profile: 'gnats'}]}),
    ];
    const tasks = tasksAt(records, '2031-05-21T09:00', {profiles: new Map([['gnats', gnats]])});
    const water = tasks.filter(({task}) => task === 'change-water');
    expect(water.map(({rule, lots}) => [rule, lots])).toEqual([['change-water-culicidae', ['A', 'B']]]);
    expect(openTask(tasks, 'check-air')!.lots).toEqual(['A']);
  });

  it('mosquito pupae are moved on the day they are seen', () => {
    const gnats = profile('gnats', {order: 'Diptera', family: 'Culicidae'});
    const records = [
      sample,
      unit('T1', 'aquarium'),
      lot('B', 'T1', {larva: 50}, '2031-05-20T09:00', {candidates: [{profile: 'gnats'}]}),
      {record: 'count', lot: 'B', at: '2031-05-25T09:00', stages: {pupa: 6}, complete: false},
    ];
    const task = openTask(
      tasksAt(records, '2031-05-25T09:30', {profiles: new Map([['gnats', gnats]])}),
      'move-pupae',
    )!;
    expect([task.title, task.state, task.observe]).toEqual(['move 6 pupae', 'due', ['moved']]);
  });

  it('a water task is never asked of a cage, whatever a rule says', () => {
    const rule = {record: 'rule', code: 'wet', task: 'top-up', every: {days: 1}, at: '2031-01-01T00:00'};
    expect(kinds(rule, lot('A', 'C1', {larva: 2}, '2031-05-20T09:00'))).not.toContain('top-up');
  });

  it('a task of the room’s own is one of the lot where its rule names animals, else one of the unit', () => {
    const weigh = {
      record: 'rule',
      code: 'w',
      task: 'weigh',
      for: {stages: ['pupa']},
      every: {days: 7},
      at: '2031-01-01T00:00',
    };
    const glass = {
      record: 'rule',
      code: 'g',
      task: 'wipe the glass',
      for: {type: 'cage'},
      every: {days: 7},
      at: '2031-01-01T00:00',
    };
    const tasks = tasksAt(
      [...room, lot('B', 'C1', {pupa: 1}, '2031-05-20T09:00'), weigh, glass],
      '2031-05-21T09:00',
    );
    expect(openTask(tasks, 'weigh')!.lot).toBe('B');
    expect(openTask(tasks, 'wipe the glass')).toMatchObject({
      lot: null,
      unit: 'C1',
      lots: ['A', 'B'],
      title: 'wipe the glass',
    });
  });

  it('a unit without living lots has none', () => {
    expect(kinds()).toEqual([]);
  });
});

describe('why(task)', () => {
  const why = (records: Parameters<typeof tasksAt>[0], now: string) => feed(records, now)!.why();

  it('says when it was last done, how often it is wanted, and the limit', () => {
    const fed = [...room, everyTwo, care('feed', 'A', '2031-05-20T16:30')];
    expect(why(fed, '2031-05-22T09:00')).toBe('last fed Tue 16:30; every 2 days, never over 3 days');
    expect(why(fed, '2031-05-20T17:00')).toBe('last fed today 16:30; every 2 days, never over 3 days');
  });

  it('says so when it was not done yet', () => {
    expect(why([...room, everyTwo], '2031-05-21T09:00')).toMatch(
      /^not fed yet, since yesterday 10:00; every 2 days/,
    );
  });
});
