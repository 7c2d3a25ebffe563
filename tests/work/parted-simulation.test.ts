// Lots that are split, merged and moved, played out animal by animal: the windows hold what they say.
import {expect, test} from 'vitest';
import type {LotForecast, Window} from '../../src/development/answer.ts';
import type {Temperatures} from '../../src/development/dose-course.ts';
import {forecastLot} from '../../src/development/forecast.ts';
import {MS_PER_DAY} from '../../src/records/entry.ts';
import {fold} from '../../src/records/fold.ts';
import {lineOf} from '../../src/records/lineage.ts';
import {total} from '../../src/records/stage.ts';
import type {Lot} from '../../src/records/state.ts';
import {seenInDays} from '../../src/work/cases.ts';
import {profileOf, requestOf} from '../development/lots.ts';
import {dose, drawFrom, normal, type SimulatedStage, Simulation} from '../development/simulated.ts';
import {at, day, daybook, lot, sample, unit, type Written} from '../records/daybook-of.ts';

const kind: readonly SimulatedStage[] = [
  {name: 'larva-4', lower: 7, degreeDays: 60, cv: 0.1},
  {name: 'larva-5', lower: 7, degreeDays: 80, cv: 0.1},
  {name: 'pupa', lower: 7.5, degreeDays: 120, cv: 0.06},
];
const slow = kind.map(stage => ({...stage, degreeDays: 1.4 * stage.degreeDays}));
const PACE_SD = 0.1;
const MISJUDGED = 0.02;
const LOTS = process.env.TORTURE ? 3000 : 400;
const AHEAD_DAYS = 120;
const begins = at(0) / MS_PER_DAY;

/** The warm unit and the cool one. */
const MEAN_C: Readonly<Record<string, number>> = {C1: 17, C2: 25};

/** What is lived through in units by time, a daily wave in each. */
const livedThrough = kept(
  (stays: readonly {readonly unit: string; readonly fromDay: number}[]): Temperatures => {
    const hours = Array.from({length: AHEAD_DAYS * 24 + 1}, (_, hour) => hour / 24);
    const moves = stays.slice(1).flatMap(({fromDay}) => [fromDay - 1e-6, fromDay]);
    const days = [...new Set([...hours, ...moves])].filter(each => each >= 0).sort((a, b) => a - b);
    const inUnit = (each: number) => (stays.findLast(({fromDay}) => fromDay <= each) ?? stays[0]!).unit;
    return {
      atDays: Float64Array.from(days, each => begins + each),
      temperatureC: Float64Array.from(days, each => MEAN_C[inUnit(each)]! + 3 * Math.sin(2 * Math.PI * each)),
    };
  },
);

function kept<Of, Made>(make: (of: Of) => Made): (of: Of) => Made {
  const made = new Map<string, Made>();
  return of => {
    const name = JSON.stringify(of);
    const known = made.get(name) ?? make(of);
    made.set(name, known);
    return known;
  };
}

const simulationOf = kept((stays: Parameters<typeof livedThrough>[0]) => new Simulation(livedThrough(stays)));

const courseOf = (stays: Lot['stays']): Temperatures =>
  livedThrough(stays.map(({unit: code, from}) => ({unit: code, fromDay: from / MS_PER_DAY - begins})));

function forecast(code: string, asOf: number, written: readonly Written[]): LotForecast {
  const state = fold(daybook(unit('C1'), unit('C2'), sample(), ...written), at(asOf, '09:30'));
  const found = state.lots.get(code)!;
  const line = lineOf(found, state.lots);
  return forecastLot({
    ...requestOf([], {atDays: new Float64Array(), temperatureC: new Float64Array()}, profileOf(kind)),
    lot: code,
    cohorts: line.cohorts.map(cohort => ({...cohort, atDays: cohort.at / MS_PER_DAY})),
    candidates: [kind, slow].map((stages, i) => ({
      profile: profileOf(stages, {paceSd: PACE_SD, code: `kind ${i}`}),
      weight: 0.5,
    })),
    course: courseOf(line.stays),
    elsewhere: new Map(line.elsewhere.map(([other, stays]) => [other, courseOf(stays)])),
    nowDays: at(asOf, '09:30') / MS_PER_DAY,
    alive: total(found.alive),
    sightings: line.sightings.map(seenInDays),
    looksDays: line.looks.map(look => look / MS_PER_DAY),
    roundsDays: [],
    dayBoundsDays: [],
  });
}

