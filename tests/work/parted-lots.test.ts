// Lots that were split and merged: their animals are forecast with what was seen of them before.
import fc from 'fast-check';
import {describe, expect, test} from 'vitest';
import type {LotForecast} from '../../src/development/answer.ts';
import {forecastLot} from '../../src/development/forecast.ts';
import {MS_PER_DAY} from '../../src/records/entry.ts';
import {fold} from '../../src/records/fold.ts';
import {lineOf} from '../../src/records/lineage.ts';
import {type StageCounts, total} from '../../src/records/stage.ts';
import {seenInDays} from '../../src/work/cases.ts';
import {profileOf, requestOf, START, wave} from '../development/lots.ts';
import type {SimulatedStage} from '../development/simulated.ts';
import {at, day, daybook, lot, sample, unit, type Written} from '../records/daybook-of.ts';

const stages: readonly SimulatedStage[] = [
  {name: 'larva-4', lower: 7, degreeDays: 60, cv: 0.1},
  {name: 'larva-5', lower: 7, degreeDays: 80, cv: 0.1},
  {name: 'pupa', lower: 7.5, degreeDays: 120, cv: 0.06},
];
const slow = stages.map(stage => ({...stage, degreeDays: 1.4 * stage.degreeDays}));
const temperatures = wave(20, 4, {days: 120});
const shift = at(0) / MS_PER_DAY - START;
const course = {...temperatures, atDays: temperatures.atDays.map(days => days + shift - 1)};

const count = (days: number, seen: StageCounts, more: Written = {}): Written => ({
  ...{record: 'count', lot: 'A', at: day(days), stages: seen, complete: true},
  ...more,
});
const check = (days: number, code = 'A'): Written => ({record: 'check', lot: code, at: day(days), found: 0});
const split = (days: number, off: StageCounts, more: Written = {}): Written => ({
  ...{record: 'split', lot: 'A', into: 'B', unit: 'C1', at: day(days), stages: off},
  ...more,
});
const merge = (days: number, from = 'B', into = 'A'): Written => ({
  ...{record: 'merge', lot: from, into, at: day(days)},
});
const loss = (days: number, stage: string, lost: number): Written => ({
  ...{record: 'loss', lot: 'A', at: day(days), stage, count: lost, cause: 'missing'},
});

/** The forecast of a lot as of a day, from what was written. */
function forecast(code: string, asOf: number, written: readonly Written[], paceSd = 0.1): LotForecast {
  const state = fold(daybook(unit(), sample(), ...written), at(asOf, '10:00'));
  const found = state.lots.get(code)!;
  const line = lineOf(found, state.lots);
  const likely = profileOf(stages, {paceSd, code: 'quick'});
  return forecastLot({
    ...requestOf([], course, likely),
    lot: code,
    cohorts: line.cohorts.map(cohort => ({...cohort, atDays: cohort.at / MS_PER_DAY})),
    candidates: [
      {profile: likely, weight: 0.6},
      {profile: profileOf(slow, {paceSd, code: 'slow'}), weight: 0.4},
    ],
    nowDays: at(asOf, '10:00') / MS_PER_DAY,
    alive: total(found.alive),
    sightings: line.sightings.map(seenInDays),
    looksDays: line.looks.map(look => look / MS_PER_DAY),
    outAtDays: [14, 18, 22].map(days => at(days) / MS_PER_DAY),
    roundsDays: [],
    dayBoundsDays: [],
  });
}

/** What a forecast says of when adults come out, of the pace and of the kind. */
function said({animal, first, last, half, stagesNow, candidates, pace, outBy}: LotForecast): number[] {
  return [
    ...[animal, first, last, half].flatMap(window => [window?.p10, window?.p50, window?.p90]),
    ...candidates.map(({weight}) => weight),
    ...[pace?.p10, pace?.p50, pace?.p90, stagesNow['larva-5'], stagesNow.pupa],
    ...outBy.map(({animal: share}) => share),
  ].map(Number);
}

