import {describe, expect, it} from 'vitest';
import {samePlace} from '../../src/climate/neighbours.ts';

describe('samePlace', () => {
  it('counts the steps that two places share, from large to small', () => {
    expect(samePlace('rack A/2', 'rack B/2')).toBe(0);
    expect(samePlace('rack A/2', 'rack A/3')).toBe(1);
    expect(samePlace('room 1/rack A/2', 'room 1/rack A/3')).toBe(2);
    expect(samePlace('rack A', 'rack A/2')).toBe(1);
  });

  it('holds the very same place nearest', () => {
    expect(samePlace('rack A / 2', 'rack A/2')).toBeGreaterThan(samePlace('rack A/2', 'rack A/2/left'));
    expect(samePlace('rack A', 'rack A')).toBeGreaterThan(samePlace('rack A', 'rack A/2'));
  });
});
