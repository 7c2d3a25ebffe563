// Lots counted day by day: does a window of four in five hold four in five? Slow: runs only with TORTURE=1.
import {expect, test} from 'vitest';
import {forecastLot} from '../../src/development/forecast.ts';
import type {SeenAnimals} from '../../src/development/request.ts';
import {profileOf, requestOf, START, wave} from '../development/lots.ts';
import {dose, drawFrom, normal, Simulation} from '../development/simulated.ts';

const stages = [
  {name: 'larva-4', lower: 7, degreeDays: 60, cv: 0.1},
  {name: 'larva-5', lower: 7, degreeDays: 80, cv: 0.1},
  {name: 'pupa', lower: 7.5, degreeDays: 120, cv: 0.06},
];
const LOTS = 150;
const ANIMALS = 20;

test.runIf(process.env.TORTURE)(
  'after daily counts with single animals misjudged, the 80 per cent windows of first, half and last hold 70 to 90 per cent',
  () => {
    const course = wave(20, 4);
    const simulation = new Simulation(course);
    const draw = drawFrom(5);
    const start = START + 0.3;
    const held = {animal: 0, first: 0, half: 0, last: 0};
    let alike = 0;
    let leftOut = 0;
    for (let lot = 0; lot < LOTS; lot++) {
      const kind = {stages, paceSd: 0.1};
      const pace = Math.exp(0.1 * normal(draw));
      const animals = Array.from({length: ANIMALS}, () =>
        simulation.leaves(kind, pace, 0, start, dose(draw, stages[0]!) * (1 - draw()), draw),
      );
      const sightings: SeenAnimals[] = [];
      for (let day = 1; day <= 10; day++) {
        const at = start + day;
        const counts: Record<string, number> = {};
        for (const leaves of animals) {
          const stage = leaves.filter(instant => instant <= at).length;
          if (stage > 2) continue;
          let judged = stage;
          if (draw() < 0.02) judged = stage === 0 ? 1 : stage === 2 ? 1 : draw() < 0.5 ? 0 : 2;
          const name = stages[judged]!.name;
          counts[name] = (counts[name] ?? 0) + 1;
        }
        sightings.push({kind: 'count', atDays: at, stages: counts, complete: true, entry: `day ${day}`});
      }
      const out = animals.map(leaves => leaves.at(-1)!).sort((a, b) => a - b);
      if (out[0]! <= start + 10) continue;
      alike++;
      const cohort = {atDays: start, stages: {'larva-4': ANIMALS}, progress: [0, 1], ages: 'mixed'} as const;
      const forecast = forecastLot(
        requestOf([cohort], course, profileOf(stages), {sightings, nowDays: start + 10.1}),
      );
      leftOut += forecast.leftOut.length;
      const truth = {
        animal: out[Math.floor(draw() * ANIMALS)]!,
        first: out[0]!,
        half: out[ANIMALS / 2 - 1]!,
        last: out[Math.ceil(0.95 * ANIMALS) - 1]!,
      };
      for (const name of ['animal', 'first', 'half', 'last'] as const) {
        const {p10, p90} = forecast[name]!;
        if (p10! <= truth[name] && truth[name] <= p90!) held[name]++;
      }
    }
    const shares = Object.fromEntries(Object.entries(held).map(([name, n]) => [name, n / alike]));
    console.log(alike, 'lots', shares, 'counts left out', leftOut);
    for (const share of Object.values(shares)) {
      expect(share).toBeGreaterThan(0.7);
      expect(share).toBeLessThan(0.9);
    }
  },
  600_000,
);
