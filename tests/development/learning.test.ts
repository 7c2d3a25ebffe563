// What was seen, weighed, against lots played out and kept only where they look the same.
import {describe, expect, test} from 'vitest';
import type {LotForecast} from '../../src/development/answer.ts';
import {forecastLot} from '../../src/development/forecast.ts';
import type {SeenAnimals} from '../../src/development/request.ts';
import {profileOf, requestOf, START, wave} from './lots.ts';
import {dose, drawFrom, normal, quantile, type SimulatedStage, Simulation} from './simulated.ts';

const kind: readonly SimulatedStage[] = [
  {name: 'larva-4', lower: 7, degreeDays: 60, cv: 0.1},
  {name: 'larva-5', lower: 7, degreeDays: 80, cv: 0.1},
  {name: 'pupa', lower: 7.5, degreeDays: 120, cv: 0.06},
];
const course = wave(20, 4, {days: 120});
const start = START + 0.3;

const count = (day: number, stages: Record<string, number>): SeenAnimals => ({
  kind: 'count',
  atDays: START + day,
  stages,
  complete: true,
  entry: `count on day ${day}`,
});
const check = (day: number): SeenAnimals => ({
  kind: 'check',
  atDays: START + day,
  entry: `check on day ${day}`,
});
const emergence = (since: number, day: number, n: number): SeenAnimals => ({
  kind: 'emergence',
  sinceDays: START + since,
  atDays: START + day,
  count: n,
  entry: `emergence on day ${day}`,
});

interface Kept {
  readonly paces: number[];
  readonly animal: number[];
  readonly first: number[];
  readonly last: number[];
}

/** Lots of so many animals in one stage, kept where every sighting comes out the same, single animals misjudged. */
function keptLots(lots: number, stage: number, animals: number, seen: readonly SeenAnimals[]): Kept {
  const draw = drawFrom(11);
  const simulation = new Simulation(course);
  const kept: Kept = {paces: [], animal: [], first: [], last: []};
  const judged = (is: number) => {
    if (draw() >= 0.02) return is;
    return is === 1 ? (draw() < 0.5 ? 0 : 2) : 1;
  };
  const looksAlike = (leaves: readonly number[][], sighting: SeenAnimals): boolean => {
    const outBy = (day: number) => leaves.filter(instants => instants.at(-1)! <= day).length;
    switch (sighting.kind) {
      case 'count': {
        if (outBy(sighting.atDays) > 0) return false;
        const counts: Record<string, number> = {};
        for (const instants of leaves) {
          const {name} = kind[judged(stage + instants.filter(at => at <= sighting.atDays).length)]!;
          counts[name] = (counts[name] ?? 0) + 1;
        }
        return kind.every(({name}) => (counts[name] ?? 0) === (sighting.stages[name] ?? 0));
      }
      case 'check':
        return outBy(sighting.atDays) === 0;
      case 'emergence':
        return outBy(sighting.sinceDays) === 0 && outBy(sighting.atDays) === sighting.count;
      case 'removal':
      case 'merge':
        return true;
    }
  };
  for (let lot = 0; lot < lots; lot++) {
    const pace = Math.exp(0.1 * normal(draw));
    const leaves = Array.from({length: animals}, () =>
      simulation.leaves(
        {stages: kind, paceSd: 0.1},
        pace,
        stage,
        start,
        dose(draw, kind[stage]!) * (1 - draw()),
        draw,
      ),
    );
    if (!seen.every(sighting => looksAlike(leaves, sighting))) continue;
    const lastSeen = seen.at(-1)!.atDays;
    const left = leaves.map(instants => instants.at(-1)!).filter(out => out > lastSeen);
    left.sort((a, b) => a - b);
    kept.paces.push(pace);
    kept.animal.push(left[Math.floor(draw() * left.length)]!);
    kept.first.push(left[0]!);
    kept.last.push(left[Math.ceil(0.95 * left.length) - 1]!);
  }
  for (const numbers of [kept.paces, kept.animal, kept.first, kept.last]) numbers.sort((a, b) => a - b);
  return kept;
}

function learned(stage: string, animals: number, seen: readonly SeenAnimals[]): LotForecast {
  const emerged = seen.reduce(
    (sum, sighting) => sum + (sighting.kind === 'emergence' ? sighting.count : 0),
    0,
  );
  const cohort = {atDays: start, stages: {[stage]: animals}, progress: [0, 1], ages: 'mixed'} as const;
  return forecastLot(
    requestOf([cohort], course, profileOf(kind), {
      sightings: seen,
      looksDays: seen.map(({atDays}) => atDays),
      alive: animals - emerged,
      nowDays: START + 14,
    }),
  );
}

