// The forecast against lots played out animal by animal: every quantile within 0.15 days. All figures are invented.
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import {
  type PlayedKind,
  type PlayedLot,
  type PlayedOut,
  playOut,
  quantileOf,
  shareBefore,
} from './played-out.ts';
import {newRoom, type RoomAt, temporaryFolder} from './program.ts';

const WITHIN_DAYS = 0.15;
/** A week before the clocks of Central Europe go forward. */
const NOW = '2026-03-22T09:00+01:00';
const day = (iso: string): number => Date.parse(iso) / 86_400_000;

const slow: PlayedKind = {
  weight: 1,
  paceSd: 0.1,
  stages: [
    {stage: 'larva-4', lower: 8, degreeDays: 60, cv: 0.12},
    {stage: 'larva-5', lower: 8, degreeDays: 90, cv: 0.12},
    {stage: 'pupa', lower: 9.5, degreeDays: 130, cv: 0.08},
  ],
};
const quick: PlayedKind = {
  weight: 1,
  paceSd: 0.07,
  stages: slow.stages.map(stage => ({...stage, degreeDays: stage.degreeDays * 0.85})),
};
const spread = (kind: PlayedKind, cv: number): PlayedKind => ({
  ...kind,
  stages: kind.stages.map(stage => ({...stage, cv})),
});
const capped: PlayedKind = {...slow, stages: slow.stages.map(stage => ({...stage, upper: 22}))};

const profiles = {
  slow,
  quick,
  capped,
  even: spread(slow, 0.02),
  uneven: spread(slow, 0.3),
  alike: {...spread(slow, 0), paceSd: 0.1},
} as const;

/** Hourly readings joined by straight lines. */
const atHours =
  (reading: (hour: number) => number) =>
  (days: number): number => {
    const hour = Math.floor(days * 24);
    return reading(hour) + (days * 24 - hour) * (reading(hour + 1) - reading(hour));
  };
/** The mean rises with the season. */
const spring = (hour: number): number =>
  14 + 0.08 * (hour / 24 - day('2026-03-01')) + 5 * Math.sin((2 * Math.PI * (hour - 8)) / 24);
/** By night below every threshold: nothing develops then. */
const frosty = (hour: number): number => spring(hour) - 4 + 4 * Math.sin((2 * Math.PI * (hour - 8)) / 24);
/** Every day like the one before. */
const steady = (hour: number): number => 19 + 4 * Math.sin((2 * Math.PI * (hour - 9)) / 24);
const WARMER = 1.5;
/** The clocks of Central Europe: one hour ahead, two from the last Sunday of March at 01:00 UTC. */
const wallHour = (days: number): number => (days * 24 + (days < day('2026-03-29T01:00Z') ? 1 : 2)) % 24;
const byLights = (days: number): number => (wallHour(days) >= 6.5 && wallHour(days) < 21 ? 25 : 15);
const HELD = 19.5;
const HELD_FROM = day('2026-03-24T12:00Z');

interface Told {
  readonly why: string;
  readonly lots: number;
  readonly at: string;
  readonly unit: object;
  readonly lot: Omit<PlayedLot, 'atDays' | 'kinds'>;
  readonly candidates: Partial<Record<keyof typeof profiles, number>>;
  readonly hold?: number;
  /** Then the same chance is reached at any hour of a night. */
  readonly stillByNight?: true;
}

const mixed = {progress: [0, 1], ages: 'mixed'} as const;
const young = {progress: [0, 0.2], ages: 'mixed'} as const;
const brood = {progress: [0, 1], ages: 'one-brood'} as const;
const SIX_DAYS_AGO = '2026-03-16T15:30+01:00';

