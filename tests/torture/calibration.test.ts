// Lots of a hidden kind and pace, looked at as people do: does a window of four in five hold four in five, do windows
// shrink, does the true candidate gain? Slow: runs only with TORTURE=1.
import {expect, test} from 'vitest';
import {forecastLot} from '../../src/development/forecast.ts';
import type {SeenAnimals} from '../../src/development/request.ts';
import {profileOf, requestOf, START, wave} from '../development/lots.ts';
import {
  type Draw,
  dose,
  drawFrom,
  normal,
  type SimulatedStage,
  Simulation,
} from '../development/simulated.ts';

const PACE_SD = 0.1;
const kinds: readonly (readonly SimulatedStage[])[] = [
  [
    {name: 'larva-4', lower: 7, degreeDays: 60, cv: 0.1},
    {name: 'larva-5', lower: 7, degreeDays: 80, cv: 0.1},
    {name: 'pupa', lower: 7.5, degreeDays: 120, cv: 0.06},
  ],
  [
    {name: 'larva-4', lower: 9, degreeDays: 75, cv: 0.12},
    {name: 'larva-5', lower: 9, degreeDays: 90, cv: 0.12},
    {name: 'pupa', lower: 8, degreeDays: 180, cv: 0.08},
  ],
  [
    {name: 'larva-4', lower: 5, degreeDays: 90, cv: 0.08},
    {name: 'larva-5', lower: 5, degreeDays: 130, cv: 0.1},
    {name: 'pupa', lower: 6, degreeDays: 140, cv: 0.1},
  ],
];
const LOTS = Number(process.env.TORTURE_LOTS ?? 300);
const course = wave(19, 5, {days: 200});
const start = START + 0.3;
const STATISTICS = ['animal', 'first', 'half', 'last'] as const;

interface Tally {
  n: number;
  width: number;
  weight: number;
  readonly held: Record<(typeof STATISTICS)[number], number>;
}

interface Lot {
  readonly kind: number;
  readonly animals: readonly (readonly number[])[];
}

function judgedStage(stage: number, draw: Draw): number {
  if (draw() >= 0.02) return stage;
  return stage === 0 ? 1 : stage === 2 ? 1 : draw() < 0.5 ? 0 : 2;
}

/** What a person writes who looks at these days: a count while none is out, then what came out since the look before. */
function seenOf({animals}: Lot, days: readonly number[], countEach: number, draw: Draw): SeenAnimals[] {
  let out = 0;
  let since = start;
  return days.flatMap((day, i): SeenAnimals[] => {
    const at = start + day;
    const entry = `day ${day}`;
    const seen: SeenAnimals[] = [];
    const gone = animals.filter(leaves => leaves.at(-1)! <= at).length;
    if (gone > out) seen.push({kind: 'emergence', sinceDays: since, atDays: at, count: gone - out, entry});
    out = gone;
    since = at;
    if (i % countEach === 0 && gone < animals.length) {
      const stages: Record<string, number> = {};
      for (const leaves of animals) {
        const stage = leaves.filter(leave => leave <= at).length;
        if (stage > 2) continue;
        const name = kinds[0]![judgedStage(stage, draw)]!.name;
        stages[name] = (stages[name] ?? 0) + 1;
      }
      seen.push({kind: 'count', atDays: at, stages, complete: true, entry});
    } else if (seen.length === 0) seen.push({kind: 'check', atDays: at, entry});
    return seen;
  });
}

const rhythms = [
  {title: 'every third day', animals: 12, days: [3, 6, 9, 12, 15], countEach: 1, seed: 5},
  {
    title: 'every day for two weeks',
    animals: 20,
    days: Array.from({length: 14}, (_, i) => i + 1),
    countEach: 1,
    seed: 6,
  },
  {title: 'a count, then checks', animals: 8, days: [4, 12, 14, 16, 18], countEach: 9, seed: 7},
];

