// Water that is cooler than the air its logger reads. Everything is invented; the expected instants are K ÷ (T − T0), with
// T the air, or the air and the mean of what the water was cooler.
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {newRoom, temporaryFolder} from '../commands/program.ts';
import {
  applied,
  daysLater,
  type Forecast,
  forecastOf,
  hoursAfter,
  kind,
  pupae,
  said,
  sample,
} from './story-room.ts';

const BEGUN = '2031-07-07T09:00';
const NOW = '2031-07-10T12:00';
const stories = [
  {
    ...{by: 'automatic', airC: 27, waterC: [24.6, 24.8, 24.5, 24.7], lower: 11, degreeDays: 110},
    ...{offsetC: -2.35, byAir: 'Mon 14 July 0', early: '1.2 days too early', said: '2.35 ± 0.13 °C cooler'},
  },
  {
    // Mean −1.9; 130 ÷ 15 = 8.667 d by the air, 130 ÷ 13.1 = 9.924 d by the water.
    ...{by: 'automatic', airC: 24, waterC: [22.1, 22.3, 21.9, 22.1], lower: 9, degreeDays: 130},
    ...{offsetC: -1.9, byAir: 'Wed 16 July 0', early: '1.3 days too early', said: '1.90 ± 0.16 °C cooler'},
  },
  {
    // The air read by hand too. Mean −3.5; 90 ÷ 14 = 6.429 d by the air, 90 ÷ 10.5 = 8.571 d by the water.
    ...{by: 'hand', airC: 26, waterC: [22.4, 22.6, 22.5, 22.5], lower: 12, degreeDays: 90},
    ...{offsetC: -3.5, byAir: 'Sun 13 July 1', early: '2.1 days too early', said: '3.50 ± 0.08 °C cooler'},
  },
];

interface Watered extends Forecast {
  readonly water: {
    readonly offsetC: number;
    readonly n: number;
    readonly used: boolean;
    readonly otherwise: string;
  } | null;
}