const rooms: Readonly<Record<string, Told>> = {
  R1: {
    why: 'a constant set point, two stages',
    lots: 20_000,
    at: SIX_DAYS_AGO,
    unit: {setPoints: {constant: 21}},
    lot: {founders: {'larva-4': 9, 'larva-5': 15}, ...mixed, temperatureAt: () => 21},
    candidates: {slow: 1},
  },
  R2: {
    why: 'day and night by the lights, while the clocks change',
    lots: 25_000,
    at: SIX_DAYS_AGO,
    unit: {setPoints: {day: 25, night: 15, lightsOn: '06:30', lightsOff: '21:00'}},
    lot: {founders: {'larva-5': 10}, ...mixed, temperatureAt: byLights},
    candidates: {capped: 1},
  },
  R3: {
    why: 'held from where readings end',
    lots: 25_000,
    at: '2026-03-10T08:00+01:00',
    unit: {logger: 'L3'},
    lot: {
      founders: {'larva-5': 12},
      ...mixed,
      temperatureAt: days => (days < HELD_FROM ? atHours(spring)(days) : HELD),
    },
    candidates: {slow: 1},
    hold: HELD,
  },
  R4: {
    why: 'readings with gaps, the animals warmer than the logger, one brood',
    lots: 60_000,
    at: SIX_DAYS_AGO,
    unit: {logger: 'L4', offsetC: WARMER},
    lot: {
      founders: {'larva-4': 6},
      ...brood,
      temperatureAt: atHours(hour => steady(hour) + WARMER),
    },
    candidates: {uneven: 1},
  },
  R5: {
    why: 'a hundred animals all but alike, newly moulted, of two candidates',
    lots: 8_000,
    at: SIX_DAYS_AGO,
    unit: {setPoints: {constant: 18}},
    lot: {founders: {'larva-5': 100}, ...young, temperatureAt: () => 18},
    candidates: {even: 2, quick: 1},
  },
  R6: {
    why: 'one animal of great spread, in frosty nights that are read for months ahead',
    lots: 200_000,
    at: SIX_DAYS_AGO,
    unit: {logger: 'L6'},
    lot: {founders: {'larva-4': 1}, ...mixed, temperatureAt: atHours(frosty)},
    candidates: {uneven: 1},
    stillByNight: true,
  },
  R7: {
    why: 'a brood of a hundred in two stages',
    lots: 10_000,
    at: SIX_DAYS_AGO,
    unit: {logger: 'L7'},
    lot: {founders: {'larva-4': 30, 'larva-5': 70}, ...brood, temperatureAt: atHours(spring)},
    candidates: {slow: 1},
  },
  R8: {
    why: 'young pupae only, without any spread',
    lots: 60_000,
    at: '2026-03-22T08:00+01:00',
    unit: {setPoints: {constant: 23}},
    lot: {founders: {pupa: 7}, ...young, temperatureAt: () => 23},
    candidates: {alike: 1},
  },
};

type Times = Readonly<Record<string, string>>;
interface Answer {
  readonly lot: string;
  readonly stagesNow: Readonly<Record<string, number>>;
  readonly adults: Readonly<Record<'animal' | 'first' | 'half' | 'last', Times>> & {
    readonly expected: number;
    readonly perDay: readonly {readonly day: string; readonly expected: number}[];
  };
}

describe('a forecast agrees with lots played out animal by animal', () => {
  const answers = new Map<string, Answer>();

  beforeAll(() => {
    const room = newRoom('Europe/Vienna');
    const applied = room.apply(NOW, recordsOf());
    if (applied.status !== 0) throw new Error(applied.err);
    for (const [logger, file] of loggerFiles()) {
      const imported = room.at(NOW, 'import', logger, file);
      if (imported.status !== 0) throw new Error(imported.err);
    }
    for (const [code, {hold}] of Object.entries(rooms)) {
      if (hold === undefined) continue;
      for (const answer of asked(room, code, '--hold', String(hold))) answers.set(code, answer);
    }
    for (const answer of asked(room)) if (!answers.has(answer.lot)) answers.set(answer.lot, answer);
  });

  for (const [seed, [code, told]] of Object.entries(rooms).entries())
    it(told.why, () => {
      const {stagesNow, adults} = answers.get(code)!;
      const out = playOut(lotOf(told), told.lots, 7_919 * (seed + 1), day(NOW));
      for (const [name, share] of Object.entries(stagesNow))
        expect(Math.abs(share - (out.stagesThen[name] ?? 0)), `share of ${name}`).toBeLessThan(0.01);
      expect(farOff(adults, out, told)).toEqual([]);
      expect(adults.expected).toBeCloseTo(total(told), 4);
      const outBy = shareBefore(out.animal, day('2026-05-01T00:00+02:00'));
      const expectedBy = adults.perDay
        .filter(({day}) => day < '2026-05-01')
        .reduce((sum, {expected}) => sum + expected, 0);
      expect(Math.abs(expectedBy / total(told) - outBy)).toBeLessThan(0.01);
    });
});

