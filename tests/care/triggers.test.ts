// What is needed once, when something has come true; amounts; and what an observation brings about. All rooms are
// invented; the figures are common practice, no source, where the rule names none.
import {describe, expect, it} from 'vitest';
import {alertsAt, at, care, lot, openTask, profile, sample, tasksAt, unit, wall} from './care-of.ts';

const room = [sample, unit('C1'), lot('A', 'C1', {'larva-5': 20}, '2031-05-01T09:00')];
const count = (day: string, stages: Record<string, number>) => ({
  record: 'count',
  lot: 'A',
  at: `2031-05-${day}T09:00`,
  stages,
});

describe('a trigger', () => {
  it('of a share pupated comes true with the count that reaches it, once', () => {
    const some = [...room, count('10', {'larva-5': 12, pupa: 8})];
    expect(openTask(tasksAt(some, '2031-05-12T09:00'), 'part-pupae')).toBeUndefined();
    const half = [...some, count('12', {'larva-5': 9, pupa: 11})];
    const task = openTask(tasksAt(half, '2031-05-12T10:00'), 'part-pupae')!;
    expect([wall(task.earliest), wall(task.target), wall(task.latest)]).toEqual([
      '2031-05-12T09:00',
      '2031-05-14T09:00',
      '2031-05-17T09:00',
    ]);
    expect(task.why()).toContain('50 % were counted as pupae');
    const parted = [...half, care('part-pupae', 'A', '2031-05-14T09:30')];
    expect(openTask(tasksAt(parted, '2031-05-15T09:00'), 'part-pupae')).toBeUndefined();
  });

  it('of adults expected readies the exit three days before one in twenty, and follows the forecast', () => {
    const outlook = (p05: string) => ({
      emergence: new Map([['A', {startChecking: at(p05), nextCheck: at(p05), p05: at(p05), p95: null}]]),
    });
    const task = (p05: string, now: string) => openTask(tasksAt(room, now, outlook(p05)), 'ready-exit');
    expect(wall(task('2031-05-20T12:00', '2031-05-10T09:00')!.earliest)).toBe('2031-05-17T12:00');
    expect(task('2031-05-20T12:00', '2031-05-10T09:00')!.state).toBe('early');
    expect(wall(task('2031-05-16T12:00', '2031-05-13T13:00')!.earliest)).toBe('2031-05-13T12:00');
    expect(task('2031-05-16T12:00', '2031-05-18T13:00')).toBeUndefined();
  });

  it('of hardened adults wants those that are kept collected, and again for those that come later', () => {
    const profiles = {
      profiles: new Map([['x', profile('x', {}, {adult: {hardenHours: 12, holdHours: 24}})]]),
    };
    const kept = [
      sample,
      unit('C1'),
      lot('A', 'C1', {pupa: 20}, '2031-05-01T09:00', {candidates: [{profile: 'x'}]}),
      {
        record: 'emergence',
        lot: 'A',
        at: '2031-05-10T08:00',
        adults: [{sex: 'female', count: 2}],
        fate: 'kept',
      },
    ];
    const collect = (records: typeof kept, now: string) =>
      openTask(tasksAt(records, now, profiles), 'collect');
    expect(wall(collect(kept, '2031-05-10T21:00')!.earliest)).toBe('2031-05-10T20:00');
    const done = [...kept, care('collect', 'A', '2031-05-11T09:00')];
    expect(collect(done, '2031-05-11T10:00')).toBeUndefined();
    const more = [
      ...done,
      {
        record: 'emergence',
        lot: 'A',
        at: '2031-05-12T08:00',
        adults: [{sex: 'male', count: 1}],
        fate: 'kept',
      },
    ];
    expect(wall(collect(more, '2031-05-12T21:00')!.earliest)).toBe('2031-05-12T20:00');
    const killed = kept.map(record => (record.record === 'emergence' ? {...record, fate: 'killed'} : record));
    expect(collect(killed, '2031-05-10T21:00')).toBeUndefined();
  });

  it('of a winter asks after twelve weeks in a cold unit whether to bring the lot out', () => {
    const cold = [
      sample,
      unit('E3', 'emergence-box', {setPoints: {constant: 4}}),
      lot('A', 'E3', {pupa: 20}, '2031-01-06T09:00'),
    ];
    const task = openTask(tasksAt(cold, '2031-03-31T10:00'), 'bring-out')!;
    expect(wall(task.earliest)).toBe('2031-03-31T10:00');
    const warm = [...cold.slice(0, 1), unit('E3', 'emergence-box', {setPoints: {constant: 20}}), cold[2]!];
    expect(openTask(tasksAt(warm, '2031-05-31T10:00'), 'bring-out')).toBeUndefined();
  });
});

