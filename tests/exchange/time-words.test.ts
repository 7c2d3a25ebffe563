import {describe, expect, it} from 'vitest';
import {civil} from '../../src/exchange/civil.ts';
import {dayWords, instantWords} from '../../src/exchange/time-words.ts';

const clock = civil('Europe/Amsterdam');
const now = Date.parse('2026-06-10T16:00:00+02:00');

describe('how people are shown days and instants', () => {
  it.each([
    ['2026-06-10T16:30:00+02:00', 'today 16:30'],
    ['2026-06-10T23:30:00Z', 'tomorrow 01:30'],
    ['2026-06-09T00:00:00+02:00', 'yesterday 00:00'],
    ['2026-06-12T09:00:00+02:00', 'Fri 12 June 09:00'],
    ['2026-01-01T00:00:00+01:00', 'Thu 1 January 00:00'],
    ['2025-06-12T09:00:00+02:00', 'Thu 12 June 2025 09:00'],
    ['2027-03-01T09:05:59+01:00', 'Mon 1 March 2027 09:05'],
  ])('instantWords of %s on 10 June 2026 is "%s"', (iso, words) => {
    expect(instantWords(Date.parse(iso), clock, now)).toBe(words);
  });

  it('dayWords names the day alone', () => {
    expect(dayWords('2026-06-11', clock, now)).toBe('tomorrow');
    expect(dayWords('2026-12-24', clock, now)).toBe('Thu 24 December');
  });

  it('tomorrow may lie in another year', () => {
    expect(dayWords('2027-01-01', clock, Date.parse('2026-12-31T12:00:00+01:00'))).toBe('tomorrow');
  });
});
