// What is asked about before it is written down, and what gives way.
import {expect, test} from 'vitest';
import {doubtsAbout} from '../../src/records/doubts.ts';
import type {Entry} from '../../src/records/entry.ts';
import {unitTypeFor} from '../../src/records/housing.ts';
import {kinOf} from '../../src/records/orders.ts';
import {waitedHours} from '../../src/records/standing.ts';
import {batch, day, greenwich, lot, sample, unit, type Written} from './daybook-of.ts';
import {given} from './daybook-spec.ts';

const HARDEN_HOURS = 12;

function doubtsIn(room: ReturnType<typeof given>, ...written: readonly Written[]): string[] {
  const additions: readonly Entry[] = batch('new', ...written);
  const doubts = doubtsAbout(
    room.state,
    additions,
    () => HARDEN_HOURS,
    () => [],
    kinOf,
  );
  return [...doubts.values()].map(({what}) => what);
}

const pupae = () => given(unit(), sample(), lot({pupa: 3, 'larva-5': 9}));
const adults = (count: number, at: string): Written => ({
  record: 'emergence',
  lot: 'A',
  at,
  adults: [{count}],
});

test('more adults than pupae at a count of less than a day ago are asked about, with the sum', () => {
  expect(doubtsIn(pupae(), adults(5, day(0, '15:00')))).toEqual([
    '5 adults in all since the count of less than a day ago, which found 3 pupae and 9 larvae of the fifth instar',
  ]);
  expect(doubtsIn(pupae(), adults(2, day(0, '12:00')), adults(2, day(0, '15:00')))).toHaveLength(1);
  expect(doubtsIn(pupae(), adults(3, day(0, '15:00')))).toEqual([]);
  expect(doubtsIn(pupae(), adults(5, day(1, '15:00')))).toEqual([]);
});

test('lots in which nobody looked for pupae yet are not asked about', () => {
  expect(doubtsIn(given(unit(), sample(), lot({larva: 9})), adults(5, day(0, '15:00')))).toEqual([]);
});

test('an adult killed before it is hard is asked about', () => {
  const room = pupae()
    .when(adults(1, day(2)))
    .thenHolds();
  const killed = (killedAt: string) => ({record: 'preparation', specimen: 'A-1', killedAt, at: day(4)});
  expect(doubtsIn(room, killed(day(2, '11:00')))).toEqual([
    'A-1 was killed 2 h after it was found, and adults of this kind need 12 h to harden',
  ]);
  expect(doubtsIn(room, killed(day(3)))).toEqual([]);
});

test('an adult of the lot that is named as a parasitoid is asked about; a parasitoid is not', () => {
  const room = pupae()
    .when(adults(1, day(2)), {record: 'parasitoid', lot: 'A', at: day(2), count: 1})
    .thenHolds();
  const named = (specimen: string) => ({record: 'identification', specimen, taxon: 'Braconidae', at: day(3)});
  expect(doubtsIn(room, named('A-1'))).toEqual([
    'Braconidae are parasitoids, and A-1 is recorded as an adult of lot A itself',
  ]);
  expect(doubtsIn(room, named('A-p1'))).toEqual([]);
});

test('animals that waited over a day in a live trap are marked; baits that kill and bands are not', () => {
  const trap = {
    method: 'pitfall',
    medium: 'none',
    collected: {from: '2031-05-01', to: '2031-05-06'},
  } as const;
  expect(waitedHours(trap, greenwich)).toBe(120);
  expect(waitedHours({...trap, trap: {lastEmptied: '2031-05-05'}}, greenwich)).toBeUndefined();
  expect(waitedHours({...trap, trap: {lastEmptied: '2031-05-04T20:00:00Z'}}, greenwich)).toBe(40);
  expect(waitedHours({...trap, medium: 'glycol'}, greenwich)).toBeUndefined();
  expect(waitedHours({...trap, method: 'band'}, greenwich)).toBeUndefined();
  expect(waitedHours({...trap, method: 'search'}, greenwich)).toBeUndefined();
});

test('what lives in water is offered an aquarium, what is hidden an emergence box, the rest a cage', () => {
  const taxon = (name: string) => ({taxon: name, material: undefined});
  expect(unitTypeFor({method: 'search'}, taxon('Culicidae'))).toBe('aquarium');
  expect(unitTypeFor({method: 'light'}, taxon('Ephemeroptera'))).toBe('aquarium');
  expect(unitTypeFor({method: 'kick-net'}, undefined)).toBe('aquarium');
  expect(unitTypeFor({method: 'wood'}, undefined)).toBe('emergence-box');
  const galls = {taxon: undefined, material: {what: 'galls', amount: 4, unit: 'pieces'}};
  expect(unitTypeFor({method: 'search'}, galls)).toBe('emergence-box');
  expect(unitTypeFor({method: 'beating'}, taxon('Pieris sp.'))).toBe('cage');
});
