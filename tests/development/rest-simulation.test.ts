// Rest as it is learned, against lots played out animal by animal of which those are kept that look as was written.
import {expect, test} from 'vitest';
import {forecastLot} from '../../src/development/forecast.ts';
import type {SeenAnimals} from '../../src/development/request.ts';
import type {Profile} from '../../src/records/schema/index.ts';
import {profileOf, requestOf, START, wave} from './lots.ts';
import {dose, drawFrom, normal, quantile, type SimulatedStage, Simulation} from './simulated.ts';

const kind: readonly SimulatedStage[] = [
  {name: 'larva-5', lower: 7, degreeDays: 70, cv: 0.1},
  {name: 'pupa', lower: 7, degreeDays: 90, cv: 0.08},
];
const PACE_SD = 0.1;
const MISJUDGED = 0.02;
const start = START + 0.3;
const course = wave(20, 4, {days: 120});
/** 20 600 days after 1970 is 27 May. */
const MAY = 5;

interface History {
  readonly title: string;
  readonly stage: 'larva-5' | 'pupa';
  readonly animals: number;
  readonly chance: number;
  readonly lots: number;
  readonly seen: readonly SeenAnimals[];
}

const entry = 'e';
const emergence = (since: number, day: number, count: number): SeenAnimals => {
  return {kind: 'emergence', sinceDays: START + since, atDays: START + day, count, entry};
};
const check = (day: number): SeenAnimals => ({kind: 'check', atDays: START + day, entry});
const count = (day: number, stages: Record<string, number>): SeenAnimals => {
  return {kind: 'count', atDays: START + day, stages, complete: true, entry};
};

const histories: readonly History[] = [
  {
    title: 'some come out, the others stay',
    ...{stage: 'pupa', animals: 6, chance: 0.4, lots: 300_000},
    seen: [emergence(1, 4, 2), emergence(4, 7, 1)],
  },
  {
    title: 'none comes out while half were to',
    ...{stage: 'pupa', animals: 8, chance: 0.3, lots: 200_000},
    seen: [check(5)],
  },
  {
    title: 'some pupate, the others stay larvae',
    ...{stage: 'larva-5', animals: 8, chance: 0.5, lots: 200_000},
    seen: [count(6, {'larva-5': 4, pupa: 4})],
  },
];

const outcomes = (): Record<'animal' | 'first' | 'half' | 'last', number[]> => {
  return {animal: [], first: [], half: [], last: []};
};

/** What animals that are left do in the lots that were kept. */
function playedOut({stage, animals, chance, lots, seen}: History) {
  const draw = drawFrom(5);
  const simulation = new Simulation(course);
  const first = kind.findIndex(({name}) => name === stage);
  const kept = {lots: 0, resting: 0, left: 0, paces: [] as number[], ...outcomes()};
  for (let lot = 0; lot < lots; lot++) {
    // One lot in 1/chance mostly rests: a quarter of those that would go on elsewhere do there, and the other way round.
    const rests = draw() < chance ? 1 - (1 - chance) / 4 : chance / 4;
    const pace = Math.exp(PACE_SD * normal(draw));
    const all = Array.from({length: animals}, () => {
      if (draw() < rests) return [];
      const toGo = dose(draw, kind[first]!) * (1 - draw());
      return simulation.leaves({stages: kind, paceSd: PACE_SD}, pace, first, start, toGo, draw);
    });
    const emerges = all.map(leaves => leaves.at(-1) ?? Number.POSITIVE_INFINITY);
    const outBy = (day: number) => emerges.filter(at => at <= day).length;
    let out = 0;
    const agrees = seen.every(sighting => {
      if (sighting.kind === 'emergence') {
        if (outBy(sighting.sinceDays) !== out) return false;
        out += sighting.count;
      }
      if (outBy(sighting.atDays) !== out) return false;
      if (sighting.kind !== 'count') return true;
      const pupae = all.filter((leaves, i) => {
        if (emerges[i]! <= sighting.atDays) return false;
        const isPupa = first === 1 || (leaves[0] ?? Number.POSITIVE_INFINITY) <= sighting.atDays;
        return draw() < MISJUDGED ? !isPupa : isPupa;
      });
      return pupae.length === (sighting.stages.pupa ?? 0);
    });
    if (!agrees) continue;
    const inside = emerges.filter(at => at > seen.at(-1)!.atDays);
    kept.lots++;
    kept.paces.push(pace);
    kept.left += inside.length;
    kept.resting += inside.filter(at => at === Number.POSITIVE_INFINITY).length;
    const goingOn = inside.filter(Number.isFinite).sort((a, b) => a - b);
    kept.animal.push(...goingOn);
    if (goingOn.length === 0) continue;
    kept.first.push(goingOn[0]!);
    kept.half.push(goingOn[Math.ceil(goingOn.length / 2) - 1]!);
    kept.last.push(goingOn[Math.ceil(0.95 * goingOn.length - 1e-9) - 1]!);
  }
  for (const values of [kept.paces, kept.animal, kept.first, kept.half, kept.last])
    values.sort((a, b) => a - b);
  return kept;
}

test.each(histories)('forecastLot learns of rest as lots played out show: $title', history => {
  const {stage, animals, chance, seen} = history;
  const kept = playedOut(history);
  expect(kept.lots).toBeGreaterThan(1500);
  const diapause = [{stage, months: [MAY], chance, source: 'a'}];
  const profile: Profile = {...profileOf(kind, {paceSd: PACE_SD, survival: 1}), diapause};
  const emerged = seen.reduce((n, sighting) => n + (sighting.kind === 'emergence' ? sighting.count : 0), 0);
  const told = forecastLot(
    requestOf(
      [{atDays: start, stages: {[stage]: animals}, progress: [0, 1], ages: 'mixed'}],
      course,
      profileOf(kind),
      {
        candidates: [{profile, weight: 1}],
        sightings: seen,
        looksDays: seen.map(({atDays}) => atDays),
        alive: animals - emerged,
        nowDays: seen.at(-1)!.atDays,
      },
    ),
  );
  const {rest, pace} = told;
  expect(rest.atFirst).toBeCloseTo(chance, 9);
  expect(Math.abs(rest.chance - kept.resting / kept.left)).toBeLessThan(0.02);
  expect(Math.abs(pace!.p50 - quantile(kept.paces, 0.5))).toBeLessThan(0.02);
  // Where most rest no date is given.
  if (rest.chance >= 0.5) expect(told.animal.p50).toBeNull();
  else
    for (const name of ['animal', 'first', 'half', 'last'] as const)
      for (const [point, at] of Object.entries(told[name]!)) {
        const played = quantile(kept[name], Number(point.slice(1)) / 100);
        expect(Math.abs(at! - played), `${name}.${point}`).toBeLessThan(0.2);
      }
});
