import fc from 'fast-check';
import {DateTime} from 'luxon';
import {describe, expect, it} from 'vitest';
import {civil} from '../../src/exchange/civil.ts';
import {clockChanges, rememberClock, zoneNamed} from '../../src/exchange/zone.ts';
import {Refusal} from '../../src/records/refusal.ts';

const zones = [
  'UTC',
  'Europe/Amsterdam',
  'America/New_York',
  'America/St_Johns',
  'Asia/Kathmandu',
  'Australia/Lord_Howe',
  'Pacific/Apia',
  'Pacific/Chatham',
  'Africa/Casablanca',
];
const zone = fc.constantFrom(...zones);
/** 1971 to 2035. */
const instant = fc.integer({min: 31_536_000, max: 2_051_222_400}).map(seconds => seconds * 1000);

describe('civil(zone)', () => {
  it('refuses an unknown zone and names some that exist', () => {
    expect(() => civil('Mars/Base')).toThrow(Refusal);
    expect(() => civil('Mars/Base', '--zone')).toThrow(
      '--zone: there is no time zone "Mars/Base". Name it as the IANA list does, such as Europe/Amsterdam',
    );
    expect(() => civil('')).toThrow(Refusal);
  });

  it('dayOf, weekdayOf and iso agree with luxon at any instant of any zone', () => {
    fc.assert(
      fc.property(zone, instant, (name, at) => {
        const clock = civil(name);
        const expected = DateTime.fromMillis(at, {zone: name});
        expect(clock.dayOf(at)).toBe(expected.toISODate());
        expect(clock.iso(at)).toBe(expected.toISO({suppressMilliseconds: true})?.replace('Z', '+00:00'));
        expect(clock.weekdayOf(clock.dayOf(at))).toBe(expected.weekdayShort?.toLowerCase());
      }),
      {numRuns: 500},
    );
  });

  it('at(day, time) is the first instant at which the clocks show it, whatever the zone', () => {
    fc.assert(
      fc.property(zone, instant, (name, any) => {
        const clock = civil(name);
        const minute = Math.floor(any / 60_000) * 60_000;
        const shown = clock.iso(minute).slice(0, 16);
        const at = clock.at(clock.dayOf(minute), shown.slice(11));
        expect(clock.iso(at).slice(0, 16)).toBe(shown);
        expect(at).toBeLessThanOrEqual(minute);
      }),
      {numRuns: 500},
    );
  });

  it('a time that the clocks skip in spring is the instant they go forward', () => {
    const clock = civil('Europe/Amsterdam');
    expect(clock.iso(clock.at('2026-03-29', '02:00'))).toBe('2026-03-29T03:00:00+02:00');
    expect(clock.iso(clock.at('2026-03-29', '02:59'))).toBe('2026-03-29T03:00:00+02:00');
  });

  it('a time that the clocks show twice in autumn is the first of the two', () => {
    const clock = civil('Europe/Amsterdam');
    expect(clock.iso(clock.at('2026-10-25', '02:30'))).toBe('2026-10-25T02:30:00+02:00');
  });

  it('a day that a zone left out of its calendar begins when the next one does', () => {
    const clock = civil('Pacific/Apia');
    expect(clock.iso(clock.at('2011-12-30', '12:00'))).toBe('2011-12-31T00:00:00+14:00');
  });

  it('addDays counts days of the calendar, not hours', () => {
    const clock = civil('Europe/Amsterdam');
    expect(clock.addDays('2026-03-28', 2)).toBe('2026-03-30');
    expect(clock.addDays('2028-02-28', 1)).toBe('2028-02-29');
    expect(clock.addDays('2026-01-01', -1)).toBe('2025-12-31');
  });

  it('iso shows milliseconds only where there are some', () => {
    expect(civil('UTC').iso(1000)).toBe('1970-01-01T00:00:01+00:00');
    expect(civil('UTC').iso(1250)).toBe('1970-01-01T00:00:01.250+00:00');
  });
});

describe('rememberClock(changes)', () => {
  const [from, to] = [Date.UTC(2020, 0, 1), Date.UTC(2030, 0, 1)];
  // A name in other letters is the same zone to the system, and a new one to the program.
  const remembered = zones
    .filter(name => name !== 'UTC')
    .map(name => {
      rememberClock({...clockChanges(zoneNamed(name), from, to), zone: name.toLowerCase()});
      return name;
    });

  it('shows the same offsets as the system, within what is remembered and beyond', () => {
    fc.assert(
      fc.property(fc.constantFrom(...remembered), instant, (name, at) => {
        expect(zoneNamed(name.toLowerCase()).offsetMs(at)).toBe(zoneNamed(name).offsetMs(at));
      }),
      {numRuns: 1000},
    );
  });

  it('knows to the millisecond when clocks change', () => {
    const {offsets} = clockChanges(zoneNamed('Europe/Amsterdam'), Date.UTC(2026, 0, 1), Date.UTC(2027, 0, 1));
    // Directive 2000/84/EC: 01:00 UTC on the last Sundays of March and October.
    expect(offsets.slice(1)).toEqual([
      {at: Date.UTC(2026, 2, 29, 1), offsetMs: 7_200_000},
      {at: Date.UTC(2026, 9, 25, 1), offsetMs: 3_600_000},
    ]);
  });
});