describe('mould that was seen', () => {
  const seen = (mould: boolean, day: string) => ({
    record: 'care',
    task: 'inspect',
    unit: 'C1',
    at: `2031-05-${day}T09:00`,
    seen: {mould},
  });

  it('stops the moistening and wants another look, until a look says that it is gone', () => {
    const mouldy = [...room, seen(true, '05')];
    expect(openTask(tasksAt(room, '2031-05-05T10:00'), 'moisten')).toBeDefined();
    expect(openTask(tasksAt(mouldy, '2031-05-05T10:00'), 'moisten')).toBeUndefined();
    const again = openTask(tasksAt(mouldy, '2031-05-05T10:00'), 'look-at-mould')!;
    expect([wall(again.target), again.observe]).toEqual(['2031-05-06T09:00', ['mould']]);
    const gone = [...mouldy, {...seen(false, '06'), task: 'look-at-mould', lot: 'A'}];
    expect(openTask(tasksAt(gone, '2031-05-06T10:00'), 'look-at-mould')).toBeUndefined();
    expect(openTask(tasksAt(gone, '2031-05-06T10:00'), 'moisten')).toBeDefined();
  });
});

describe('amounts', () => {
  const water = (volume: object, more: object[] = []) =>
    openTask(
      tasksAt(
        [
          sample,
          unit('T1', 'aquarium', volume as Record<string, unknown>),
          lot('B', 'T1', {nymph: 6}, '2031-05-01T09:00'),
          ...(more as typeof room),
        ],
        '2031-05-08T09:00',
      ),
      'change-water',
    )!.amount;

  it('of water follow from the volume of the unit', () => {
    expect(water({volumeLitres: 12})).toBe('3 of 12 litres');
    expect(water({})).toBe('a quarter of the water');
  });

  it('of food follow from how many eat', () => {
    const rule = {
      record: 'rule',
      at: '2031-05-01T00:00',
      code: 'leaves',
      task: 'feed',
      for: {lot: 'A'},
      every: {days: 1},
      amount: {each: 0.5, of: 'leaves'},
    };
    const fed = (stages: Record<string, number>) =>
      openTask(tasksAt([...room, rule, count('02', stages)], '2031-05-02T10:00'), 'feed')!.amount;
    expect(fed({'larva-5': 20})).toBe('10 leaves');
    expect(fed({'larva-5': 8, prepupa: 12})).toBe('4 leaves');
  });
});

describe('what arrives and what runs out', () => {
  const ids = (records: typeof room, now: string) => alertsAt(records, now).map(({id}) => id);

  it('is said of a living field sample that is not sorted after a day, and not of a preserved one', () => {
    const came = {...sample, code: 'S2', at: '2031-05-01T09:00'};
    expect(ids([...room, came], '2031-05-03T09:00')).toContain('unsorted:S2');
    expect(ids([...room, {...came, medium: 'ethanol'}], '2031-05-03T09:00')).not.toContain('unsorted:S2');
  });

  it('is said of food whose stock is low, until a feeding says nothing of it', () => {
    const low = {record: 'care', task: 'feed', lot: 'A', at: '2031-05-02T09:00', seen: {foodStock: 'low'}};
    expect(ids([...room, low], '2031-05-02T10:00')).toContain('food:A:2031-05-02');
    expect(ids([...room, low, care('feed', 'A', '2031-05-03T09:00')], '2031-05-03T10:00')).not.toContain(
      'food:A:2031-05-02',
    );
    const skipped = {
      record: 'skip',
      task: 'feed',
      lot: 'A',
      at: '2031-05-02T09:00',
      why: 'no sallow leaves left',
    };
    expect(ids([...room, skipped], '2031-05-02T10:00')).toContain('food:A:2031-05-02');
  });
});
