// Day first or month first, years of two digits, formats that a person gives, and clocks that change.
import {describe, expect, it} from 'vitest';
import {Refusal} from '../../../src/records/refusal.ts';
import {read, readShown} from './reading.ts';

const file = (...times: string[]) =>
  `time,temp\n${times.map((time, i) => `${time},${(i % 50) + 1}\n`).join('')}`;

const clock = (minutes: number) => new Date(minutes * 60_000).toISOString().slice(11, 16);

describe('the order of day and month', () => {
  it('is told by a number above 12 anywhere in the file', () => {
    const early = Array.from({length: 1000}, (_, i) => `01/06/2026 ${clock(i)}`);
    expect(readShown(file(...early, '13/06/2026 10:00')).slice(-2)).toEqual([
      '2026-06-01T16:39 50',
      '2026-06-13T10:00 1',
    ]);
    expect(readShown(file(...early, '06/13/2026 10:00')).slice(-2)).toEqual([
      '2026-01-06T16:39 50',
      '2026-06-13T10:00 1',
    ]);
  });

  it('where every number is 12 or less, the file is refused and --format asked for', () => {
    const text = file('01/06/2026 10:00', '02/06/2026 10:00', '12/12/2026 10:00');
    expect(() => read(text)).toThrow(Refusal);
    expect(() => read(text)).toThrow(
      'log.csv: day and month cannot be told apart: dates look like "01/06/2026 10:00" and no number in them decides it. Say which comes first with --format dmy, --format mdy or --format ymd.',
    );
    expect(readShown(text, {format: 'dmy'})[0]).toBe('2026-06-01T10:00 1');
    expect(readShown(text, {format: 'mdy'})[0]).toBe('2026-01-06T10:00 1');
  });

  it('between full stops the day stands first, unless a number says otherwise', () => {
    expect(readShown(file('01.06.2026 10:00', '02.06.2026 10:00'))[0]).toBe('2026-06-01T10:00 1');
    expect(readShown(file('01.06.2026 10:00', '01.13.2026 10:00'))[0]).toBe('2026-01-06T10:00 1');
  });

  it('a year of four digits in front is never in doubt', () => {
    expect(readShown(file('2026/01/06 10:00'))).toEqual(['2026-01-06T10:00 1']);
  });

  it('rows that contradict what the file has shown are rejected by number', () => {
    expect(read(file('13/06/2026 10:00', '06/14/2026 10:00', '15/06/2026 10:00'))).toMatchObject({
      rows: 3,
      rejected: [{row: 3, what: '"06/14/2026 10:00" is no time'}],
    });
  });
});

describe('years of two digits', () => {
  it.each([
    [['30.05.26 10:00', '31.05.26 10:00'], '2026-05-30T10:00 1'],
    [['26-05-30 10:00', '26-05-31 10:00'], '2026-05-30T10:00 1'],
    [['30-05-26 10:00', '31-05-26 10:00'], '2026-05-30T10:00 1'],
    [['05/30/26 10:00'], '2026-05-30T10:00 1'],
    [['30.05.98 10:00'], '1998-05-30T10:00 1'],
  ])('%j', (times, expected) => {
    expect(readShown(file(...times))[0]).toBe(expected);
  });

  it('that may stand first or last are asked for', () => {
    expect(() => read(file('26-05-30 10:00', '26-05-30 11:00'))).toThrow('--format ymd');
  });
});

describe('--format', () => {
  it.each([
    ['dd LLL yyyy HH:mm', '30 May 2026 09:00'],
    ["yyyyMMdd'T'HHmm", '20260530T0900'],
    ['d.L.yyyy H.mm', '30.5.2026 9.00'],
    ['HH:mm MM-dd-yy', '09:00 05-30-26'],
  ])('%s reads %s', (format, time) => {
    expect(readShown(file(time), {format})).toEqual(['2026-05-30T09:00 1']);
  });

  it('may hold an offset, which then counts', () => {
    expect(
      readShown(file('30 May 2026 09:00 +0200'), {format: 'dd LLL yyyy HH:mm ZZZ', zone: 'Asia/Tokyo'}),
    ).toEqual(['2026-05-30T09:00 1']);
  });

  it('describes a date and a time in two columns joined by a blank', () => {
    expect(readShown('date,time,temp\n30 May 2026,0900,21\n', {format: 'dd LLL yyyy HHmm'})).toEqual([
      '2026-05-30T09:00 21',
    ]);
  });

  it('that no row fits is refused', () => {
    expect(() => read(file('2026-05-30 09:00'), {format: 'dd LLL yyyy'})).toThrow(Refusal);
  });
});

describe('clock changes in Europe/Amsterdam', () => {
  const zone = 'Europe/Amsterdam';
  const utc = (text: string) => {
    const result = read(text, {zone});
    return result.kind === 'readings'
      ? Array.from(result.at, at => new Date(at).toISOString().slice(11, 16))
      : [];
  };

  it('a time that the clocks skip is rejected by number', () => {
    const result = read(file('2026-03-29 01:50', '2026-03-29 02:00', '2026-03-29 03:00'), {zone});
    expect(result).toMatchObject({
      rows: 3,
      rejected: [{row: 3, what: 'the clocks of Europe/Amsterdam skip 2026-03-29 02:00'}],
    });
  });

  it('the repeated hour is told apart by the order of the rows', () => {
    const times = ['01:40', '02:00', '02:20', '02:40', '02:00', '02:20', '02:40', '03:00'];
    expect(utc(file(...times.map(time => `2026-10-25 ${time}`)))).toEqual([
      '23:40',
      '00:00',
      '00:20',
      '00:40',
      '01:00',
      '01:20',
      '01:40',
      '02:00',
    ]);
  });

  it('also where the logger reads once an hour', () => {
    const times = ['01:00', '02:00', '02:00', '03:00'];
    expect(utc(file(...times.map(time => `2026-10-25 ${time}`)))).toEqual([
      '23:00',
      '00:00',
      '01:00',
      '02:00',
    ]);
  });

  it('also where the newest row stands first', () => {
    const times = ['03:00', '02:30', '02:00', '02:30', '02:00', '01:30'];
    const result = read(file(...times.map(time => `2026-10-25 ${time}`)), {zone});
    expect(result.duplicates).toBe(0);
    expect(utc(file(...times.map(time => `2026-10-25 ${time}`)))).toEqual([
      '23:30',
      '00:00',
      '00:30',
      '01:00',
      '01:30',
      '02:00',
    ]);
  });

  it('a row that stands twice in that hour is a duplicate, not the second pass', () => {
    const times = ['02:00', '02:20', '02:20', '02:40', '02:00', '02:20', '02:40', '03:00'];
    expect(read(file(...times.map(time => `2026-10-25 ${time}`)), {zone})).toMatchObject({
      rows: 8,
      duplicates: 1,
    });
  });

  it('a single pass is taken for the first', () => {
    const times = ['01:40', '02:00', '02:20', '02:40', '03:00'];
    expect(utc(file(...times.map(time => `2026-10-25 ${time}`)))).toEqual([
      '23:40',
      '00:00',
      '00:20',
      '00:40',
      '02:00',
    ]);
  });
});
