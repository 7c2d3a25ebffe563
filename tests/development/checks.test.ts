import {describe, expect, test} from 'vitest';
import {type CheckPlan, nextCheck, startChecking} from '../../src/development/checks.ts';

/** A round every day at nine, save where it is closed. */
const rounds = (closed: readonly number[] = []) =>
  Array.from({length: 30}, (_, day) => day + 0.375).filter(round => !closed.includes(Math.floor(round)));

describe('startChecking', () => {
  test('is the last open round not after three days before one animal in twenty', () => {
    expect(startChecking(20, rounds())).toBe(16.375);
  });

  test('is the first round after closed days that lie before it, if that is a day before one in twenty still', () => {
    expect(startChecking(20, rounds([16, 15]))).toBe(17.375);
    expect(startChecking(20, rounds([15, 16, 17]))).toBe(18.375);
    expect(startChecking(20, rounds([15, 16, 17, 18]))).toBe(14.375);
  });

  test('is the first round of a lot whose adults are that near, and null where none are expected', () => {
    expect(startChecking(2, rounds())).toBe(0.375);
    expect(startChecking(null, rounds())).toBeNull();
    expect(startChecking(20, [])).toBeNull();
  });
});

describe('nextCheck', () => {
  const plan = (more: Partial<CheckPlan>): CheckPlan => ({
    startDays: 16.375,
    looksDays: [],
    roundsDays: rounds(),
    holdDays: 1,
    expectedBetween: (from, to) => Math.max(0, to - from),
    ...more,
  });

  test('is the start until somebody has looked since', () => {
    expect(nextCheck(plan({}))).toBe(16.375);
    expect(nextCheck(plan({looksDays: [10.4]}))).toBe(16.375);
  });

  test('is a hold time after the round last looked at, early or late', () => {
    expect(nextCheck(plan({looksDays: [17.35]}))).toBe(18.375);
    expect(nextCheck(plan({looksDays: [17.43]}))).toBe(18.375);
    expect(nextCheck(plan({looksDays: [17.375], holdDays: 3}))).toBe(20.375);
  });

  test('is sooner where more than 0.05 adults would wait too long', () => {
    const expectedBetween = (from: number, to: number) => (to > from ? 0.06 : 0);
    expect(nextCheck(plan({looksDays: [17.3], holdDays: 3, expectedBetween}))).toBe(19.375);
  });

  test('is before the room closes where no round is near enough, and the next round after such a look', () => {
    // Open from nine to five; the last look begins at half past four.
    const closesDays = rounds().map(round => round + 7.5 / 24);
    const short = {holdDays: 0.5, closesDays};
    expect(nextCheck(plan({looksDays: [17.375], ...short}))).toBeCloseTo(17 + 16.5 / 24, 9);
    expect(nextCheck(plan({looksDays: [17.375], ...short, holdDays: 0.25}))).toBeCloseTo(17.625, 9);
    expect(nextCheck(plan({looksDays: [17.375, 17.68], ...short, holdDays: 0.75}))).toBe(18.375);
    expect(nextCheck(plan({looksDays: [17.375, 17.68], ...short, holdDays: 0.1}))).toBe(18.375);
  });

  test('is the first open round after a closure that is longer', () => {
    expect(nextCheck(plan({looksDays: [17.375], roundsDays: rounds([18, 19])}))).toBe(20.375);
  });
});
