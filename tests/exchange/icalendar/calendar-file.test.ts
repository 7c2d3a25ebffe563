// The calendar file, read back by two readers that know nothing of us: ical.js and node-ical. RFC 5545.
import fc from 'fast-check';
import ICAL from 'ical.js';
import nodeIcal from 'node-ical';
import {describe, expect, it} from 'vitest';
import {civil as civilOf} from '../../../src/exchange/civil.ts';
import {folded} from '../../../src/exchange/icalendar/content-line.ts';
import type {CalendarEvent, DatedEvent} from '../../../src/exchange/icalendar/event.ts';
import {readCalendarFile} from '../../../src/exchange/icalendar/read.ts';
import {succeeding} from '../../../src/exchange/icalendar/succeeding.ts';
import {calendarFile} from '../../../src/exchange/icalendar/write.ts';

const civil = civilOf('Europe/Vienna');
const NOW = Date.parse('2031-03-28T08:00Z');

const event = (uid: string, more: Partial<CalendarEvent> = {}): CalendarEvent => ({
  uid,
  summary: 'Käfig C1: füttern; Łódź, Ærø \\ 昆虫',
  description: 'first line\nsecond, with a comma; and a semicolon',
  location: 'rack A/1',
  when: {from: Date.parse('2031-03-31T06:00Z'), to: Date.parse('2031-03-31T06:20Z')},
  ...more,
});
const fileOf = (events: readonly CalendarEvent[], before: readonly DatedEvent[] = [], now = NOW) =>
  calendarFile('Nordraum, Ø', succeeding(before, events, now, civil).events, civil);

describe('a calendar file', () => {
  const text = fileOf([
    event('a@x'),
    event('b@x', {when: {firstDay: '2031-12-30', lastDay: '2032-01-02'}, description: 'ä'.repeat(200)}),
  ]);

  it('has lines of at most 75 octets that end in CR LF', () => {
    expect(text.endsWith('\r\n')).toBe(true);
    for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('is read by ical.js with its texts, times and whole days', () => {
    const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent');
    const [a, b] = events.map(each => new ICAL.Event(each));
    expect([a!.uid, a!.summary, a!.description, a!.location]).toEqual([
      'a@x',
      'Käfig C1: füttern; Łódź, Ærø \\ 昆虫',
      'first line\nsecond, with a comma; and a semicolon',
      'rack A/1',
    ]);
    expect(a!.startDate.toJSDate().toISOString()).toBe('2031-03-31T06:00:00.000Z');
    expect(a!.endDate.toJSDate().toISOString()).toBe('2031-03-31T06:20:00.000Z');
    expect([b!.startDate.toString(), b!.endDate.toString(), b!.startDate.isDate]).toEqual([
      '2031-12-30',
      '2032-01-03',
      true,
    ]);
    expect(b!.description).toBe('ä'.repeat(200));
  });

  it('is read alike by node-ical', () => {
    const read = Object.values(nodeIcal.sync.parseICS(text)).flatMap(each =>
      each !== undefined && each.type === 'VEVENT' ? [each] : [],
    );
    expect(read.map(({uid}) => uid)).toEqual(['a@x', 'b@x']);
    const [a] = read;
    expect(String(a!.summary)).toBe('Käfig C1: füttern; Łódź, Ærø \\ 昆虫');
    expect(a!.start.toISOString()).toBe('2031-03-31T06:00:00.000Z');
  });

  it('brings any text back to ical.js and to us', () => {
    fc.assert(
      fc.property(fc.string({unit: 'grapheme', minLength: 1, maxLength: 120}), summary => {
        const plain = summary.replaceAll('\t', ' ').replaceAll(/\p{Cc}/gu, '');
        const file = fileOf([event('a@x', {summary})]);
        const [read] = new ICAL.Component(ICAL.parse(file)).getAllSubcomponents('vevent');
        expect(new ICAL.Event(read!).summary).toBe(plain);
        expect(readCalendarFile(file, civil)![0]!.summary).toBe(plain);
      }),
      {numRuns: 200},
    );
  });

  it('never cuts a character in two', () => {
    fc.assert(
      fc.property(fc.string({unit: 'grapheme', maxLength: 300}), line => {
        const pieces = folded(line).split('\r\n');
        expect(pieces.map((piece, i) => (i === 0 ? piece : piece.slice(1))).join('')).toBe(line);
        for (const piece of pieces) expect(Buffer.byteLength(piece)).toBeLessThanOrEqual(75);
      }),
    );
  });
});

describe('a calendar file that follows another', () => {
  const before = readCalendarFile(fileOf([event('a@x'), event('b@x')]), civil)!;

  it('is the same to the letter where nothing changed', () => {
    expect(fileOf([event('a@x'), event('b@x')], before, NOW + 3_600_000)).toBe(
      fileOf([event('a@x'), event('b@x')]),
    );
  });

  it('keeps the identifier of an event that moved, and counts its sequence up', () => {
    const moved = event('a@x', {when: {from: NOW + 9e7, to: NOW + 9.1e7}});
    const {events, changed, added, cancelled} = succeeding(
      before,
      [moved, event('b@x')],
      NOW + 60_000,
      civil,
    );
    expect([added, changed, cancelled]).toEqual([0, 1, 0]);
    expect(events.map(({uid, sequence}) => [uid, sequence]).sort()).toEqual([
      ['a@x', 1],
      ['b@x', 0],
    ]);
  });

  it('writes an event that is no longer planned once more as cancelled, and lets what is past go', () => {
    const gone = succeeding(before, [event('a@x')], NOW + 60_000, civil);
    expect(gone.events.find(({uid}) => uid === 'b@x')).toMatchObject({cancelled: true, sequence: 1});
    expect(calendarFile('x', gone.events, civil)).toContain('STATUS:CANCELLED');
    expect(succeeding(before, [event('a@x')], Date.parse('2031-04-02T00:00Z'), civil).events).toHaveLength(1);
    const again = succeeding(gone.events, [event('a@x'), event('b@x')], NOW + 120_000, civil);
    expect(again.events.find(({uid}) => uid === 'b@x')).toMatchObject({cancelled: false, sequence: 2});
  });

  it('is not taken from a file of somebody else', () => {
    expect(
      readCalendarFile('BEGIN:VCALENDAR\r\nPRODID:-//x//y//EN\r\nEND:VCALENDAR\r\n', civil),
    ).toBeUndefined();
    expect(readCalendarFile('dear diary', civil)).toBeUndefined();
  });
});