test.runIf(process.env.TORTURE).each(rhythms)(
  'looked at $title, windows of 80 per cent hold 75 to 85, shrink, and the true candidate gains',
  ({title, animals: number, days, countEach, seed}) => {
    const draw = drawFrom(seed);
    const simulation = new Simulation(course);
    const moments = [0, 1, Math.ceil(days.length / 2), days.length];
    const tallies = moments.map(
      (): Tally => ({n: 0, width: 0, weight: 0, held: {animal: 0, first: 0, half: 0, last: 0}}),
    );
    let leftOut = 0;
    let milliseconds = 0;
    for (let lot = 0; lot < LOTS; lot++) {
      const kind = Math.floor(draw() * kinds.length);
      const pace = Math.exp(PACE_SD * normal(draw));
      const stages = kinds[kind]!;
      const animals = Array.from({length: number}, () =>
        simulation.leaves(
          {stages, paceSd: PACE_SD},
          pace,
          0,
          start,
          dose(draw, stages[0]!) * (1 - draw()),
          draw,
        ),
      );
      const seen = seenOf({kind, animals}, days, countEach, draw);
      const out = animals.map(leaves => leaves.at(-1)!).sort((a, b) => a - b);
      moments.forEach((looks, m) => {
        const now = looks === 0 ? start : start + days[looks - 1]!;
        const left = out.filter(at => at > now);
        if (left.length === 0) return;
        const sightings = seen.filter(({atDays}) => atDays <= now);
        const begun = performance.now();
        const forecast = forecastLot(
          requestOf(
            [{atDays: start, stages: {'larva-4': number}, progress: [0, 1], ages: 'mixed'}],
            course,
            profileOf(kinds[0]!),
            {
              candidates: kinds.map((of, i) => ({profile: profileOf(of, {code: `kind-${i}`}), weight: 1})),
              sightings,
              looksDays: sightings.map(({atDays}) => atDays),
              nowDays: now,
              alive: left.length,
              dayBoundsDays: [],
            },
          ),
        );
        milliseconds += performance.now() - begun;
        const truth = {
          animal: left[Math.floor(draw() * left.length)]!,
          first: left[0]!,
          half: left[Math.ceil(left.length / 2) - 1]!,
          last: left[Math.ceil(0.95 * left.length - 1e-9) - 1]!,
        };
        const tally = tallies[m]!;
        tally.n++;
        tally.width += forecast.half!.p90! - forecast.half!.p10!;
        tally.weight += forecast.candidates[kind]!.weight;
        if (m === 3) leftOut += forecast.leftOut.length;
        for (const name of STATISTICS)
          if (forecast[name]!.p10! <= truth[name] && truth[name] <= forecast[name]!.p90!) tally.held[name]++;
      });
    }
    const shares = tallies.map(({n, width, weight, held}, m) => ({
      looks: moments[m],
      n,
      width: width / n,
      weight: weight / n,
      held: STATISTICS.map(name => held[name] / n),
    }));
    console.log(
      title,
      `${(milliseconds / (LOTS * moments.length)).toFixed(1)} ms a forecast, ${leftOut} counts left out\n`,
      shares
        .map(
          ({looks, n, width, weight, held}) =>
            `${looks} looks, ${n} lots: ${STATISTICS.map((name, i) => `${name} ${held[i]!.toFixed(3)}`).join(' ')}, half ${width.toFixed(2)} d wide, true kind ${weight.toFixed(3)}`,
        )
        .join('\n'),
    );
    shares.forEach(({n, width, weight, held}, m) => {
      // Three standard errors of what a share of so many lots says.
      const error = 3 * Math.sqrt((0.8 * 0.2) / n);
      for (const share of held) expect(Math.abs(share - 0.8)).toBeLessThan(0.03 + error);
      expect(held.reduce((a, b) => a + b, 0) / held.length).toBeGreaterThan(0.75);
      expect(held.reduce((a, b) => a + b, 0) / held.length).toBeLessThan(0.85);
      if (m === 0) return;
      expect(width).toBeLessThan(shares[m - 1]!.width);
      expect(weight).toBeGreaterThan(shares[m - 1]!.weight - 0.01);
    });
  },
  1_200_000,
);