/** An animal: when it leaves each stage, wherever it lives. Until it is moved it does the same in any life. */
type Animal = (stays: Parameters<typeof livedThrough>[0]) => readonly number[];

function animalsOf(
  count: number,
  pace: number,
  stages: readonly SimulatedStage[],
  draw: () => number,
): Animal[] {
  return Array.from({length: count}, () => {
    const toGo = dose(draw, stages[0]!) * (1 - draw());
    const seed = Math.floor(draw() * 2 ** 31);
    return stays =>
      simulationOf(stays)
        .leaves({stages, paceSd: PACE_SD}, pace, 0, begins, toGo, drawFrom(seed))
        .map(leaves => leaves - begins);
  });
}

const stageAt = (leaves: readonly number[], asOf: number) => leaves.filter(each => each <= asOf).length;

type Lives = readonly (readonly number[])[];

/** The stages that animals are judged to be in; one in fifty is put into one beside its own. Adults are not counted. */
function judged(lives: Lives, asOf: number, draw: () => number): (string | undefined)[] {
  return lives.map(leaves => {
    const stage = stageAt(leaves, asOf);
    const beside = [stage - 1, stage + 1].filter(each => kind[each] !== undefined);
    return kind[draw() < MISJUDGED ? beside[Math.floor(draw() * beside.length)]! : stage]?.name;
  });
}

function count(code: string, asOf: number, stages: readonly (string | undefined)[]): Written {
  const counts: Record<string, number> = {};
  for (const name of stages) if (name !== undefined) counts[name] = (counts[name] ?? 0) + 1;
  return {record: 'count', lot: code, at: day(asOf), stages: counts, complete: true};
}

interface Played {
  readonly code: string;
  readonly asOf: number;
  readonly written: readonly Written[];
  /** When those that are in the lot emerge. */
  readonly out: readonly number[];
}

interface Story {
  readonly title: string;
  play(draw: () => number, pace: number, stages: readonly SimulatedStage[]): Played | undefined;
}

const COOL = [{unit: 'C1', fromDay: 0}];
const WARM = [{unit: 'C2', fromDay: 0}];
const outOf = (lives: Lives) => lives.map(leaves => leaves.at(-1)!);

