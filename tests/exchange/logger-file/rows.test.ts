// Every row is accounted for: a reading, a duplicate, or rejected with its number and what is wrong with it.
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {
  type LoggerFileWishes,
  readLoggerFile,
  seriesOf,
} from '../../../src/exchange/logger-file/logger-file.ts';
import {Refusal} from '../../../src/records/refusal.ts';
import {read, readShown, shown} from './reading.ts';

describe('rows', () => {
  it('that are blank, broken or impossible are rejected by their line in the file', () => {
    const file = read(
      [
        'shelf 3',
        'time,temp,rh',
        '2026-05-30 09:00,21.4,62',
        '2026-05-30 09:10,,62',
        '',
        '2026-05-30 09:20,ERR,62',
        '2026-05-30 09:30,-127,62',
        '2026-05-30 09:40,85,62',
        '2026-05-30 09:50,21.5,140',
        '2026-05-30 10:00,21.5,ERR',
        ',21.5,60',
        '2026-02-30 10:10,21.5,60',
        'logger stopped',
        '2026-05-30 10:20,"21.5,60',
        '2026-05-30 10:30,21.6,',
        ',,',
      ].join('\n'),
    );
    expect(shown(file)).toEqual(['2026-05-30T09:00 21.4 62', '2026-05-30T10:30 21.6']);
    expect(file).toMatchObject({
      rows: 12,
      duplicates: 0,
      rejected: [
        {row: 4, what: 'the temperature is missing'},
        {row: 6, what: 'the temperature "ERR" is no number'},
        {row: 7, what: 'the temperature -127 °C cannot be; it is taken for a fault'},
        {row: 8, what: 'the temperature 85 °C cannot be; it is taken for a fault'},
        {row: 9, what: 'the humidity 140 % cannot be; it is taken for a fault'},
        {row: 10, what: 'the humidity "ERR" is no number'},
        {row: 11, what: 'the time is missing'},
        {row: 12, what: '"2026-02-30 10:10" is no time'},
        {row: 13, what: '"logger stopped" is no time'},
        {row: 14, what: 'a quote is not closed'},
      ],
    });
  });

  it('broken rows between the heading and the first reading count too', () => {
    expect(read('time,temp\n2026-05-30 09:00,ERR\n2026-05-30 09:10,21\n')).toMatchObject({
      rows: 2,
      rejected: [{row: 2, what: 'the temperature "ERR" is no number'}],
    });
  });

  it('a file that begins with hundreds of faults is read all the same', () => {
    const faults = Array.from({length: 600}, (_, i) => `2026-05-${pad(1 + (i % 28))} ${pad(i % 24)}:00`);
    const open = `time,temp,rh\n${faults.map(time => `${time},,50\n`).join('')}2026-05-30 09:00,21,50\n`;
    expect(read(open)).toMatchObject({rows: 601, layout: {values: {temperature: 1, humidity: 2}}});
    const dead = `time,temp\n${faults.map(time => `${time},ERR\n`).join('')}2026-05-30 09:00,21\n`;
    expect(readShown(dead)).toEqual(['2026-05-30T09:00 21']);
    expect(readShown(dead, {columns: 'time=1,temperature=2'})).toEqual(['2026-05-30T09:00 21']);
  });

  it('of the same instant are duplicates of the first', () => {
    const text =
      'time,temp\n2026-05-30T09:00Z,21\n2026-05-30T11:00+02:00,22\n2026-05-30T10:00Z,23\n2026-05-30T09:00Z,21\n';
    expect(read(text)).toMatchObject({rows: 4, duplicates: 2, rejected: []});
    expect(seriesTemperatures(text)).toEqual([21, 23]);
  });

  it('out of order are put in order', () => {
    expect(readShown('time,temp\n2026-05-30 11:00,3\n2026-05-30 09:00,1\n2026-05-30 10:00,2\n')).toEqual([
      '2026-05-30T09:00 1',
      '2026-05-30T10:00 2',
      '2026-05-30T11:00 3',
    ]);
  });

  it('a wet sensor’s humidity somewhat above 100 is kept as read', () => {
    expect(readShown('time,temp,rh\n2026-05-30 09:00,21,102.5\n')).toEqual(['2026-05-30T09:00 21 102.5']);
  });

  it('without a humidity, however that is written, keep their temperature', () => {
    const rows = ['', '-', '--', 'NaN', 'null', 'n/a'].map((cell, i) => `2026-05-30 0${i}:00,21,${cell}\n`);
    expect(readShown(`time,temp,rh\n2026-05-30 09:00,21,60\n${rows.join('')}`)).toHaveLength(7);
    expect(read('time,temp\n2026-05-30 09:00,21\n2026-05-30 10:00,NaN\n').rejected).toEqual([
      {row: 3, what: 'the temperature is missing'},
    ]);
  });

  it('of control characters alone, as old systems end files, are blank', () => {
    expect(read('time,temp\n2026-05-30 09:00,21\n\u001a\n')).toMatchObject({rows: 1, rejected: []});
  });

  it('in °F become °C in the series', () => {
    const series = seriesTemperatures('time,temp F\n2026-05-30 09:00,68\n2026-05-30 10:00,32\n');
    expect(series[0]).toBeCloseTo(20, 12);
    expect(series[1]).toBe(0);
  });
});

