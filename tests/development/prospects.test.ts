import {describe, expect, test} from 'vitest';
import {classesOf} from '../../src/development/founders.ts';
import {membersOf} from '../../src/development/members.ts';
import {prospectsOf} from '../../src/development/prospects.ts';
import {expectedLines} from '../../src/development/scenario.ts';
import {ADULT, stageShares} from '../../src/development/stage-shares.ts';
import {later, sharesIn} from '../../src/development/standing.ts';
import {profileOf, START, wave} from './lots.ts';

const course = wave(19, 4, {days: 120});
const alike = [
  {name: 'larva', lower: 8, degreeDays: 120, cv: 0.1},
  {name: 'pupa', lower: 8, degreeDays: 110, cv: 0.08},
];
const unlike = [
  {name: 'larva-4', lower: 7, degreeDays: 60, cv: 0.12},
  {name: 'larva-5', lower: 9, degreeDays: 80, cv: 0.1},
  {name: 'pupa', lower: 10.5, degreeDays: 110, cv: 0.08},
];
const instants = [0, 3, 8.4, 14, 21.7, 30, 60].map(days => START + days);

function linesOf(stages: typeof alike, found: Record<string, number>, laterFound?: Record<string, number>) {
  const cohort = (days: number, stages: Record<string, number>) => ({
    atDays: START + days,
    stages,
    progress: [0, 1] as const,
    ages: 'mixed' as const,
  });
  const cohorts = [cohort(0, found), ...(laterFound ? [cohort(5, laterFound)] : [])];
  const classes = classesOf(cohorts, false);
  const {members} = membersOf([{profile: profileOf(stages), weight: 1}], classes, course);
  return members.flatMap(member => expectedLines(member, classes, START));
}

describe('prospects', () => {
  test.each([
    ['stages that count alike', linesOf(alike, {larva: 12})],
    ['stages with thresholds of their own', linesOf(unlike, {'larva-4': 7, 'larva-5': 5})],
    ['animals that joined later', linesOf(unlike, {'larva-4': 7}, {'larva-5': 5, pupa: 2})],
  ])('say of %s in which stage they are, as animals carried to that instant are', (_, lines) => {
    const prospects = prospectsOf(lines, [], instants);
    for (const {points} of lines)
      for (const point of points) {
        const {tempo, classes} = point;
        instants.forEach((atDays, instant) => {
          const animals = prospects.get(point)!.stages[instant]!;
          const carried = tempo.chain.stages.map(() => 0);
          for (const {count, standing} of classes)
            if (standing.atDays <= atDays)
              sharesIn(tempo, later(tempo, standing, atDays)).forEach((share, stage) => {
                carried[stage] = carried[stage]! + count * share;
              });
          carried.forEach((expected, stage) => {
            expect(Math.abs(animals[stage]! - expected)).toBeLessThan(0.03);
          });
        });
      }
  });

  test('account for every animal that has joined', () => {
    const lines = linesOf(unlike, {'larva-4': 7}, {'larva-5': 5, pupa: 2});
    const prospects = prospectsOf(lines, [], instants);
    for (const {stages} of prospects.values())
      instants.forEach((atDays, instant) => {
        const all = stages[instant]!.reduce((sum, animals) => sum + animals, 0);
        expect(all).toBeCloseTo(atDays < START + 5 ? 7 : 14, 3);
      });
  });

  test('leave nobody inside in the end, and nobody out at first', () => {
    const lines = linesOf(unlike, {'larva-4': 7});
    const prospects = prospectsOf(lines, [], instants);
    expect(stageShares(lines, prospects, 0)).toEqual({'larva-4': 1});
    expect(stageShares(lines, prospects, instants.length - 1)[ADULT]).toBeGreaterThan(0.999);
  });
});