/** Within numerical noise: by default 0.005 days, and half a hundredth of chances and of the pace. */
function expectSame(one: LotForecast, other: LotForecast, digits = 2): void {
  const expected = said(other);
  expect(one.animal.p50).not.toBeNull();
  expect(said(one)).toEqual(
    expected.map(value => (Number.isNaN(value) ? Number.NaN : expect.closeTo(value, digits))),
  );
}

const begun = lot({'larva-4': 12}, {at: day(0)});
const seen = [begun, count(3, {'larva-4': 5, 'larva-5': 7}), count(8, {'larva-5': 4, pupa: 8})];

describe('a lot split off', () => {
  test('of all the animals in a stage is forecast as these were in the lot they came from', () => {
    const child = forecast('B', 8, [...seen, split(8, {pupa: 8})]);
    const twin = forecast('A', 8, [...seen, loss(8, 'larva-5', 4)]);
    expectSame(child, twin);
  });

  test('of all but one is forecast as the lot was, nearly', () => {
    const pupae = [begun, count(3, {'larva-4': 5, 'larva-5': 7}), count(9, {pupa: 12})];
    const child = forecast('B', 9, [...pupae, split(9, {pupa: 11})]);
    const parent = forecast('A', 9, pupae);
    // The first, half and last of eleven are others than those of twelve; one of them at random is the same.
    const ofOne = {first: null, half: null, last: null};
    expectSame({...child, ...ofOne}, {...parent, ...ofOne}, 3);
    expect(child.alive).toBe(11);
  });

  test('knows more than a lot that begins afresh', () => {
    const width = ({animal}: LotForecast) => animal.p90! - animal.p10!;
    const child = forecast('B', 8, [...seen, split(8, {pupa: 8})]);
    const afresh = forecast('B', 8, [lot({pupa: 8}, {code: 'B', at: day(8)})]);
    expect(width(child)).toBeLessThan(0.6 * width(afresh));
    expect(child.candidates).not.toEqual(afresh.candidates);
  });

  test('is not taught by what is seen of those that stayed behind', () => {
    const parted = [...seen, split(8, {pupa: 8})];
    const later = [count(9, {'larva-5': 1, pupa: 3}), check(12)];
    expectSame(forecast('B', 13, [...parted, ...later]), forecast('B', 13, parted));
    expect(said(forecast('A', 13, [...parted, ...later]))).not.toEqual(said(forecast('A', 13, parted)));
  });

  test('into a stage that nobody had counted yet says that they came so far', () => {
    const early = [begun, count(3, {'larva-4': 5, 'larva-5': 7})];
    const child = forecast('B', 8, [...early, split(8, {pupa: 6})]);
    const counted = forecast('B', 8, [...early, count(8, {pupa: 6}, {complete: false}), split(8, {pupa: 6})]);
    expect(child.stagesNow.pupa).toBeGreaterThan(0.8);
    expectSame(child, counted);
  });

  test('of whose animals nothing explains what was seen is forecast as these were expected, not those they came from', () => {
    const parent = lot({'larva-4': 6, pupa: 6}, {at: day(0)});
    const off = split(1, {'larva-4': 6});
    const out = {record: 'emergence', lot: 'B', at: day(2), since: day(1), adults: [{count: 1}]};
    const {animal, assumptions} = forecast('B', 2, [parent, off, out], 0);
    expect(assumptions.join(' ')).toContain('Nothing explains');
    const alone = forecast('B', 2, [lot({'larva-4': 6}, {at: day(0), code: 'B'})], 0);
    expect(animal.p50!).toBeCloseTo(alone.animal.p50!, 1);
  });

  test('again, from one that was split off itself, takes everything along', () => {
    const again = split(8, {pupa: 8}, {lot: 'B', into: 'C'});
    const grandchild = forecast('C', 8, [...seen, split(8, {'larva-5': 4, pupa: 8}), again]);
    expectSame(grandchild, forecast('B', 8, [...seen, split(8, {pupa: 8})]));
  });
});

