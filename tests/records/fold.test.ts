import {expect, test} from 'vitest';
import {fold} from '../../src/records/fold.ts';
import {at, day, daybook, lot, sample, unit} from './daybook-of.ts';

const room = [unit(), sample()];

test('a lot starts with the animals of its first record', () => {
  const {lots} = fold(daybook(...room, lot({'larva-4': 18, 'larva-5': 6})), at(1));
  expect(lots.get('A')).toMatchObject({sample: 'S1', alive: {'larva-4': 18, 'larva-5': 6}, exact: true});
});

test('a count changes the stages and never the number alive', () => {
  const entries = daybook(...room, lot({'larva-5': 24}), {
    record: 'count',
    lot: 'A',
    at: day(2),
    stages: {'larva-5': 15, pupa: 8},
  });
  expect(fold(entries, at(3)).lots.get('A')!.alive).toEqual({'larva-5': 16, pupa: 8});
});
