import {expect, test} from 'vitest';
import {complete} from '../../src/records/complete.ts';
import {fold} from '../../src/records/fold.ts';
import {nearest} from '../../src/records/nearest.ts';
import type {Profile} from '../../src/records/schema/index.ts';
import {at, day, daybook, lot, recordOf, sample, unit, type Written} from './daybook-of.ts';

const candidates = [
  {profile: 'bug', weight: 2},
  {profile: 'moth', weight: 1},
];
const before = fold(daybook(unit(), sample(), lot({egg: 9}, {candidates})), at(5));

const stageOf = (stage: string) => ({
  stage,
  rate: {kind: 'degree-day', lower: 10, degreeDays: 50},
  cv: 0.1,
  source: 'a',
});

const bug = recordOf({
  record: 'profile',
  profile: 'bug',
  name: 'Bug',
  rank: 'species',
  stages: [stageOf('egg'), stageOf('nymph-1')],
  sources: [{id: 'a', citation: 'Invented for this test', provenance: 'common-practice'}],
}) as Profile;

const completed = (...written: readonly Written[]) =>
  complete(written.map(recordOf), {now: day(5), before, profiles: new Map([['bug', bug]])});

test('a record without "at" happens now', () => {
  expect(completed({record: 'check', lot: 'A'}, {record: 'check', lot: 'A', at: day(1)})).toMatchObject([
    {at: day(5)},
    {at: day(1)},
  ]);
});

test('the first record of a sample, unit or logger holds from the beginning, a change of it from now', () => {
  const logger = {record: 'logger', code: 'C1', kind: 'hand'};
  const [first, again, known, brought] = completed(logger, logger, unit(), sample('S2'));
  expect([first, brought].map(record => record && 'at' in record && record.at)).toEqual([false, false]);
  expect([again, known]).toMatchObject([{at: day(5)}, {at: day(5)}]);
});

test('so it is with a profile, a rule, a person, the calendar and a setting', () => {
  const [profile, rule, person, calendar, setting, ...again] = completed(
    ...[...Array(2)].flatMap(() => [
      bug as Written,
      {record: 'rule', code: 'r', task: 'feed', every: {days: 2}},
      {record: 'person', name: 'Ines'},
      {record: 'calendar', open: {mon: ['08:00-17:00']}},
      {record: 'setting', finishedLots: 'used'},
    ]),
  );
  for (const first of [profile, rule, person, calendar, setting]) expect(first).not.toHaveProperty('at');
  for (const later of again) expect(later).toMatchObject({at: day(5)});
});

test('specimens get the next free codes of their lot, over the whole batch', () => {
  const adults = {record: 'emergence', lot: 'A', adults: [{count: 2}]};
  const records = completed(
    adults,
    {...adults, codes: ['A-3', 'x']},
    adults,
    {record: 'parasitoid', lot: 'A', count: 2},
    {record: 'voucher', lot: 'A', count: 2, specimen: 'A-v7'},
  );
  expect(records.map(record => 'codes' in record && record.codes)).toEqual([
    ['A-1', 'A-2'],
    ['A-3', 'x'],
    ['A-4', 'A-5'],
    ['A-p1', 'A-p2'],
    ['A-v7', 'A-v1'],
  ]);
});

test('what hatches is in the first stage after the egg of the likeliest candidate', () => {
  const [hatch, said] = completed(
    {record: 'hatch', lot: 'A', count: 3},
    {record: 'hatch', lot: 'A', count: 3, stage: 'nymph-2'},
  );
  expect([hatch, said]).toMatchObject([{stage: 'nymph-1'}, {stage: 'nymph-2'}]);
});

test('nearest() finds a word at most two edits away, upper and lower case alike', () => {
  const known = ['26-031-A', '26-031-B', '26-044-A', 'C3'];
  expect(nearest('26-013-A', known)).toBe('26-031-A');
  expect(nearest('26-044', known)).toBe('26-044-A');
  expect(nearest('c3', known)).toBe('C3');
  expect(nearest('unlike', known)).toBeUndefined();
  expect(nearest('X', ['Y'])).toBeUndefined();
  expect(nearest('C3', [])).toBeUndefined();
});
