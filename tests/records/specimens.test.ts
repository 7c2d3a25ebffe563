// Specimens: prepared, named with their doubt, and the lot's name following where a person says so.
import {expect, test} from 'vitest';
import {openEnds} from '../../src/records/open-ends.ts';
import {at, day, lot, sample, unit} from './daybook-of.ts';
import {given, NOW} from './daybook-spec.ts';

const reared = () =>
  given(unit(), sample(), lot({pupa: 9}, {taxon: 'Pieris sp.'}))
    .when(
      {
        record: 'emergence',
        lot: 'A',
        at: day(1),
        adults: [{sex: 'male', count: 1, fate: 'released'}, {count: 1}],
      },
      {
        record: 'parasitoid',
        lot: 'A',
        at: day(2),
        count: 7,
        together: true,
        hyper: true,
        outOf: 'Braconidae',
        hosts: 0,
      },
    )
    .thenHolds();
const named = {record: 'identification', specimen: 'A-2', taxon: 'Pieris rapae', at: day(3)};

test('every name is kept, and a doubt stands where taxonomists write it', () => {
  const {state} = reared().when(
    {...named, qualifier: 'cf.'},
    {...named, taxon: 'Pieridae', qualifier: '?', at: day(4)},
    {...named, at: day(5), by: 'B. Namer'},
  );
  const specimen = state.specimens.get('A-2')!;
  expect(specimen.taxon).toBe('Pieris rapae');
  expect(specimen.identifications).toHaveLength(3);
  expect(
    reared()
      .when({...named, qualifier: 'cf.'})
      .state.specimens.get('A-2')!.taxon,
  ).toBe('Pieris cf. rapae');
  expect(
    reared()
      .when({...named, qualifier: 'aff.', taxon: 'Pieris'})
      .state.specimens.get('A-2')!.taxon,
  ).toBe('aff. Pieris');
});

test('the lot is named after a specimen of it, never after a parasitoid, and also when it is closed', () => {
  const after = (specimen: string) => ({record: 'revision', lot: 'A', specimen, at: day(6)});
  reared()
    .when(after('A-p1'))
    .thenRefused(/is a parasitoid, and lot A is its hosts|has no name yet/);
  const closed = reared().when(named, {record: 'close', lot: 'A', at: day(5), reason: 'kept cold elsewhere'});
  expect(
    closed
      .when({...after('A-2'), taxon: 'Pieris rapae'})
      .thenHolds()
      .state.lots.get('A')!.taxon,
  ).toBe('Pieris rapae');
  const candidates = [{profile: 'pieris-rapae', weight: 1}];
  const {state} = reared()
    .when({record: 'revision', lot: 'A', candidates, at: day(6)})
    .thenHolds();
  expect(state.lots.get('A')!.candidates).toEqual(candidates);
});

test('a specimen is prepared after it was found, and not where it was released', () => {
  const prepared = {record: 'preparation', specimen: 'A-2', method: 'pinned', store: 'drawer 12', at: day(4)};
  expect(reared().when(prepared).thenHolds().state.specimens.get('A-2')!.preparations).toHaveLength(1);
  reared()
    .when({...prepared, at: day(0)})
    .thenRefused(/is before A-2 was found/);
  reared()
    .when({...prepared, killedAt: day(0)})
    .thenRefused(/which is not between the day it was found/);
  reared()
    .when({...prepared, specimen: 'A-1'})
    .thenRefused('A-1 was released');
});

test('a brood in one vial has one code and all its animals', () => {
  expect(reared().state.specimens.get('A-p1')).toMatchObject({
    individuals: 7,
    hyper: true,
    outOf: 'Braconidae',
  });
});

test('what replaces an entry names one that is void', () => {
  reared()
    .when({...named, replaces: 'e1'})
    .thenRefused('entry e1 still counts');
  reared()
    .when({...named, replaces: 'e99'})
    .thenRefused('there is no entry e99 to replace');
  reared()
    .when(named)
    .when({record: 'void', entry: 'e6'}, {...named, taxon: 'Pieris napi', replaces: 'e6'})
    .thenHolds();
});

test('what is not linked, labelled or identified is listed, the oldest first; after half a year it is overdue', () => {
  const {state} = reared().when(named);
  const open = openEnds(state, at(NOW)).map(({code, what}) => `${code} ${what}`);
  expect(open).toEqual([
    'A-1 unidentified',
    'A-2 unlabelled',
    'A-p1 unidentified',
    'A-p1 unlabelled',
    'S1 unlinked',
    'S1 unlinked',
  ]);
  const late = openEnds(state, at(200)).filter(({what}) => what === 'overdue');
  expect(late.map(({code, missing}) => `${code} ${missing}`)).toEqual([
    'A-1 not identified for 199 days',
    'A-p1 not identified for 198 days',
  ]);
});
