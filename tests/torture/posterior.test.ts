// What was learned against lots played out animal by animal, each weighed by how likely it is to look as was written.
// Slow: runs only with TORTURE=1.
import {expect, test} from 'vitest';
import {forecastLot} from '../../src/development/forecast.ts';
import type {SeenAnimals} from '../../src/development/request.ts';
import {profileOf, requestOf, START, wave} from '../development/lots.ts';
import {dose, drawFrom, normal, type SimulatedStage, Simulation} from '../development/simulated.ts';

const kind: readonly SimulatedStage[] = [
  {name: 'larva-4', lower: 7, degreeDays: 60, cv: 0.1},
  {name: 'larva-5', lower: 7, degreeDays: 80, cv: 0.1},
  {name: 'pupa', lower: 7.5, degreeDays: 120, cv: 0.06},
];
const course = wave(20, 4, {days: 120});
const start = START + 0.3;
const PACE_SD = 0.1;
const MISJUDGED = 0.02;
const WORTHLESS = 0.02;

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

interface History {
  readonly title: string;
  readonly founders: readonly number[];
  readonly lots: number;
  readonly seen: readonly SeenAnimals[];
}

const histories: readonly History[] = [
  {
    title: 'one count of six',
    founders: [6, 0, 0],
    lots: 400_000,
    seen: [count(3, {'larva-4': 3, 'larva-5': 3})],
  },
  {
    title: 'two counts and an empty check of four',
    founders: [0, 4, 0],
    lots: 1_500_000,
    seen: [count(4, {'larva-5': 3, pupa: 1}), count(7, {'larva-5': 1, pupa: 3}), check(12)],
  },
  {
    title: 'a count and an emergence of four',
    founders: [0, 4, 0],
    lots: 1_500_000,
    seen: [count(4, {'larva-5': 2, pupa: 2}), emergence(10, 12, 1)],
  },
  {
    title: 'three counts, an empty check and an emergence of four',
    founders: [0, 4, 0],
    lots: 3_000_000,
    seen: [
      count(3, {'larva-5': 3, pupa: 1}),
      count(5, {'larva-5': 2, pupa: 2}),
      count(8, {pupa: 4}),
      check(11),
      emergence(11, 13, 1),
    ],
  },
  {
    title: 'three counts of twelve in two stages',
    founders: [7, 5, 0],
    lots: 1_500_000,
    seen: [
      count(2, {'larva-4': 5, 'larva-5': 6, pupa: 1}),
      count(5, {'larva-4': 1, 'larva-5': 7, pupa: 4}),
      count(8, {'larva-5': 4, pupa: 8}),
    ],
  },
  {
    title: 'a count that goes back on another',
    founders: [0, 4, 0],
    lots: 2_000_000,
    seen: [count(3, {'larva-5': 2, pupa: 2}), count(5, {'larva-5': 3, pupa: 1})],
  },
];

/** The chance that animals in these stages are judged to come to these numbers: every animal one after the other. */
function judgedChance(stages: readonly number[], wanted: readonly number[]): number {
  let ways = new Map<number, number>([[0, 1]]);
  const code = [1, 64, 4096];
  for (const stage of stages) {
    const next = new Map<number, number>();
    for (const [numbers, chance] of ways)
      for (let judged = 0; judged < 3; judged++) {
        const beside = stage === 1 ? MISJUDGED / 2 : MISJUDGED;
        const p = judged === stage ? 1 - MISJUDGED : Math.abs(judged - stage) === 1 ? beside : 0;
        const so = Math.floor(numbers / code[judged]!) % 64;
        if (p > 0 && so < wanted[judged]!)
          next.set(numbers + code[judged]!, (next.get(numbers + code[judged]!) ?? 0) + chance * p);
      }
    ways = next;
  }
  return ways.get(wanted.reduce((sum, n, i) => sum + n * code[i]!, 0)) ?? 0;
}

function choose(n: number, k: number): number {
  let ways = 1;
  for (let i = 1; i <= k; i++) ways = (ways * (n - k + i)) / i;
  return ways;
}

type Name = 'pace' | 'animal' | 'first' | 'half' | 'last';
type Weighed = Record<Name, [value: number, weight: number][]>;

