// How much a task takes: by number and stage, counted or not, each time or for the days to the next.
import {describe, expect, it} from 'vitest';
import {eachOf, quantityWords, rationFor} from '../../src/care/amounts.ts';
import {lot, openTask, profile, sample, tasksAt, unit} from './care-of.ts';

const began = '2031-05-01T09:00';
const rule = (amount: object, every: object = {days: 1}) => ({
  record: 'rule',
  at: '2031-05-01T00:00',
  code: 'own-feed',
  task: 'feed',
  for: {lot: 'A'},
  every,
  amount,
});
/** What the feeding of a lot takes. */
const fed = (
  stages: Record<string, number>,
  amount: object,
  {every, more}: {every?: object; more?: Record<string, unknown>} = {},
) =>
  openTask(
    tasksAt(
      [sample, unit('C1'), rule(amount, every), lot('A', 'C1', stages, began, more)],
      '2031-05-02T10:00',
    ),
    'feed',
  )!.amount;

const aphids = {each: {'larva-1': 5.5, 'larva-3': 23, 'larva-4': 46, larva: 24}, of: 'aphids'};

describe('eachOf(stage, each)', () => {
  it('is that of the stage, else of the last instar named before it, else of the kind', () => {
    const of = (stage: string) => eachOf(stage, aphids.each);
    expect([of('larva-1'), of('larva-2'), of('larva-3'), of('larva-6')]).toEqual([5.5, 5.5, 23, 46]);
    expect([of('larva'), of('nymph'), of('nymph-2')]).toEqual([24, undefined, undefined]);
    expect(eachOf('larva-1', {'larva-3': 7, larva: 2})).toBe(2);
  });
});

describe('amounts of food', () => {
  it('add up over the stages of a lot, and leave out who eats no longer', () => {
    expect(fed({'larva-3': 5, 'larva-4': 8}, aphids)).toBe('483 aphids');
    expect(fed({'larva-3': 5, 'larva-4': 8, prepupa: 9, pupa: 3}, aphids)).toBe('483 aphids');
    expect(fed({'larva-3': 1, prepupa: 12}, aphids)).toBe('23 aphids');
  });

  it('grow with the number alive', () => {
    const of = (count: number) => fed({'larva-2': count}, {each: 0.2, of: 'mg food'});
    expect([of(12), of(60), of(12_000)]).toEqual(['2.4 mg food', '12 mg food', '2.4 g food']);
  });

  it('for a day are given for all days to the next time, by warmth as at 20 °C', () => {
    const daily = {each: 0.12, of: 'mg food', per: 'day'};
    expect(fed({larva: 100}, daily, {every: {days: 2}})).toBe('24 mg food');
    expect(fed({larva: 100}, daily, {every: {days: 3}})).toBe('36 mg food');
    expect(fed({larva: 100}, daily, {every: {degreeDays: 24, lower: 8}})).toBe('24 mg food');
    expect(fed({larva: 100}, {...daily, per: undefined}, {every: {days: 3}})).toBe('12 mg food');
  });

  it('for a life say so, and what is given however many there are does not grow', () => {
    expect(fed({larva: 40}, {each: 1, of: 'g meat', per: 'life'})).toBe('40 g meat in all');
    expect(fed({larva: 40}, {whole: 10, of: 'mL medium'})).toBe('10 mL medium');
  });

  it('say where animals were estimated, where nobody counted, and where a stage has no figure', () => {
    expect(fed({'larva-1': 80}, aphids, {more: {counted: 'estimated'}})).toBe('about 440 aphids');
    const unknown = {more: {counted: 'unknown'}};
    expect(fed({larva: 50}, aphids, unknown)).toBe('at least 1200 aphids');
    expect(fed({larva: 0}, {each: 0.12, of: 'mg food', per: 'day'}, {...unknown, every: {days: 2}})).toBe(
      '0.24 mg food each',
    );
    expect(fed({larva: 0}, aphids, unknown)).toBeNull();
    expect(fed({'nymph-2': 4}, aphids)).toBeNull();
    const some = rationFor(
      {'larva-1': 2, nymph: 3},
      aphids,
      {days: 1},
      {counted: 'exact', material: undefined},
    );
    expect(some).toMatchObject({amount: 11, atLeast: true});
  });

  it('say when the stages were counted that they are for, where that is days ago', () => {
    const why = (now: string) =>
      openTask(
        tasksAt([sample, unit('C1'), rule(aphids), lot('A', 'C1', {'larva-1': 8}, began)], now),
        'feed',
      )!.why();
    expect(why('2031-05-05T10:00')).toContain('the amount is for the stages counted Thu 09:00');
    expect(why('2031-05-03T10:00')).not.toContain('counted');
  });

  it('of start values follow the group of the lot: noctuids leaf, ladybirds aphids, other caterpillars none', () => {
    const of = (order: string, family: string, stages: Record<string, number>) =>
      openTask(
        tasksAt(
          [sample, unit('C1'), lot('A', 'C1', stages, began, {candidates: [{profile: 'p', weight: 1}]})],
          '2031-05-02T10:00',
          {profiles: new Map([['p', profile('p', {order, family})]])},
        ),
        'feed',
      )!.amount;
    expect(of('Lepidoptera', 'Noctuidae', {'larva-4': 5, 'larva-5': 8})).toBe('91 cm² leaf');
    expect(of('Lepidoptera', 'Noctuidae', {'larva-2': 84})).toBe('76 cm² leaf');
    expect(of('Coleoptera', 'Coccinellidae', {'larva-4': 10})).toBe('460 aphids');
    expect(of('Lepidoptera', 'Pieridae', {'larva-4': 5})).toBeNull();
  });
});

describe('quantityWords(amount, of)', () => {
  it('tells thousands in the next unit of weight, and counts as they are', () => {
    expect(quantityWords(2400, 'mg food')).toBe('2.4 g food');
    expect(quantityWords(12_000_000, 'mg food')).toBe('12 kg food');
    expect(quantityWords(2400, 'aphids')).toBe('2400 aphids');
  });
});
