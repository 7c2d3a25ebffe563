// What a person is told of a file that cannot be understood, and of options that do not fit it.
import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {afterAll, describe, expect, it} from 'vitest';
import {chunksOf} from '../../../src/exchange/logger-file/chunks.ts';
import {readLoggerFile} from '../../../src/exchange/logger-file/logger-file.ts';
import {Refusal} from '../../../src/records/refusal.ts';
import {read, readShown} from './reading.ts';

function refusal(act: () => unknown): Refusal {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

describe('a file that cannot be understood is refused with what was found', () => {
  it.each<[string, string | Uint8Array, string]>([
    ['empty', '', 'the file is empty'],
    ['only blanks', ' \n\n  \n', 'the file is empty'],
    ['binary', Buffer.from('PK\x03\x04\x14\x00\x00\x00\x08\x00data', 'latin1'), 'the file is no text'],
    [
      'bytes of a picture',
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 13, 10, 26, 10, 0, 0, 0, 13]),
      'the file is no text',
    ],
    [
      'prose',
      'It was a warm day.\nThe larvae fed.\n',
      'no column holds dates and times; found "It was a warm day. | The larvae fed."',
    ],
    [
      'no time',
      'temperature,humidity\n21,60\n22,61\n',
      'no column holds dates and times; found "temperature | humidity | 21 | 60"',
    ],
    [
      'a heading and nothing below',
      'time,temperature\n',
      'the file has a heading (time | temperature) but no row with a time and a temperature below it',
    ],
    [
      'no temperature',
      'time,wind,rain\n2026-05-30 09:00,3,0\n',
      'no column is surely the temperature; found the columns time | wind | rain',
    ],
    [
      'humidity alone',
      'time,humidity\n2026-05-30 09:00,60\n',
      'no column is surely the temperature; found the columns time | humidity',
    ],
    [
      'a day and two numbers without a heading',
      '2026-05-30,12,21\n2026-05-31,13,22\n',
      'no column is surely the temperature; found no heading, and rows like "2026-05-30 | 12 | 21"',
    ],
    [
      'two columns that might be it',
      'time,shelf,floor\n2026-05-30 09:00,21,20\n',
      'no column is surely the temperature; found the columns time | shelf | floor',
    ],
    [
      'two temperatures',
      'time,T1,T2\n2026-05-30 09:00,21,20\n',
      'no column is surely the temperature; found the columns time | T1 | T2',
    ],
    [
      'commas that separate cells and mark decimals',
      'time,temp\n2026-05-30 09:00,21,4\n',
      'rows have more cells than the heading (time | temp): "2026-05-30 09:00 | 21 | 4"; commas seem to separate cells and to mark decimals',
    ],
    [
      'only faults',
      'time,temp\n2026-05-30 09:00,-127\n',
      'no row can be read; in row 2, the temperature -127 °C cannot be; it is taken for a fault',
    ],
  ])('%s', (_, text, what) => {
    const {what: said, where, mend} = refusal(() => read(text));
    expect(said).toBe(what);
    expect(where).toBe('log.csv');
    expect(mend).toMatch(/\.$/);
  });

  it('shows no more than a line of it, without anything a terminal would act on', () => {
    const {message} = refusal(() => read(`\u001b[31m${'x'.repeat(5000)}\n`));
    expect(message.length).toBeLessThan(400);
    expect(message).not.toMatch(/\p{Cc}/u);
  });

  it('a line of millions of characters is no row', () => {
    expect(refusal(() => read('time,temp\n2026-05-30 09:00,21\n'.padEnd(3_000_000, 'x'))).what).toContain(
      'no',
    );
  });
});

describe('--columns', () => {
  const text = 'a,b,c,when\n21,60,20,2026-05-30 09:00\n22,61,21,2026-05-30 10:00\n';

  it('names columns by number or by heading', () => {
    const expected = ['2026-05-30T09:00 20 60', '2026-05-30T10:00 21 61'];
    expect(readShown(text, {columns: 'time=4,temperature=3,humidity=2'})).toEqual(expected);
    expect(readShown(text, {columns: 'time=When, temperature=C, humidity=b'})).toEqual(expected);
  });

  it('names a date and a time apart, and daily extremes', () => {
    const apart = '30.05.2026;09:00;21,5\n30.05.2026;10:00;22\n';
    expect(readShown(apart, {columns: 'date=1,time=2,temperature=3'})).toEqual([
      '2026-05-30T09:00 21.5',
      '2026-05-30T10:00 22',
    ]);
    expect(readShown('2026-05-30,12,21\n', {columns: 'date=1,minimum=2,maximum=3'})).toEqual([
      '2026-05-30 12 21',
    ]);
  });

  it('chooses epoch seconds too', () => {
    expect(readShown('21,1780131600\n', {columns: 'time=2,temperature=1'})).toEqual(['2026-05-30T09:00 21']);
  });

  it.each([
    ['temperature=2', 'the column of the time is missing'],
    ['time=1', 'the column of the temperature is missing'],
    ['time=1,minimum=2', 'the column of the temperature is missing'],
    ['time=1,warmth=2', '"warmth=2" names no column'],
    ['time=1,time=2,temperature=3', 'time is given twice'],
    ['time,temperature', '"time" names no column'],
    ['', '"" names no column'],
  ])('"%s" is refused', (columns, what) => {
    expect(refusal(() => read(text, {columns}))).toMatchObject({what, where: '--columns'});
  });

  it('that the file does not have is refused with those it has', () => {
    expect(refusal(() => read(text, {columns: 'time=when,temperature=warmth'})).what).toBe(
      '--columns names "warmth", but the columns are a | b | c | when',
    );
    expect(refusal(() => read(text, {columns: 'time=4,temperature=9'})).what).toContain(
      '--columns names "9"',
    );
  });

  it('that hold no readings are refused', () => {
    expect(refusal(() => read('a,b\nx,y\n', {columns: 'time=1,temperature=2'})).what).toBe(
      'no row has a time and a temperature in the columns that --columns names; found "a | b"',
    );
  });
});

describe('a file on disk', () => {
  const folder = mkdtempSync(join(tmpdir(), 'logger-file-'));
  afterAll(() => rmSync(folder, {recursive: true}));
  const readPath = (path: string) => readLoggerFile(chunksOf(path), path, {zone: 'UTC'});

  it('is read in one go', () => {
    const path = join(folder, 'log.csv');
    writeFileSync(path, 'time,temp\n2026-05-30 09:00,21\n');
    expect(readPath(path)).toMatchObject({kind: 'readings', rows: 1});
  });

  it('that is not there, or is a folder, is refused', () => {
    expect(refusal(() => readPath(join(folder, 'none.csv'))).what).toBe('there is no such file');
    expect(refusal(() => readPath(folder)).what).toBe('this is a folder, not a file');
    expect(refusal(() => readPath(join(folder, 'log.csv', 'deeper'))).what).toBe('there is no such file');
  });
});
