import {describe, expect, it} from 'vitest';
import type {Course, Stretch} from '../../src/climate/course.ts';
import {summaryOf} from '../../src/climate/course-summary.ts';

const course = (expectedFromDays: number, ...stretches: Stretch[]): Course => ({
  atDays: new Float64Array(0),
  temperatureC: new Float64Array(0),
  stretches,
  expectedFromDays,
});

describe('summaryOf', () => {
  it('gives the share that was read, the hours filled and unknown, and what the course rests on', () => {
    const summary = summaryOf(
      course(
        10,
        {fromDays: 0, toDays: 6, basis: 'logger', of: 'L1'},
        {fromDays: 6, toDays: 7, basis: 'other-logger', of: 'L4'},
        {fromDays: 7, toDays: 7.5, basis: 'mean-day'},
        {fromDays: 7.5, toDays: 8, basis: 'unknown'},
        {fromDays: 8, toDays: 10, basis: 'logger', of: 'L1'},
        {fromDays: 10, toDays: 410, basis: 'expected', of: 'recent days'},
      ),
      10,
    );
    expect(summary.coverage).toBeCloseTo(0.8, 12);
    expect(summary.filledHours).toBeCloseTo(36, 12);
    expect(summary.unknownHours).toBeCloseTo(12, 12);
    expect(summary.basis).toBe(
      'logger L1 80 %, other logger L4 10 %, mean day of the days around 5 %, unknown 5 %; then recent days',
    );
  });

  it('counts only up to now where readings go on after it', () => {
    const summary = summaryOf(
      course(
        9,
        {fromDays: 0, toDays: 1, basis: 'set-points'},
        {fromDays: 1, toDays: 9, basis: 'logger', of: 'L1'},
        {fromDays: 9, toDays: 20, basis: 'held', of: '22'},
      ),
      2,
    );
    expect(summary.coverage).toBeCloseTo(0.5, 12);
    expect(summary.basis).toBe('set points 50 %, logger L1 50 %; then held at 22 °C');
  });

  it('says no share where one source served, nothing twice, and has full coverage where no time has passed', () => {
    const expected = {fromDays: 3, toDays: 9, basis: 'expected', of: 'set points'} as const;
    expect(summaryOf(course(3, {fromDays: 0, toDays: 3, basis: 'hand', of: 'L1'}, expected), 3).basis).toBe(
      'read by hand (L1); then set points',
    );
    expect(summaryOf(course(3, {fromDays: 0, toDays: 3, basis: 'set-points'}, expected), 3).basis).toBe(
      'set points',
    );
    expect(summaryOf(course(3, expected), 3)).toEqual({
      coverage: 1,
      filledHours: 0,
      unknownHours: 0,
      basis: 'then set points',
    });
  });
});
