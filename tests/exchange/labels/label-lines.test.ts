// What stands on labels, by published collecting manuals; each check names its source.
import {describe, expect, it} from 'vitest';
import {labelDay, labelSpan} from '../../../src/exchange/labels/label-dates.ts';
import {labelsOf} from '../../../src/exchange/labels/specimen-labels.ts';
import {fold} from '../../../src/records/fold.ts';
import {day, daybook, greenwich, lot, unit, type Written} from '../../records/daybook-of.ts';

const field: Written = {
  record: 'sample',
  code: 'S1',
  collected: {from: '2031-04-29', to: '2031-04-30'},
  method: 'yellow-pan',
  place: {
    country: 'Varenland',
    region: 'Low Coast',
    locality: 'Skarrow',
    latitude: 46.2,
    longitude: -21.40113,
    uncertaintyM: 20,
    elevationM: 310,
  },
  host: 'Salix caprea',
  collectors: ['M. Tovan', 'A. Querry'],
};

function labelsFor(code: string, ...more: readonly Written[]): Record<string, readonly string[]> {
  const state = fold(daybook(unit(), field, ...more), Number.POSITIVE_INFINITY);
  const labels = labelsOf(state.specimens.get(code)!, state, greenwich);
  return Object.fromEntries(labels.map(({kind, lines}) => [kind, lines]));
}

const adults = (more: Written = {}): Written => ({
  record: 'emergence',
  lot: 'A',
  since: day(9),
  at: day(11),
  adults: [{sex: 'female', count: 1}],
  ...more,
});

describe('dates on labels', () => {
  it('have full stops and roman months (Wheeler, Huber & Currie 2001; Purdue Extension 401)', () => {
    expect(labelDay('2026-05-25')).toBe('25.v.2026');
    expect(labelDay('2000-12-01')).toBe('1.xii.2000');
  });

  it('give an interval as the reared parasitoid label of La Salle, CSIRO: em. 25.iv-6.v.2000', () => {
    expect(labelSpan('2000-04-25', '2000-05-06')).toBe('25.iv-6.v.2000');
    expect(labelSpan('2000-05-25', '2000-05-27')).toBe('25-27.v.2000');
    expect(labelSpan('1999-12-30', '2000-01-02')).toBe('30.xii.1999-2.i.2000');
    expect(labelSpan('2000-05-25', '2000-05-25')).toBe('25.v.2000');
  });
});

describe('the data label', () => {
  it('goes from COUNTRY, region over locality and "coll." date to the collectors (La Salle, CSIRO; MEM 2016-01)', () => {
    expect(labelsFor('A-1', lot({larva: 3}), adults()).data).toEqual([
      'VARENLAND, Low Coast',
      'Skarrow',
      '46.20000°N 21.40113°W ±20 m, alt. 310 m',
      'coll. 29-30.iv.2031, yellow pan',
      'leg. M. Tovan and A. Querry',
    ]);
  });

  it('gives three decimals of a degree at least (Wheeler, Huber & Currie 2001)', () => {
    const state = fold(
      daybook(unit(), {...field, place: {latitude: 46.2, longitude: 8}}, lot({larva: 3}), adults()),
      Number.POSITIVE_INFINITY,
    );
    const [data] = labelsOf(state.specimens.get('A-1')!, state, greenwich);
    expect(data!.lines[0]).toBe('46.200°N 8.000°E');
  });
});

describe('the rearing label', () => {
  it('tells stage, plant, sex and the interval of emergence, never the day of collecting as that of emergence', () => {
    const {rearing, data} = labelsFor('A-1', lot({'larva-4': 2, 'larva-5': 1}), adults());
    expect(rearing).toEqual(['ex larva on Salix caprea', '♀ em. 10-12.v.2031', 'lot A']);
    expect(data!.join()).not.toContain('em.');
  });

  it('of a parasitoid says "ex" its host, "on" its plant, "em." (La Salle, CSIRO)', () => {
    const parasitoid = {
      record: 'parasitoid',
      lot: 'A',
      taxon: 'Braconidae',
      count: 1,
      hostStage: 'larva',
      since: day(9),
      at: day(11),
    };
    expect(labelsFor('A-p1', lot({larva: 3}, {taxon: 'Pieris sp.'}), parasitoid).rearing).toEqual([
      'ex larva of Pieris sp.',
      'on Salix caprea',
      'em. 10-12.v.2031',
      'lot A',
    ]);
  });

  it('says ex ovo of what hatched here, ex galls of what was hidden, and follows a lot that was split off', () => {
    const eggs = {
      record: 'lot',
      code: 'B',
      from: {specimen: 'A-1'},
      unit: 'C1',
      stages: {egg: 4},
      at: day(12),
    };
    const ofEggs = adults({lot: 'B', since: day(30), at: day(31)});
    expect(labelsFor('B-1', lot({larva: 3}), adults(), eggs, ofEggs).rearing![0]).toBe(
      'ex ovo on Salix caprea',
    );
    const galls = {
      record: 'lot',
      code: 'A',
      sample: 'S1',
      unit: 'C1',
      at: day(0),
      material: {what: 'galls', amount: 4, unit: 'pieces'},
    };
    expect(labelsFor('A-1', galls, adults()).rearing![0]).toBe('ex galls on Salix caprea');
    const split = {record: 'split', lot: 'A', into: 'B', stages: {pupa: 1}, at: day(5)};
    const count = {record: 'count', lot: 'A', stages: {pupa: 3}, at: day(4)};
    expect(labelsFor('B-1', lot({larva: 3}), count, split, adults({lot: 'B'})).rearing![0]).toBe(
      'ex larva on Salix caprea',
    );
  });
});

describe('the other labels', () => {
  it('stand in their order; the name comes once somebody gave it, with its doubt, "det." and the year', () => {
    const named = {
      record: 'identification',
      specimen: 'A-1',
      taxon: 'Pieris rapae',
      qualifier: 'cf.',
      by: 'B. Namer',
      on: '2031-06-01',
      at: day(31),
    };
    const labels = labelsFor('A-1', lot({larva: 3}), adults(), named);
    expect(Object.keys(labels)).toEqual(['data', 'rearing', 'determination', 'code']);
    expect(labels.determination).toEqual(['Pieris cf. rapae', 'det. B. Namer 2031']);
    expect(labels.code).toEqual(['A-1']);
    expect(Object.keys(labelsFor('A-1', lot({larva: 3}), adults()))).toEqual(['data', 'rearing', 'code']);
  });

  it('for a specimen in fluid are one inside the vial with everything (Schauff, USDA, 5.8), and one for its exuviae', () => {
    const fluid = {
      record: 'preparation',
      specimen: 'A-1',
      method: 'fluid',
      medium: 'ethanol 80 %',
      at: day(12),
    };
    const labels = labelsFor('A-1', lot({larva: 3}), adults({exuviae: {code: 'A-x1'}}), fluid);
    expect(Object.keys(labels)).toEqual(['vial', 'exuviae']);
    expect(labels.vial).toEqual(
      expect.arrayContaining(['A-1', 'VARENLAND, Low Coast', 'lot A', '♀ em. 10-12.v.2031']),
    );
    expect(labels.exuviae!.slice(0, 2)).toEqual(['A-x1', 'exuviae of A-1']);
  });
});
