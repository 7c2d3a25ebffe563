// How long an adult may wait unseen, as the forecast, the care list and "can it wait?" have it: the same for all three.
// Everything is invented.
import {describe, expect, it} from 'vitest';
import {newRoom} from '../commands/program.ts';
import {applied, kind, pupae, said, sample} from '../stories/story-room.ts';

interface Looked {
  readonly nextCheck: string;
  readonly startChecking: string;
}
interface Task {
  readonly task: string;
  readonly state: string;
  readonly target: string;
  readonly why: string;
}
interface Waiting {
  readonly emergence: readonly {readonly holdHours: number}[];
}

const BEGUN = '2031-03-03T12:00';
/** Adults come out now. */
const LOOKED = '2031-03-24T08:20';
const NOW = '2031-03-24T09:00';
const hours = ['08:00-17:00'];

/** A room whose kind bears so many hours, with a rule of its own or none. */
function looking(kindHours: number, own?: {readonly days: number; readonly for: object}) {
  const room = newRoom();
  applied(room, LOOKED, [
    {
      ...{record: 'calendar', at: BEGUN},
      open: Object.fromEntries(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'].map(day => [day, hours])),
    },
    kind({lower: 10, degreeDays: 250, cv: 0.08}, {adult: {holdHours: kindHours, source: 'a'}}),
    sample('S1', '2031-02-20'),
    {record: 'unit', code: 'C2', type: 'emergence-box', place: 'rack B/2', setPoints: {constant: 22}},
    pupae('A', 'S1', 'C2', BEGUN, 38),
    ...(own === undefined
      ? []
      : [{record: 'rule', code: 'own', task: 'look', for: own.for, every: {days: own.days}, at: BEGUN}]),
    {record: 'check', lot: 'A', found: 0, at: LOOKED},
  ]);
  const [forecast] = room.ask<Looked[]>(NOW, 'forecast', 'A');
  const {tasks} = room.ask<{tasks: Task[]}>(NOW, 'today', '--on', forecast!.nextCheck.slice(0, 10));
  const wait = room.ask<Waiting>(NOW, 'wait', 'A', '--until', '2031-03-29');
  return {
    nextCheck: forecast!.nextCheck.slice(0, 16),
    listed: tasks.findLast(({task, state}) => task === 'look' && state !== 'done')!.target.slice(0, 16),
    holdHours: wait.emergence[0]!.holdHours,
    words: said(room, NOW, 'wait', 'A', '--until', '2031-03-29'),
  };
}

describe('the forecast, the care list and wait agree on how long an adult may wait', () => {
  it.each([
    // A day after the round of that look.
    [24, undefined, '2031-03-25T08:00', 24],
    // Shorter than to the next round: once more before the room closes.
    [12, undefined, '2031-03-24T16:30', 12],
    [24, 0.25, '2031-03-24T14:20', 6],
    [12, 1, '2031-03-25T08:00', 24],
    // Longer than the kind bears: the room's own rule holds.
    [24, 2, '2031-03-26T08:00', 48],
  ] as const)('of a kind that bears %s h, with a rule of %s days', (kindHours, days, next, holdHours) => {
    const own = days === undefined ? undefined : {days, for: {lot: 'A'}};
    const answers = looking(kindHours, own);
    expect(answers.nextCheck).toBe(next);
    expect(answers.listed).toBe(next);
    expect(answers.holdHours).toBe(holdHours);
    expect(answers.words).toContain(`over ${holdHours} hours`);
  });

  it('by a rule for the type of unit, for its unit and for its kind as well as for the lot', () => {
    for (const whom of [{type: 'emergence-box'}, {unit: 'C2'}, {profile: 'kind'}]) {
      const {nextCheck, listed, holdHours} = looking(24, {days: 0.25, for: whom});
      expect([nextCheck, listed, holdHours]).toEqual(['2031-03-24T14:20', '2031-03-24T14:20', 6]);
    }
    const {nextCheck, listed, holdHours} = looking(24, {days: 0.25, for: {type: 'aquarium'}});
    expect([nextCheck, listed, holdHours]).toEqual(['2031-03-25T08:00', '2031-03-25T08:00', 24]);
  });
});