const histories = [
  {
    title: 'one count',
    stage: 0,
    animals: 6,
    lots: 60_000,
    near: 0.2,
    seen: [count(3, {'larva-4': 3, 'larva-5': 3})],
  },
  {
    title: 'two counts and an empty check',
    stage: 1,
    animals: 4,
    lots: 150_000,
    near: 0.45,
    seen: [count(4, {'larva-5': 3, pupa: 1}), count(7, {'larva-5': 1, pupa: 3}), check(12)],
  },
  {
    title: 'a count and an emergence',
    stage: 1,
    animals: 4,
    lots: 100_000,
    near: 0.45,
    seen: [count(4, {'larva-5': 2, pupa: 2}), emergence(10, 12, 1)],
  },
];

test.each(histories)('forecastLot weighs $title as lots that look the same would', history => {
  const {stage, animals, lots, near, seen} = history;
  const kept = keptLots(lots, stage, animals, seen);
  const forecast = learned(kind[stage]!.name, animals, seen);
  expect(kept.paces.length).toBeGreaterThan(1000);
  for (const name of ['animal', 'first', 'last'] as const)
    for (const point of ['p10', 'p50', 'p90'] as const) {
      const played = quantile(kept[name], Number(point.slice(1)) / 100);
      expect(Math.abs(forecast[name]![point]! - played), `${name}.${point}`).toBeLessThan(near);
    }
  for (const point of ['p10', 'p50', 'p90'] as const)
    expect(forecast.pace![point]).toBeCloseTo(quantile(kept.paces, Number(point.slice(1)) / 100), 1.5);
});

describe('what was seen', () => {
  test('an empty check moves every adult behind it', () => {
    const {animal, first} = learned('pupa', 5, [check(9)]);
    expect(animal.p05).toBeGreaterThan(START + 9);
    expect(first!.p10).toBeGreaterThan(START + 9);
  });

  test('adults that are out are not expected again', () => {
    const {expected, perDay} = learned('pupa', 5, [check(3), emergence(3, 5, 2)]);
    expect(expected).toBeCloseTo(3, 3);
    expect(perDay.every(({toDays}) => toDays >= START + 5)).toBe(true);
  });

  test('a count that cannot well be true is left out and named, and the others still count', () => {
    const seen = [count(2, {'larva-4': 12}), count(3, {pupa: 12}), count(4, {'larva-4': 9, 'larva-5': 3})];
    const {leftOut, assumptions} = learned('larva-4', 12, seen);
    expect(leftOut).toEqual(['count on day 3']);
    expect(assumptions.join(' ')).toContain('left out');
    const without = learned(
      'larva-4',
      12,
      [check(3), ...seen].filter(({entry}) => !leftOut.includes(entry)).sort((a, b) => a.atDays - b.atDays),
    );
    expect(learned('larva-4', 12, seen).animal.p50).toBeCloseTo(without.animal.p50!, 6);
  });

  test('what no candidate can explain is said, and the dates are those of the start', () => {
    const {assumptions, animal} = learned('larva-4', 5, [emergence(0.4, 0.5, 1)]);
    expect(assumptions[0]).toContain('Nothing explains');
    expect(animal.p50).not.toBeNull();
  });

  test('candidates are weighed by what was seen', () => {
    const slow = profileOf(
      kind.map(stage => ({...stage, degreeDays: 2 * stage.degreeDays})),
      {code: 'slow'},
    );
    const cohort = {atDays: start, stages: {'larva-4': 10}, progress: [0, 1], ages: 'mixed'} as const;
    const ask = (seen: readonly SeenAnimals[]) =>
      forecastLot(
        requestOf([cohort], course, profileOf(kind), {
          candidates: [
            {profile: profileOf(kind, {code: 'quick'}), weight: 1},
            {profile: slow, weight: 1},
          ],
          sightings: seen,
          nowDays: START + 5,
        }),
      ).candidates.map(({weight}) => weight);
    expect(ask([])).toEqual([expect.closeTo(0.5, 9), expect.closeTo(0.5, 9)]);
    expect(ask([count(4, {'larva-5': 9, 'larva-4': 1})])[0]).toBeGreaterThan(0.9);
    expect(ask([count(4, {'larva-5': 3, 'larva-4': 7})])[1]).toBeGreaterThan(0.6);
  });

  test('a lot looked at beyond its time is late', () => {
    const {status, notOut} = learned('pupa', 5, [check(13.9)]);
    expect(status).toBe('late');
    expect(notOut!.late + notOut!.diapause + notOut!.dead).toBeCloseTo(1, 9);
  });

  test('a brood counted together shares its age: half moulted says that all are half through', () => {
    const ask = (ages: 'mixed' | 'one-brood') => {
      const cohort = {atDays: start, stages: {'larva-4': 16}, progress: [0, 1], ages} as const;
      const {first, last} = forecastLot(
        requestOf([cohort], course, profileOf(kind), {
          sightings: [count(3, {'larva-4': 8, 'larva-5': 8})],
          nowDays: START + 4,
        }),
      );
      return last!.p50! - first!.p50!;
    };
    expect(ask('one-brood')).toBeLessThan(0.8 * ask('mixed'));
  });
});