/** Every quantile that is further off than it may be. */
function farOff(adults: Answer['adults'], out: PlayedOut, {stillByNight}: Told): string[] {
  return (['animal', 'first', 'half', 'last'] as const).flatMap(name =>
    Object.entries(adults[name]).flatMap(([point, iso]) => {
      const share = Number(point.slice(1)) / 100;
      const off = day(iso) - quantileOf(out[name], share);
      const shareOff = shareBefore(out[name], day(iso)) - share;
      if (Math.abs(off) <= WITHIN_DAYS || (stillByNight && Math.abs(shareOff) <= 0.004)) return [];
      return [`${name}.${point} is off by ${off.toFixed(3)} d, ${shareOff.toFixed(4)} of the chance`];
    }),
  );
}

function asked(room: RoomAt, ...words: string[]): readonly Answer[] {
  return room.ask(NOW, 'forecast', ...words);
}

function lotOf({lot, at, candidates}: Told): PlayedLot {
  const kinds = Object.entries(profiles).flatMap(([name, kind]) => {
    const weight = candidates[name as keyof typeof profiles];
    return weight === undefined ? [] : [{...kind, weight}];
  });
  return {...lot, atDays: day(at), kinds};
}

function total({lot}: Told): number {
  return Object.values(lot.founders).reduce((sum, count) => sum + count, 0);
}

function recordsOf(): object[] {
  return [
    ...Object.entries(profiles).map(([profile, {stages, paceSd}]) => ({
      record: 'profile',
      profile,
      name: 'invented',
      rank: 'species',
      paceSd,
      stages: stages.map(({stage, cv, ...rate}) => ({stage, cv, rate: {kind: 'degree-day', ...rate}})),
      sources: [],
    })),
    ...['L3', 'L4', 'L6', 'L7'].map(code => ({record: 'logger', code, kind: 'automatic'})),
    {record: 'sample', code: 'S', method: 'search', collected: {from: '2026-03-01'}},
    ...Object.entries(rooms).flatMap(([code, {unit, lot, at, candidates}]) => [
      {record: 'unit', code: `U${code}`, type: 'cage', place: `shelf ${code}`, ...unit},
      {
        record: 'lot',
        code,
        sample: 'S',
        unit: `U${code}`,
        at,
        stages: lot.founders,
        progress: lot.progress,
        ages: lot.ages,
        candidates: Object.entries(candidates).map(([profile, weight]) => ({profile, weight})),
      },
    ]),
  ];
}

/** Files by the logger they belong to. L4 stood still twice: overnight, and for two days. */
function loggerFiles(): [string, string][] {
  const folder = temporaryFolder();
  const gaps = [
    ['2026-03-12T20:00Z', '2026-03-13T05:00Z'],
    ['2026-03-18T03:00Z', '2026-03-20T03:00Z'],
  ].map(([from = '', to = '']) => [day(from) * 24, day(to) * 24] as const);
  const write = (
    logger: string,
    to: string,
    reading: (hour: number) => number,
    keep = (_: number) => true,
  ) => {
    const rows = ['time,temperature'];
    for (let hour = day('2026-03-01T00:00Z') * 24; hour <= day(to) * 24; hour++)
      if (keep(hour)) rows.push(`${new Date(hour * 3_600_000).toISOString()},${reading(hour)}`);
    const file = join(folder, `${logger}.csv`);
    writeFileSync(file, rows.join('\n'));
    return [logger, file] as [string, string];
  };
  return [
    write('L3', '2026-03-24T12:00Z', spring),
    write('L4', '2026-12-01T00:00Z', steady, hour => !gaps.some(([from, to]) => hour > from && hour < to)),
    write('L6', '2026-12-01T00:00Z', frosty),
    write('L7', '2026-12-01T00:00Z', spring),
  ];
}