const stories: readonly Story[] = [
  {
    title: 'split off those that are further, and moved where it is warm',
    play(draw, pace, stages) {
      const seen = (asOf: number, lives: Lives) => judged(lives, asOf, draw);
      const all = animalsOf(14, pace, stages, draw);
      const cool = all.map(animal => animal(COOL));
      const parted = seen(9, cool);
      const leaving = all.filter((_, i) => parted[i] === 'larva-5');
      if (leaving.length < 2 || leaving.length > 12) return undefined;
      const apart = leaving.map(animal => animal([...COOL, {unit: 'C2', fromDay: 9}]));
      const split = {record: 'split', lot: 'A', into: 'B', unit: 'C2', at: day(9)};
      return {
        ...{code: 'B', asOf: 12, out: outOf(apart)},
        written: [
          lot({'larva-4': 14}, {at: day(0)}),
          count('A', 4, seen(4, cool)),
          count('A', 9, parted),
          {...split, stages: {'larva-5': leaving.length}},
          count('B', 12, seen(12, apart)),
        ],
      };
    },
  },
  {
    title: 'left behind by those that were split off',
    play(draw, pace, stages) {
      const seen = (asOf: number, lives: Lives) => judged(lives, asOf, draw);
      const all = animalsOf(14, pace, stages, draw).map(animal => animal(COOL));
      const parted = seen(9, all);
      const staying = all.filter((_, i) => parted[i] !== 'larva-5');
      if (staying.length < 2 || staying.length > 12) return undefined;
      const split = {record: 'split', lot: 'A', into: 'B', unit: 'C2', at: day(9)};
      return {
        ...{code: 'A', asOf: 11, out: outOf(staying)},
        written: [
          lot({'larva-4': 14}, {at: day(0)}),
          count('A', 9, parted),
          {...split, stages: {'larva-5': 14 - staying.length}},
          count('A', 11, seen(11, staying)),
        ],
      };
    },
  },
  {
    title: 'merged with animals of the sample that had been warm',
    play(draw, pace, stages) {
      const seen = (asOf: number, lives: Lives) => judged(lives, asOf, draw);
      const cool = animalsOf(7, pace, stages, draw).map(animal => animal(COOL));
      const warm = animalsOf(7, pace, stages, draw).map(animal =>
        animal([...WARM, {unit: 'C1', fromDay: 6}]),
      );
      const all = [...cool, ...warm];
      if (outOf(all).some(each => each < 8)) return undefined;
      return {
        ...{code: 'A', asOf: 8, out: outOf(all)},
        written: [
          lot({'larva-4': 7}, {at: day(0), unit: 'C1'}),
          lot({'larva-4': 7}, {at: day(0), unit: 'C2', code: 'B'}),
          count('B', 4, seen(4, warm)),
          {record: 'merge', lot: 'B', into: 'A', at: day(6)},
          count('A', 8, seen(8, all)),
        ],
      };
    },
  },
  {
    title: 'moved between two units',
    play(draw, pace, stages) {
      const seen = (asOf: number, lives: Lives) => judged(lives, asOf, draw);
      const lives = animalsOf(12, pace, stages, draw).map(animal =>
        animal([...COOL, {unit: 'C2', fromDay: 5}, {unit: 'C1', fromDay: 9}]),
      );
      if (outOf(lives).some(each => each < 10)) return undefined;
      return {
        ...{code: 'A', asOf: 10, out: outOf(lives)},
        written: [
          lot({'larva-4': 12}, {at: day(0)}),
          count('A', 4, seen(4, lives)),
          {record: 'move', lot: 'A', unit: 'C2', at: day(5)},
          {record: 'move', lot: 'A', unit: 'C1', at: day(9)},
          count('A', 10, seen(10, lives)),
        ],
      };
    },
  },
];

test.each(stories)(
  '80 % windows of lots hold 75 to 85 %: $title',
  ({play}) => {
    const draw = drawFrom(17);
    const held = {first: 0, half: 0, last: 0, animal: 0};
    let n = 0;
    while (n < LOTS) {
      const pace = Math.exp(PACE_SD * normal(draw));
      const played = play(draw, pace, draw() < 0.5 ? kind : slow);
      if (played === undefined) continue;
      n++;
      const {code, asOf, written} = played;
      const out = [...played.out].sort((a, b) => a - b);
      const told = forecast(code, asOf, written);
      const holds = ({p10, p90}: Window, outcome: number) =>
        Number(p10! <= begins + outcome && begins + outcome <= p90!);
      held.first += holds(told.first!, out[0]!);
      held.half += holds(told.half!, out[Math.ceil(out.length / 2) - 1]!);
      held.last += holds(told.last!, out[Math.ceil(0.95 * out.length - 1e-9) - 1]!);
      held.animal += holds(told.animal, out[Math.floor(draw() * out.length)]!);
    }
    for (const [name, each] of Object.entries(held)) {
      expect(each / n, name).toBeGreaterThanOrEqual(0.75);
      expect(each / n, name).toBeLessThanOrEqual(0.85);
    }
  },
  600_000,
);