describe.each(stories)('a tray at $waterC °C in air of $airC °C, read by $by', story => {
  const {by, airC, waterC, offsetC, lower, degreeDays, byAir, early} = story;
  const room = newRoom();
  const tray = {
    ...{record: 'unit', code: 'B1', type: 'aquarium', place: 'rack B/1', volumeLitres: 2, logger: 'L1'},
  };
  const water = (n: number) => ({
    ...{record: 'water', unit: 'B1', at: daysLater(BEGUN, n + 1 / 48), temperature: waterC[n]},
  });
  applied(room, NOW, [
    {record: 'logger', code: 'L1', kind: by},
    sample('S1', '2031-07-01'),
    kind({lower, degreeDays, cv: 0.05}),
    tray,
    pupae('Q1', 'S1', 'B1', BEGUN, 50),
    water(0),
    water(1),
  ]);
  if (by === 'automatic') {
    const path = join(temporaryFolder(), 'air.csv');
    const rows = Array.from({length: 76}, (_, n) => `${daysLater('2031-07-07T08:00', n / 24)},${airC}`);
    writeFileSync(path, ['time,temperature °C', ...rows, ''].join('\n'));
    said(room, NOW, 'import', 'L1', path);
  } else
    applied(
      room,
      NOW,
      Array.from({length: 4}, (_, day) => ({
        ...{record: 'reading', logger: 'L1', at: daysLater(BEGUN, day), temperature: airC},
      })),
    );
  const half = (celsius: number) => daysLater(BEGUN, degreeDays / (celsius - lower));
  const ask = (): Watered => forecastOf(room, NOW, 'Q1') as Watered;
  const isAt = (told: string, expected: string) =>
    expect(Math.abs(hoursAfter(told, expected))).toBeLessThan(1);

  it('goes by the air while the water was measured less than three times, shows both, and says so', () => {
    const {adults, water: learned} = ask();
    isAt(adults.animal.p50, half(airC));
    expect(learned).toMatchObject({n: 2, used: false});
    isAt(learned!.otherwise, half((waterC[0]! + waterC[1]!) / 2));
    const words = said(room, NOW, 'forecast', 'Q1');
    expect(words).toMatch(
      /cooler than L1, in 2 measurements; the dates go by the air; by the water half would be out/,
    );
    expect(words).toMatch(/days later; measured 3 times, the water is gone by/);
  });

  it('goes by the water once it was measured often enough, and says what the air would have told', () => {
    applied(room, NOW, [water(2), water(3)]);
    const {adults, water: learned} = ask();
    expect(learned!.offsetC).toBeCloseTo(offsetC, 6);
    expect(learned).toMatchObject({n: 4, used: true});
    isAt(adults.animal.p50, half(airC + offsetC));
    isAt(learned!.otherwise, half(airC));
    const words = said(room, NOW, 'forecast', 'Q1');
    expect(words).toContain(`${story.said} than L1, in 4 measurements; the dates go by the water`);
    expect(words).toContain(`by the air half would be out ${byAir}`);
    expect(words).toContain(early);
  });

  it('begins to look for adults by the water', () => {
    const out5 = daysLater(BEGUN, (degreeDays * (1 - 1.645 * 0.05)) / (airC + offsetC - lower));
    const hours = -hoursAfter(ask().startChecking, out5);
    expect(hours).toBeGreaterThanOrEqual(72 - 1);
    expect(hours).toBeLessThan(72 + 25);
  });

  it('says it of the unit, and has nothing amiss', () => {
    expect(said(room, NOW, 'climate', 'B1')).toContain(
      `the water is ${story.said} than L1, in 4 measurements`,
    );
    expect(said(room, NOW, 'today')).not.toContain('disagrees');
    expect(said(room, NOW, 'today')).not.toContain('the water of B1');
  });

  it('goes by what a person says instead, also by the air as it is', () => {
    said(room, NOW, 'unit', 'B1', '--offset', '0', '--at', BEGUN);
    isAt(ask().adults.animal.p50, half(airC));
    expect(ask().water).toBeNull();
    applied(room, NOW, [{...tray, offsetC: -1, at: BEGUN}]);
    isAt(ask().adults.animal.p50, half(airC - 1));
  });
});

describe('larvae that nobody saw pupate', () => {
  it('have their pupae picked daily from two days before half of them are adult', () => {
    const room = newRoom();
    applied(room, BEGUN, [
      sample('S1', '2031-07-01'),
      {
        ...{record: 'profile', profile: 'gnat', name: 'an invented gnat', rank: 'species'},
        classification: {order: 'Diptera', family: 'Culicidae'},
        rearing: ['aquarium'],
        stages: [
          {stage: 'larva', rate: {kind: 'degree-day', lower: 11, degreeDays: 84}, cv: 0.05, source: 'a'},
          {stage: 'pupa', rate: {kind: 'degree-day', lower: 11, degreeDays: 26}, cv: 0.05, source: 'a'},
        ],
        ...{paceSd: 0, survival: 1},
        sources: [{id: 'a', citation: 'invented for a story', provenance: 'common-practice'}],
      },
      {
        ...{record: 'unit', code: 'B1', type: 'aquarium', place: 'rack B/1'},
        setPoints: {constant: 24.65},
      },
      {
        ...{record: 'lot', code: 'M1', sample: 'S1', unit: 'B1', at: BEGUN, stages: {larva: 50}},
        ...{progress: [0, 0], ages: 'one-brood', candidates: [{profile: 'gnat', weight: 1}]},
      },
    ]);
    const picks = (day: string) =>
      room
        .ask<{tasks: {task: string; state: string}[]}>(`2031-07-${day}T08:00`, 'today')
        .tasks.filter(({task, state}) => task === 'move-pupae' && state !== 'early');
    // Half are adult 110 ÷ 13.65 = 8.06 d after Monday 09:00: on Tuesday the 15th, 10:24.
    expect(picks('12')).toEqual([]);
    expect(picks('14')).toHaveLength(1);
  });
});
