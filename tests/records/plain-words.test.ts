import {describe, expect, it} from 'vitest';
import {spoken, whenWritten} from '../../src/records/plain-words.ts';

describe('spoken', () => {
  it.each([
    ['change-water', 'change water'],
    ['foodLeft', 'food left'],
    ['waterC', 'water °C'],
    ['mould', 'mould'],
  ])('spoken(%j) is %j', (name, words) => {
    expect(spoken(name)).toBe(words);
  });
});

describe('whenWritten', () => {
  it('leaves out seconds and offset, and a day as it is', () => {
    expect(whenWritten('2026-05-30T22:00:00+02:00')).toBe('2026-05-30 22:00');
    expect(whenWritten('2026-05-30')).toBe('2026-05-30');
  });
});