function seriesTemperatures(text: string): number[] {
  const file = read(text);
  return file.kind === 'readings' ? [...seriesOf(file).temperatureC] : [];
}

const minute = fc.integer({min: 0, max: 3_000_000});
const value = fc.integer({min: -2000, max: 4000}).map(hundredths => hundredths / 100);
const rows = fc.array(fc.tuple(minute, value, fc.option(fc.integer({min: 0, max: 100}))), {
  minLength: 1,
  maxLength: 60,
});
const start = Date.parse('2024-01-01T00:00Z');
const pad = (number: number) => String(number).padStart(2, '0');
const dayAndMonth = (at: Date) => [at.getUTCDate(), at.getUTCMonth() + 1];
const writers: Record<string, (at: Date) => string> = {
  iso: at => at.toISOString().slice(0, 19),
  zulu: at => at.toISOString(),
  offset: at => `${new Date(at.getTime() + 5.5 * 3_600_000).toISOString().slice(0, 16)}+05:30`,
  blank: at => at.toISOString().slice(0, 16).replace('T', ' '),
  dayFirst: at =>
    `${dayAndMonth(at).join('.')}.${at.getUTCFullYear()} ${at.getUTCHours()}:${pad(at.getUTCMinutes())}`,
  halves: at =>
    `${dayAndMonth(at).join('/')}/24 ${at.getUTCHours() % 12 || 12}:${pad(at.getUTCMinutes())}:07 ${at.getUTCHours() < 12 ? 'AM' : 'pm'}`,
  epoch: at => String(at.getTime() / 1000),
};
/** Quotes inside a cell make its row an odd one. */
const ODD = '"said ""warm"""';
const textOf = (rows: readonly (readonly string[])[], delimiter: string) =>
  rows.map(cells => cells.join(delimiter)).join('\n');

