import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {civil} from '../../src/exchange/civil.ts';
import {inZone, readDay, readInstant} from '../../src/exchange/instants.ts';
import {Refusal} from '../../src/records/refusal.ts';
import type {RoomRecord} from '../../src/records/schema/index.ts';

const amsterdam = civil('Europe/Amsterdam');
const iso = (text: string, now?: string) => {
  const at = readInstant(text, amsterdam, now === undefined ? undefined : Date.parse(now));
  return at === undefined ? undefined : amsterdam.iso(at);
};

describe('readInstant', () => {
  it.each([
    ['2026-05-30T09:00', '2026-05-30T09:00:00+02:00'],
    ['2026-05-30 09:00:30', '2026-05-30T09:00:30+02:00'],
    ['2026-01-30T09:00', '2026-01-30T09:00:00+01:00'],
    ['2026-05-30', '2026-05-30T00:00:00+02:00'],
    ['2026-05-30T09:00Z', '2026-05-30T11:00:00+02:00'],
    ['2026-05-30T09:00:00.5+0530', '2026-05-30T05:30:00.500+02:00'],
    ['2026-05-30T09:00:00-04:00', '2026-05-30T15:00:00+02:00'],
    ['  2026-05-30T09:00 ', '2026-05-30T09:00:00+02:00'],
  ])('%s in Amsterdam is %s', (text, expected) => {
    expect(iso(text)).toBe(expected);
  });

  it.each([
    '',
    'soon',
    '2026-02-30',
    '2026-13-01',
    '2026-02-29T10:00',
    '2026-05-30T24:00',
    '2026-05-30T09:60',
    '2026-05-30T09:00:60',
    '2026-05-30T09:00+24:00',
    '30-05-2026',
    '2026-05-30T9:00',
  ])('"%s" is none', text => {
    expect(iso(text, '2026-06-12T16:00:00+02:00')).toBeUndefined();
  });

  it('reads back what civil.iso writes', () => {
    fc.assert(
      fc.property(fc.integer({min: 0, max: 4e12}), at => {
        expect(readInstant(amsterdam.iso(at), amsterdam)).toBe(at);
      }),
    );
  });

  const now = '2026-06-12T16:00:00+02:00';
  it.each([
    ['now', '2026-06-12T16:00:00+02:00'],
    ['today', '2026-06-12T00:00:00+02:00'],
    ['yesterday', '2026-06-11T00:00:00+02:00'],
    ['08:40', '2026-06-12T08:40:00+02:00'],
    ['8:40', '2026-06-12T08:40:00+02:00'],
    ['today 8:40', '2026-06-12T08:40:00+02:00'],
    ['Yesterday 17:00', '2026-06-11T17:00:00+02:00'],
  ])('where now is known, "%s" is %s', (text, expected) => {
    expect(iso(text, now)).toBe(expected);
  });

  it('where now is not known, "yesterday 17:00" is none', () => {
    expect(iso('yesterday 17:00')).toBeUndefined();
  });

  it('"25:00" is no time of day', () => {
    expect(iso('25:00', now)).toBeUndefined();
  });
});

describe('readDay', () => {
  it('reads days of the calendar only', () => {
    expect(readDay('2028-02-29')).toBe('2028-02-29');
    expect(readDay('2026-02-29')).toBeUndefined();
    expect(readDay('2026-05-30T00:00')).toBeUndefined();
  });
});

describe('inZone', () => {
  it('writes at and recordedAt with the offset of the zone', () => {
    const record: RoomRecord = {
      record: 'check',
      lot: 'A',
      found: 0,
      at: '2026-05-30T09:00',
      recordedAt: '2026-05-30T09:00Z',
    };
    expect(inZone(Object.freeze(record), amsterdam)).toEqual({
      ...record,
      at: '2026-05-30T09:00:00+02:00',
      recordedAt: '2026-05-30T11:00:00+02:00',
    });
  });

  it('writes from and to of extremes and masks, and since', () => {
    const span = {from: '2026-05-29', to: '2026-05-30 08:00'};
    const written = {from: '2026-05-29T00:00:00+02:00', to: '2026-05-30T08:00:00+02:00'};
    expect(
      inZone({record: 'extremes', logger: 'L', minimum: 1, maximum: 2, ...span}, amsterdam),
    ).toMatchObject(written);
    expect(inZone({record: 'mask', logger: 'L', why: 'sun', lift: false, ...span}, amsterdam)).toMatchObject(
      written,
    );
    expect(
      inZone({record: 'parasitoid', lot: 'A', count: 1, hosts: 1, since: '2026-05-29'}, amsterdam),
    ).toMatchObject({since: '2026-05-29T00:00:00+02:00'});
  });

  it('leaves days as days: of a calendar, of an identification, of collecting', () => {
    const closed: RoomRecord = {record: 'calendar', closed: [{from: '2026-12-24', to: '2026-12-26'}]};
    expect(inZone(closed, amsterdam)).toEqual(closed);
    const identification: RoomRecord = {
      record: 'identification',
      specimen: 'A-1',
      taxon: 'Pieris',
      on: '2026-07-01',
    };
    expect(inZone(identification, amsterdam)).toEqual(identification);
  });

  it('a sample’s collecting keeps a day and gives an instant its offset', () => {
    const sample: RoomRecord = {
      record: 'sample',
      code: 'S',
      method: 'light',
      medium: 'none',
      collected: {from: '2026-05-30', to: '2026-05-31T05:10'},
    };
    expect(inZone(sample, amsterdam)).toMatchObject({
      collected: {from: '2026-05-30', to: '2026-05-31T05:10:00+02:00'},
    });
  });

  it('a lot’s origin, also called "from", is no instant', () => {
    const lot: RoomRecord = {
      record: 'lot',
      code: 'B',
      from: {lot: 'A'},
      unit: 'C1',
      stages: {egg: 3},
      progress: [0, 1],
      ages: 'mixed',
      counted: 'exact',
      candidates: [],
    };
    expect(inZone(lot, amsterdam)).toEqual(lot);
  });

  it('refuses a day that does not exist, naming record and field', () => {
    const count: RoomRecord = {record: 'count', lot: 'A', stages: {egg: 1}, at: '2026-02-30T10:00'};
    expect(() => inZone(count, amsterdam, 'records.json, record 2')).toThrow(Refusal);
    expect(() => inZone(count, amsterdam, 'records.json, record 2')).toThrow(
      'records.json, record 2, at: "2026-02-30T10:00" is no instant',
    );
    const sample: RoomRecord = {
      record: 'sample',
      code: 'S',
      method: 'light',
      medium: 'none',
      collected: {from: '2026-02-30'},
    };
    expect(() => inZone(sample, amsterdam)).toThrow('collected.from: "2026-02-30" is no instant');
  });
});