describe('lots merged', () => {
  const first = lot({'larva-5': 10}, {at: day(0)});
  const second = lot({pupa: 6}, {code: 'B', at: day(2)});

  test('hold the animals of both as each lot knew them', () => {
    const apart = [first, second, count(4, {'larva-5': 6, pupa: 4}), check(5, 'B')];
    const merged = forecast('A', 6, [...apart, merge(6)], 0);
    const of = (code: string) => forecast(code, 6, apart, 0);
    // At one pace and of one kind, nothing seen of the one says anything of the other.
    const weights = merged.candidates.map(({weight}) => weight);
    expect(Math.max(...weights)).toBeGreaterThan(0.5);
    const mixed = (10 * (of('A').stagesNow.pupa ?? 0) + 6 * (of('B').stagesNow.pupa ?? 0)) / 16;
    expect(merged.stagesNow.pupa).toBeCloseTo(mixed, 1);
    expect(merged.alive).toBe(16);
  });

  test('from two units have lived each in its own', () => {
    const cool = {...course, temperatureC: course.temperatureC.map(celsius => celsius - 8)};
    const began = [
      lot({'larva-4': 6}, {at: day(0)}),
      lot({'larva-4': 6}, {code: 'B', at: day(0), unit: 'C2'}),
    ];
    const state = fold(daybook(unit(), unit('C2'), sample(), ...began, merge(9)), at(9, '10:00'));
    const line = lineOf(state.lots.get('A')!, state.lots);
    expect(line.elsewhere.map(([code, stays]) => [code, stays[0]!.unit])).toEqual([['B', 'C2']]);
    const stagesNow = (elsewhere: ReadonlyMap<string, typeof course>) =>
      forecastLot({
        ...requestOf([], course, profileOf(stages, {paceSd: 0})),
        ...{lot: 'A', elsewhere, alive: 12, nowDays: at(9, '10:00') / MS_PER_DAY},
        cohorts: line.cohorts.map(cohort => ({...cohort, atDays: cohort.at / MS_PER_DAY})),
        sightings: line.sightings.map(seenInDays),
      }).stagesNow;
    // Nine days at 12 °C in place of 20 °C: 45 degree-days above 7 °C, not enough for a whole stage of 60.
    const both = stagesNow(new Map([['B', cool]]));
    const warm = stagesNow(new Map());
    expect(both['larva-4']!).toBeGreaterThan(0.1);
    expect(both.pupa!).toBeCloseTo(warm.pupa! / 2, 2);
    expect(warm['larva-4'] ?? 0).toBeLessThan(0.01);
  });

  test('are counted as one from then on, also at the same instant', () => {
    const apart = [first, second, count(4, {'larva-5': 6, pupa: 4}), check(5, 'B')];
    const counted = count(6, {'larva-5': 2, pupa: 14});
    const merged = forecast('A', 6, [...apart, merge(6), counted]);
    expect(merged.leftOut).toEqual([]);
    expect(merged.stagesNow.pupa).toBeGreaterThan(0.75);
    const moment = forecast('A', 6, [...apart, merge(6), {...counted, at: day(6, '09:01')}]);
    expectSame(merged, moment, 2);
  });

  test('again after a split are forecast as if they had never been parted', () => {
    fc.assert(
      fc.property(
        fc.integer({min: 0, max: 12}),
        fc.integer({min: 0, max: 12}),
        fc.integer({min: 0, max: 4}),
        (larvae, off, wait) => {
          const stayed: readonly Written[] = [
            begun,
            count(3, {'larva-4': 5, 'larva-5': 7}),
            count(8, {'larva-5': larvae, pupa: 12 - larvae}),
          ];
          const leaving = {'larva-5': Math.min(off, larvae), pupa: Math.max(0, off - larvae)};
          fc.pre(off > 0);
          const parted = [...stayed, split(8, leaving), merge(8 + wait)];
          expectSame(forecast('A', 12, parted), forecast('A', 12, stayed), 1);
        },
      ),
      {numRuns: 12},
    );
  });
});
