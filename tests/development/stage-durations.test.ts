import {describe, expect, it} from 'vitest';
import type {FoundingCohort, SeenAnimals} from '../../src/development/request.ts';
import {stageDurations} from '../../src/development/stage-durations.ts';

const cohort = (
  stages: Readonly<Record<string, number>>,
  more: Partial<FoundingCohort> = {},
): FoundingCohort => ({atDays: 0, stages, progress: [0, 1], ages: 'mixed', ...more});
const count = (atDays: number, stages: Readonly<Record<string, number>>): SeenAnimals => ({
  kind: 'count',
  atDays,
  stages,
  complete: true,
  entry: `e${atDays}`,
});
const out = (sinceDays: number, atDays: number, count: number): SeenAnimals => ({
  kind: 'emergence',
  sinceDays,
  atDays,
  count,
  entry: `x${atDays}`,
});

describe('stageDurations', () => {
  it('takes the days between which half of the animals entered and left a stage', () => {
    const seen = [
      count(4, {'larva-5': 10}),
      count(6, {'larva-5': 4, pupa: 6}),
      count(10, {pupa: 10}),
      out(14, 15, 3),
      out(15, 16, 7),
    ];
    // Half became pupae at 4 + 2·5/6, half were out at 15 + 2/7.
    expect(stageDurations([cohort({'larva-5': 10})], seen)).toEqual([
      {
        stage: 'pupa',
        fromDays: expect.closeTo(4 + 10 / 6, 9),
        toDays: expect.closeTo(15 + 2 / 7, 9),
        days: expect.closeTo(11 + 2 / 7 - 10 / 6, 9),
        looseDays: 1.5,
        animals: 10,
      },
    ]);
  });

  it('tells the first stage where the animals had just entered it', () => {
    const seen = [count(5, {egg: 20}), count(6, {'larva-1': 20})];
    const [egg] = stageDurations([cohort({egg: 20}, {progress: [0, 0.05]})], seen);
    expect(egg).toMatchObject({stage: 'egg', days: 5.5});
    expect(stageDurations([cohort({egg: 20})], seen)).toEqual([]);
  });

  it('tells nothing of a stage whose end nobody saw', () => {
    expect(stageDurations([cohort({egg: 9}, {progress: [0, 0]})], [count(3, {egg: 9})])).toEqual([]);
    expect(stageDurations([cohort({pupa: 9})], [])).toEqual([]);
  });

  it('tells instars apart nowhere where they once were not', () => {
    const seen = [count(2, {larva: 8}), count(6, {'larva-4': 8}), count(8, {pupa: 8})];
    const [larva] = stageDurations([cohort({'larva-1': 8}, {progress: [0, 0]})], seen);
    expect(larva).toMatchObject({stage: 'larva', fromDays: 0, toDays: 7});
  });

  it('reckons without those that were lost', () => {
    const seen: SeenAnimals[] = [
      count(2, {pupa: 10}),
      {kind: 'removal', atDays: 3, stage: 'pupa', count: 6, entry: 'l'},
      out(8, 9, 2),
      out(9, 10, 2),
    ];
    const [pupa] = stageDurations([cohort({pupa: 10}, {progress: [0, 0]})], seen);
    expect(pupa).toMatchObject({stage: 'pupa', toDays: 9, animals: 4});
  });
});