function playedOut({founders, lots, seen}: History): {weighed: Weighed; worth: number} {
  const draw = drawFrom(11);
  const simulation = new Simulation(course);
  const weighed: Weighed = {pace: [], animal: [], first: [], half: [], last: []};
  let [sum, squares] = [0, 0];
  for (let lot = 0; lot < lots; lot++) {
    const pace = Math.exp(PACE_SD * normal(draw));
    const animals = founders.flatMap((n, stage) =>
      Array.from({length: n}, () => ({
        stage,
        leaves: simulation.leaves(
          {stages: kind, paceSd: PACE_SD},
          pace,
          stage,
          start,
          dose(draw, kind[stage]!) * (1 - draw()),
          draw,
        ),
      })),
    );
    const outAt = animals.map(({leaves}) => leaves.at(-1)!);
    const outBy = (day: number) => outAt.filter(at => at <= day).length;
    let weight = 1;
    let out = 0;
    for (const sighting of seen) {
      const {atDays} = sighting;
      if (sighting.kind === 'emergence') {
        if (outBy(sighting.sinceDays) !== out) weight = 0;
        out += sighting.count;
      }
      if (outBy(atDays) !== out) weight = 0;
      if (weight === 0) break;
      if (sighting.kind === 'count') {
        const stages = animals.flatMap(({stage, leaves}) => {
          const now = stage + leaves.filter(at => at <= atDays).length;
          return now < 3 ? [now] : [];
        });
        const wanted = kind.map(({name}) => sighting.stages[name] ?? 0);
        const n = stages.length;
        weight *= (1 - WORTHLESS) * judgedChance(stages, wanted) + WORTHLESS / choose(n + 3, 3);
      }
    }
    if (weight === 0) continue;
    sum += weight;
    squares += weight * weight;
    const left = outAt.sort((a, b) => a - b).slice(out);
    weighed.pace.push([pace, weight]);
    for (const at of left) weighed.animal.push([at, weight / left.length]);
    weighed.first.push([left[0]!, weight]);
    weighed.half.push([left[Math.ceil(left.length / 2) - 1]!, weight]);
    weighed.last.push([left[Math.ceil(0.95 * left.length - 1e-9) - 1]!, weight]);
  }
  for (const values of Object.values(weighed)) values.sort((a, b) => a[0] - b[0]);
  return {weighed, worth: (sum * sum) / squares};
}

function quantileOf(values: readonly (readonly [number, number])[], chance: number): number {
  const whole = values.reduce((sum, [, weight]) => sum + weight, 0);
  let below = 0;
  for (const [value, weight] of values) {
    below += weight;
    if (below >= chance * whole) return value;
  }
  return Number.NaN;
}

test.runIf(process.env.TORTURE).each(histories)(
  'forecastLot weighs $title as weighed lots do: dates within 0.2 days, the median pace within 0.02',
  history => {
    const {founders, seen} = history;
    const {weighed, worth} = playedOut(history);
    const emerged = seen.reduce((n, sighting) => n + (sighting.kind === 'emergence' ? sighting.count : 0), 0);
    const stages = Object.fromEntries(
      founders.flatMap((n, stage) => (n > 0 ? [[kind[stage]!.name, n]] : [])),
    );
    const forecast = forecastLot(
      requestOf([{atDays: start, stages, progress: [0, 1], ages: 'mixed'}], course, profileOf(kind), {
        sightings: seen,
        looksDays: seen.map(({atDays}) => atDays),
        alive: founders.reduce((a, b) => a + b, 0) - emerged,
        nowDays: seen.at(-1)!.atDays,
      }),
    );
    expect(worth).toBeGreaterThan(1500);
    const off: Record<string, number> = {};
    for (const name of ['pace', 'animal', 'first', 'half', 'last'] as const)
      for (const point of ['p10', 'p50', 'p90'] as const)
        off[`${name}.${point}`] =
          forecast[name]![point]! - quantileOf(weighed[name], Number(point.slice(1)) / 100);
    console.log(
      history.title,
      `worth ${worth.toFixed(0)} lots`,
      Object.entries(off)
        .map(([name, by]) => `${name} ${by.toFixed(3)}`)
        .join(', '),
    );
    expect(Math.abs(off['pace.p50']!)).toBeLessThan(0.02);
    for (const [name, by] of Object.entries(off)) expect(Math.abs(by), name).toBeLessThan(0.2);
  },
  600_000,
);