describe('whatever the rows', () => {
  it.each(Object.keys(writers))('the usual rows (%s) are read as the odd ones are', writer => {
    const quote = fc.constantFrom('', '"');
    const delimiter = fc.constantFrom(',', ';', '\t');
    const zone = fc.constantFrom('UTC', 'Europe/Amsterdam');
    fc.assert(
      fc.property(rows, delimiter, zone, quote, (list, between, zone, quote) => {
        const cells = list.map(([minutes, temperature, humidity]) => [
          writers[writer]!(new Date(start + minutes * 60_000)),
          String(temperature),
          humidity === null ? '' : String(humidity),
        ]);
        const write = (note: string) =>
          textOf(
            [
              ['time', 'temp', 'rh', 'note'],
              ...cells.map(row => [...row.map(cell => quote + cell + quote), note]),
            ],
            between,
          );
        const wishes = {zone, format: 'dmy'};
        expect(outcome(write(''), wishes)).toEqual(outcome(write(ODD), wishes));
      }),
    );
  });

  it('unlikely cells are read the same in usual and in odd rows', () => {
    const piece = fc.constantFrom(
      ...'0123456789-+.,:/ TZAPMampm°C',
      '2024-01-01',
      '05:30',
      '21',
      '1704067200',
    );
    const cell = fc.oneof(
      fc.constantFrom('2024-01-01 10:00', '2024-01-01T10:00:00.25Z', '1/2/24 12:05 PM', '21.5', '-3', '99'),
      fc.array(piece, {maxLength: 8}).map(pieces => pieces.join('')),
    );
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), {maxLength: 12}), lines => {
        const write = (note: string) =>
          textOf(
            [
              ['time', 'temp', 'rh', 'note'],
              ['2024-01-01 00:00', '20', '50', note],
              ...lines.map(cells => [...cells, note]),
            ],
            ';',
          );
        const wishes = {zone: 'Europe/Amsterdam', format: 'mdy', columns: 'time=1,temperature=2,humidity=3'};
        expect(outcome(write('x'), wishes)).toEqual(outcome(write(ODD), wishes));
      }),
      {numRuns: 100},
    );
  });

  it('rows = readings + duplicates + rejected, and readings rise, in any file made of likely and unlikely cells', () => {
    const cell = fc.oneof(
      {
        weight: 4,
        arbitrary: minute.map(minutes => new Date(start + minutes * 60_000).toISOString().slice(0, 16)),
      },
      {weight: 4, arbitrary: value.map(String)},
      fc.constantFrom(
        '',
        '"',
        '""',
        '"a',
        'ERR',
        '21,5',
        '1e400',
        '-',
        '+5',
        '9'.repeat(400),
        '13/13/2026',
        '24:00',
        ' ',
      ),
      fc.string({maxLength: 12}),
    );
    const line = fc.array(cell, {maxLength: 5});
    fc.assert(
      fc.property(fc.array(line, {maxLength: 20}), fc.constantFrom(',', ';', '\t'), (lines, delimiter) => {
        const text = [
          'time,temp,rh'.replaceAll(',', delimiter),
          '2024-01-01 00:00,20,50'.replaceAll(',', delimiter),
        ]
          .concat(lines.map(cells => cells.join(delimiter)))
          .join('\n');
        assertAccounted(Buffer.from(text), 1 << 20);
      }),
      {numRuns: 100},
    );
  });

  it('any bytes at all are read or refused', () => {
    fc.assert(
      fc.property(fc.uint8Array({maxLength: 400}), bytes => void assertAccounted(bytes, 1 << 20)),
      {numRuns: 100},
    );
  });

  it('a file with bytes changed, cut or repeated is read or refused, the same in chunks of any size', () => {
    const good = Buffer.from(
      'Logger\n"Time, °C";Temp;RH\n' +
        Array.from(
          {length: 40},
          (_, i) => `2026-05-${pad(1 + (i % 28))} ${pad(i % 24)}:00;"${i},5";${i}\r\n`,
        ).join(''),
    );
    const change = fc.record({
      at: fc.nat(good.length),
      remove: fc.nat(30),
      insert: fc.uint8Array({maxLength: 8}),
    });
    fc.assert(
      fc.property(fc.array(change, {maxLength: 6}), fc.integer({min: 1, max: 200}), (changes, size) => {
        const bytes = changes.reduce<Uint8Array>(
          (text, {at, remove, insert}) =>
            Buffer.concat([text.subarray(0, at), insert, text.subarray(at + remove)]),
          good,
        );
        expect(assertAccounted(bytes, size)).toEqual(assertAccounted(bytes, 1 << 20));
      }),
      {numRuns: 100},
    );
  });
});

/** What came of the bytes, handed over in chunks of a size: the readings, or the refusal. */
function assertAccounted(bytes: Uint8Array, size: number): unknown {
  const chunks = Array.from({length: Math.ceil(bytes.length / size)}, (_, i) =>
    bytes.slice(i * size, (i + 1) * size),
  );
  try {
    const file = readLoggerFile(chunks, 'log.csv', {zone: 'Europe/Amsterdam'});
    const kept = file.kind === 'readings' ? file.at.length : file.days.length;
    expect(kept + file.duplicates + file.rejected.length).toBe(file.rows);
    if (file.kind === 'readings') {
      for (let i = 1; i < file.at.length; i++) expect(file.at[i]!).toBeGreaterThan(file.at[i - 1]!);
      expect(file.temperature.every(temperature => temperature >= -76 && temperature <= 353.15)).toBe(true);
    }
    return [shown(file), file.rejected];
  } catch (error) {
    expect(error).toBeInstanceOf(Refusal);
    return String(error);
  }
}

function outcome(text: string, wishes: Partial<LoggerFileWishes>): unknown {
  try {
    const file = read(text, wishes);
    return [shown(file), file.rows, file.duplicates, file.rejected, file.zone.name];
  } catch (error) {
    expect(error).toBeInstanceOf(Refusal);
    return String(error);
  }
}
