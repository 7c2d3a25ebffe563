// Tables written by RFC 4180 and read again by csv-parse, and by the program's own reader of spreadsheets.
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {parse} from 'csv-parse/sync';
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {csvText} from '../../src/exchange/csv.ts';
import {readTable} from '../../src/exchange/tables/read-table.ts';
import {temporaryFolder} from '../commands/program.ts';

const cell = fc.string({unit: fc.constantFrom('a', 'ž', '♀', ',', ';', '"', '\n', '\r\n', ' ', '0')});

describe('csvText', () => {
  it('quotes what RFC 4180 says must be quoted, doubles quotes and ends every row with CR LF', () => {
    expect(
      csvText(
        ['a', 'b'],
        [
          ['x,y', 'say "no"'],
          ['two\nlines', ''],
        ],
      ),
    ).toBe('a,b\r\n"x,y","say ""no"""\r\n"two\nlines",\r\n');
  });

  it('is read back cell by cell', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell, cell), {minLength: 1, maxLength: 8}), rows => {
        const read = parse(csvText(['x', 'y', 'z'], rows), {record_delimiter: '\r\n'});
        expect(read).toEqual([['x', 'y', 'z'], ...rows]);
      }),
    );
  });
});

describe('readTable', () => {
  const folder = temporaryFolder();
  const read = (content: string | Uint8Array) => {
    const file = join(folder, 'sheet.csv');
    writeFileSync(file, content);
    return readTable(file);
  };

  it('counts rows as a spreadsheet does, leaving blank ones out', () => {
    const {heading, rows} = read('a;b\r\n1;"x\ny"\r\n;\r\n2;z\r\n');
    expect(heading).toEqual(['a', 'b']);
    expect(rows).toEqual([
      {row: 2, cells: ['1', 'x\ny']},
      {row: 4, cells: ['2', 'z']},
    ]);
  });

  it('reads commas, semicolons and tabs, UTF-8 with its mark, UTF-16 and Windows-1252', () => {
    for (const mark of [',', ';', '\t'])
      expect(read(`a${mark}b\n1${mark}2\n`).rows[0]!.cells).toEqual(['1', '2']);
    expect(read('\uFEFFname\nžluť\n')).toMatchObject({heading: ['name'], rows: [{cells: ['žluť']}]});
    expect(read(Buffer.from('\uFEFFname\nžluť\n', 'utf16le'))).toMatchObject({heading: ['name']});
    expect(read(Buffer.from('name\nM\xfcller\n', 'latin1')).rows[0]!.cells).toEqual(['Müller']);
  });

  it('refuses a workbook, bytes that are no text, quotes left open, and a table without heading', () => {
    expect(() => read('PK\x03\x04…')).toThrow(/workbook.*Save its sheet as CSV/);
    expect(() => read(Buffer.from([1, 0, 2, 0, 3]))).toThrow(/no text/);
    expect(() => read('a,b\n"1,2\n')).toThrow(/quotes/);
    expect(() => read('')).toThrow(/no heading/);
  });
});
