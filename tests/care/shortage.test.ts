// A day with fewer minutes than its care takes. Husbandry as the rules of the room estimate it: common practice, no source.
import {describe, expect, it} from 'vitest';
import {type Shortage, shortages} from '../../src/care/shortage.ts';
import type {Standing} from '../../src/care/task.ts';
import {at, wall} from './care-of.ts';

const NOW = at('2031-05-20T09:00');
const NEXT = at('2031-05-21T09:00');
const standing = (id: string, harm: Standing['harm'], latest: string, minutes: number): Standing => ({
  id,
  task: 'feed',
  unit: id,
  place: 'rack A',
  since: at('2031-05-18T09:00'),
  earliest: at('2031-05-19T09:00'),
  target: at('2031-05-20T09:00'),
  latest: at(latest),
  planned: NOW,
  state: 'due',
  harm,
  minutes,
});
const tasks = [
  standing('low-urgent', 'low', '2031-05-20T20:00', 10),
  standing('high-late', 'high', '2031-05-23T09:00', 10),
  standing('medium-soon', 'medium', '2031-05-22T09:00', 10),
  standing('medium-later', 'medium', '2031-05-24T09:00', 10),
  standing('low', 'low', '2031-05-25T09:00', 2),
];
const short = (minutes: number | undefined, list = tasks): Shortage[] =>
  shortages(list, () => 'Ida', [{name: 'Ida', minutes}], NOW, NEXT);

describe('shortages(tasks)', () => {
  it('puts below the line what can wait and does least harm, with until when it is safe', () => {
    const [shortage] = short(25);
    expect(shortage).toMatchObject({who: 'Ida', minutes: 25, needed: 42});
    expect(shortage!.below.map(({id, safeUntil}) => [id, wall(safeUntil)])).toEqual([
      ['medium-soon', '2031-05-22T09:00'],
      ['medium-later', '2031-05-24T09:00'],
    ]);
  });

  it('keeps above the line first what passes its limit before the next round', () => {
    const [shortage] = short(10);
    expect(shortage!.below.map(({id}) => id)).toEqual(['high-late', 'medium-soon', 'medium-later', 'low']);
  });

  it('says of what has passed its limit that nothing makes it safe', () => {
    const late = [{...standing('late', 'high', '2031-05-20T08:00', 30), state: 'overdue' as const}];
    expect(short(20, late)[0]!.below).toEqual([{id: 'late', safeUntil: null}]);
  });

  it('is none where everything fits, where no minutes are known, and for what could not be done', () => {
    expect(short(42)).toEqual([]);
    expect(short(undefined)).toEqual([]);
    const skipped = tasks.map(task => ({...task, skipped: {at: NOW, by: 'Ida', why: 'locked'}}));
    expect(short(1, skipped)).toEqual([]);
  });
});
