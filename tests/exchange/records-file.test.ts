import {describe, expect, it} from 'vitest';
import {readRecords} from '../../src/exchange/records-file.ts';
import {Refusal} from '../../src/records/refusal.ts';

describe('readRecords(text, file)', () => {
  it('reads a JSON array, naming each record by its number', () => {
    expect(readRecords('[{"a":1},{"b":2}]', 'f.json')).toEqual([
      {value: {a: 1}, where: 'f.json, record 1'},
      {value: {b: 2}, where: 'f.json, record 2'},
    ]);
  });

  it('reads one object a line, naming each by its line; blank lines do not count as records', () => {
    expect(readRecords('{"a":1}\r\n\n{"b":2}\n', 'f.jsonl')).toEqual([
      {value: {a: 1}, where: 'f.jsonl, line 1'},
      {value: {b: 2}, where: 'f.jsonl, line 3'},
    ]);
  });

  it('passes over a byte order mark', () => {
    expect(readRecords('\uFEFF{"a":1}', 'f')).toEqual([{value: {a: 1}, where: 'f, line 1'}]);
    expect(readRecords('\uFEFF[{"a":1}]', 'f')).toHaveLength(1);
  });

  it('finds nothing in an empty text', () => {
    expect(readRecords(' \n', 'f')).toEqual([]);
  });

  it.each([
    ['[{"a":1},', 'f'],
    ['{"a":1}\nnonsense', 'f, line 2'],
    ['\u0000\u0001\u0002', 'f, line 1'],
  ])('refuses %j, saying where', (text, where) => {
    expect(() => readRecords(text, 'f')).toThrow(Refusal);
    try {
      readRecords(text, 'f');
    } catch (error) {
      expect(error).toMatchObject({where});
      expect((error as Refusal).message).not.toContain('\n');
    }
  });
});
