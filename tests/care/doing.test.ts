import {describe, expect, it} from 'vitest';
import {recordsOfDone, recordsOfSkip, stillToRecord} from '../../src/care/doing.ts';
import {Refusal} from '../../src/records/refusal.ts';
import {care, lot, openTask, sample, tasksAt, unit} from './care-of.ts';

const room = [
  sample,
  unit('C1'),
  unit('T1', 'aquarium'),
  lot('A', 'C1', {larva: 18}, '2031-05-01T09:00'),
  lot('B', 'T1', {pupa: 4}, '2031-05-01T09:00'),
];
const tasks = tasksAt(room, '2031-05-03T09:00');
const idOf = (task: string, of?: string) => openTask(tasks, task, of)!.id;
const refusal = (act: () => unknown): Refusal => {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal) return error;
  }
  throw new Error('not refused');
};

describe('recordsOfDone(tasks, ids, seen)', () => {
  it('makes a record of a lot’s task with what was seen', () => {
    expect(recordsOfDone(tasks, [idOf('feed')], ['foodLeft=none', 'mould=no', 'alive=18'])).toEqual([
      {record: 'care', unit: 'C1', lot: 'A', task: 'feed', seen: {foodLeft: 'none', mould: false, alive: 18}},
    ]);
  });

  it('makes a record of a unit’s task without a lot', () => {
    expect(recordsOfDone(tasks, [idOf('check-air')], ['bubbles=yes'])).toEqual([
      {record: 'care', unit: 'T1', task: 'check-air', seen: {bubbles: true}},
    ]);
  });

  it('refuses a bare tick and lists what must be said', () => {
    const {what, mend} = refusal(() => recordsOfDone(tasks, [idOf('feed')], ['mould=no']));
    expect(what).toBe('"feed 18 larvae" cannot be ticked off without saying what was seen: foodLeft, alive');
    expect(mend).toBe('Add --seen foodLeft=none|some|much --seen alive=NUMBER.');
  });

  it('gives each of several tasks the answers it asks for, and others to all', () => {
    const ids = [idOf('clean', 'C1'), idOf('moisten')];
    const records = recordsOfDone(tasks, ids, ['dead=2', 'frass=yes', 'escapes=no', 'condensation=no']);
    expect(records.map(record => ('seen' in record ? record.seen : undefined))).toEqual([
      {dead: 2, frass: true, escapes: false, condensation: false},
      undefined,
      {condensation: false},
    ]);
  });

  it('writes a check beside a look that found nobody, and none beside one that found adults, alive or dead', () => {
    const look = idOf('look', 'B');
    const kinds = (...seen: string[]) => recordsOfDone(tasks, [look], seen).map(({record}) => record);
    expect(kinds('adults=0', 'deadUnseen=0')).toEqual(['care', 'check']);
    expect(kinds('adults=2', 'deadUnseen=0')).toEqual(['care']);
    expect(kinds('adults=0', 'deadUnseen=1')).toEqual(['care']);
  });

  it('takes the dead off the lot where it is plain whose they are, and else says that it is not', () => {
    const clean = openTask(tasks, 'clean', 'C1')!;
    const seen = ['dead=2', 'frass=yes', 'escapes=no'];
    expect(recordsOfDone(tasks, [clean.id], seen)[1]).toEqual({
      record: 'loss',
      lot: 'A',
      stage: 'larva',
      count: 2,
      cause: 'dead',
    });
    expect(recordsOfDone(tasks, [clean.id], ['dead=0', ...seen.slice(1)])).toHaveLength(1);
    const mixed = tasksAt([...room, lot('C', 'C1', {larva: 3}, '2031-05-01T09:00')], '2031-05-03T09:00');
    const both = openTask(mixed, 'clean', 'C1')!;
    expect(recordsOfDone(mixed, [both.id], seen)).toHaveLength(1);
    expect(stillToRecord(both, {dead: 2})).toEqual([expect.stringContaining('not plain')]);
  });

  it('changes no numbers of adults by itself: it says what is still to be written down', () => {
    const look = openTask(tasks, 'look', 'B')!;
    expect(stillToRecord(look, {adults: 2})).toEqual(['record the 2 adults: teneral emerge B']);
    expect(stillToRecord(look, {adults: 0, deadUnseen: 0})).toEqual([]);
  });

  it('closes a lot by the record that closes it', () => {
    const emptied = [
      ...room,
      {record: 'loss', lot: 'A', at: '2031-05-02T10:00', count: 18, cause: 'escaped'},
    ];
    const all = tasksAt(emptied, '2031-05-03T09:00');
    expect(recordsOfDone(all, [openTask(all, 'close')!.id], [])).toEqual([
      {record: 'close', lot: 'A', reason: 'all accounted for'},
    ]);
  });

  it('refuses what is no task, what is done already, and nothing at all', () => {
    expect(refusal(() => recordsOfDone(tasks, ['feed-cage:A:2031-05-0'], [])).mend).toContain('Did you mean');
    expect(refusal(() => recordsOfDone(tasks, [], [])).what).toBe('no task is named');
    const fed = tasksAt([...room, care('feed', 'A', '2031-05-03T08:00')], '2031-05-03T09:00');
    const done = fed.find(({state}) => state === 'done')!;
    expect(refusal(() => recordsOfDone(fed, [done.id], [])).what).toBe(
      '"feed 18 larvae" is done already, by Ida',
    );
  });

  it('does a task named twice once', () => {
    expect(recordsOfDone(tasks, [idOf('moisten'), idOf('moisten')], [])).toHaveLength(1);
  });
});

describe('recordsOfSkip(tasks, ids, why)', () => {
  it('says why', () => {
    expect(recordsOfSkip(tasks, [idOf('feed')], ' no sallow left ')).toEqual([
      {record: 'skip', unit: 'C1', lot: 'A', task: 'feed', why: 'no sallow left'},
    ]);
  });

  it('is refused without a reason', () => {
    expect(refusal(() => recordsOfSkip(tasks, [idOf('feed')], undefined)).mend).toContain('--why');
  });
});

describe('an answer that something is amiss', () => {
  const check = openTask(tasks, 'check-air')!;

  it.each([
    [{bubbles: false}, 'give T1 air within the hour, then check it again'],
    [{scum: true}, 'change part of the water of T1'],
    [{escapes: true}, '--cause escaped'],
    [{foodLeft: 'much'}, 'take the leftovers out of T1'],
    [{coldC: 9}, 'T1 is warmer than a winter (7 °C)'],
    [{condensation: true}, 'wipe T1 dry'],
  ])('%o says what to do about it', (seen, said) => {
    expect(stillToRecord(check, seen)).toEqual([expect.stringContaining(said)]);
  });

  it('is none where all is well', () => {
    const well = {
      bubbles: true,
      scum: false,
      escapes: false,
      foodLeft: 'some',
      coldC: 4,
      condensation: false,
    };
    expect(stillToRecord(check, well)).toEqual([]);
  });
});
