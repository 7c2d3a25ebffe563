// Care rules read, tried, changed and switched off from the command line.
import {describe, expect, it} from 'vitest';
import {newRoom, type RoomAt} from './program.ts';

const NOW = '2031-06-12T09:00';
function room(): RoomAt {
  const made = newRoom();
  const {status, err} = made.apply(NOW, [
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
    {record: 'sample', code: 'S1', collected: {from: '2031-05-30'}, method: 'search'},
    {record: 'lot', code: 'A', sample: 'S1', unit: 'C1', at: '2031-06-01T09:00', stages: {'larva-3': 8}},
    {record: 'care', task: 'feed', lot: 'A', at: '2031-06-01T10:00'},
    {record: 'care', task: 'feed', lot: 'A', at: '2031-06-06T09:00'},
  ]);
  if (status !== 0) throw new Error(err);
  return made;
}
interface Use {
  code: string;
  every: {days: number};
  off: boolean;
  origin: string;
  lots: string[];
}

describe('teneral rules and teneral rule', () => {
  it('tell which rules hold for a lot, and where their figures come from', () => {
    const uses = room().ask<Use[]>(NOW, 'rules', '--lot', 'A');
    const feed = uses.find(({code}) => code === 'feed-cage');
    expect(feed).toMatchObject({
      every: {days: 2},
      origin: 'start value',
      lots: ['A'],
      source: expect.any(String),
    });
  });

  it('try what a rule would have asked for, as it is and as it might be', () => {
    const here = room();
    const tried = (...more: string[]) =>
      here.ask<{trials: {asked: string[]; done: string[]; longestGapDays: number}[]}>(
        NOW,
        ...['rules', 'feed-cage', '--try', '--days', '10', ...more],
      ).trials;
    const [every2] = tried();
    expect(every2!.asked).toHaveLength(5);
    expect(every2!.done).toEqual(['2031-06-06T09:00:00+00:00']);
    expect(every2!.longestGapDays).toBe(6);
    expect(tried('--every', '5', '--latest', '6')[0]!.asked).toHaveLength(2);
  });

  it('change one figure of a rule, and keep the others', () => {
    const here = room();
    here.at(NOW, 'rule', 'feed-cage', '--every', '2.5');
    expect(here.ask<Use>(NOW, 'rules', 'feed-cage')).toMatchObject({
      ...{every: {days: 2.5}, latestDays: 3, task: 'feed', origin: 'start value, changed', lots: ['A']},
      observe: ['foodLeft', 'mould', 'alive'],
    });
  });

  it('switch a rule off, and on again as it was', () => {
    const here = room();
    const tasks = () => here.ask<{tasks: {task: string}[]}>(NOW, 'today').tasks.map(({task}) => task);
    expect(tasks()).toContain('feed');
    here.at(NOW, 'rule', 'feed-cage', '--off');
    expect(tasks()).not.toContain('feed');
    here.at(NOW, 'rule', 'feed-cage', '--on');
    expect(tasks()).toContain('feed');
  });

  it('refuse a code that is no rule, with what to do', () => {
    const here = room();
    expect(here.at(NOW, 'rules', 'feed-cag').err).toContain('Did you mean feed-cage?');
    expect(here.at(NOW, 'rule', 'brush', '--every', '2').err).toContain('there is no rule "brush" yet');
  });

  it('say how much, for each animal, by stage, for a day or however many there are, and no more', () => {
    const here = room();
    const amount = () => here.ask<{tasks: {amount: string | null}[]}>(NOW, 'today').tasks.at(0)?.amount;
    expect(amount()).toBeNull();
    here.at(NOW, 'rule', 'feed-cage', '--every', '2', '--amount', '1.5 leaves each a day');
    expect(amount()).toBe('24 leaves');
    here.at(NOW, 'rule', 'feed-cage', '--amount', 'larva-2 1, larva-4 9 aphids each');
    expect(here.ask<{amount: object}>(NOW, 'rules', 'feed-cage').amount).toEqual({
      each: {'larva-2': 1, 'larva-4': 9},
      of: 'aphids',
    });
    expect(amount()).toBe('8 aphids');
    expect(here.at(NOW, 'rules', 'feed-cage').out).toContain('larva-2 1, larva-4 9 aphids each');
    here.at(NOW, 'rule', 'feed-cage', '--amount', '10 mL medium');
    expect(amount()).toBe('10 mL medium');
    here.at(NOW, 'rule', 'feed-cage', '--amount', 'none');
    expect(amount()).toBeNull();
  });

  it('refuse an amount that cannot be read or cannot be, with how to write one', () => {
    const here = room();
    const refused = (words: string) => here.at(NOW, 'rule', 'feed-cage', '--amount', words);
    expect(refused('46').err).toContain('46 aphids each a day');
    expect(refused('300 %').err).toContain('at most 1');
    expect([refused('46').status, refused('300 %').status]).not.toContain(0);
  });
});
