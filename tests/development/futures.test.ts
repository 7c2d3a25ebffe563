// Many futures at once against each future by itself.
import {describe, expect, it} from 'vitest';
import type {Futures} from '../../src/climate/futures.ts';
import type {LotForecast} from '../../src/development/answer.ts';
import {forecastLot} from '../../src/development/forecast.ts';
import type {ForecastRequest} from '../../src/development/request.ts';
import {profileOf, requestOf, START} from './lots.ts';

const NOW = START + 2;
const DAYS = 120;
const SIZE = 50;

/** Days of unlike warmth, none below the thresholds, each a wave of its own. */
const library = Array.from({length: 9}, (_, day) => ({
  atDays: Float64Array.from({length: 25}, (_, hour) => hour / 24),
  temperatureC: Float64Array.from(
    {length: 25},
    (_, hour) => 17 + 1.3 * day + 3 * Math.sin((Math.PI * hour) / 12),
  ),
}));

/** Orders that differ a lot: each future keeps to two days of its own. */
const orders = Array.from({length: SIZE}, (_, future) =>
  Uint16Array.from({length: DAYS}, (_, day) => (future + (day % 3 === 0 ? 4 : 0)) % library.length),
);
const futures: Futures = {fromDays: NOW, days: library, orders, ofEarlierYears: 0};

const past = {
  atDays: Float64Array.from({length: 2 * 24 + 1}, (_, hour) => START + hour / 24),
  temperatureC: new Float64Array(2 * 24 + 1).fill(20),
};

/** The course through one future. */
function through(order: Uint16Array) {
  const atDays = [...past.atDays];
  const temperatureC = [...past.temperatureC];
  order.forEach((which, day) => {
    library[which]!.atDays.forEach((at, i) => {
      atDays.push(NOW + day + at);
      temperatureC.push(library[which]!.temperatureC[i]!);
    });
  });
  return {atDays: Float64Array.from(atDays), temperatureC: Float64Array.from(temperatureC)};
}

const COHORT = {
  atDays: START,
  stages: {'larva-5': 7, pupa: 5},
  progress: [0, 1] as const,
  ages: 'mixed' as const,
};

/** One threshold in both stages; `pupaUpper` far above every temperature makes the pupa count in a dose of its own. */
function lot(pupaUpper?: number, more: Partial<ForecastRequest> = {}): ForecastRequest {
  const profile = profileOf([
    {name: 'larva-5', lower: 8, degreeDays: 90, cv: 0.1},
    {name: 'pupa', lower: 8, degreeDays: 160, cv: 0.08},
  ]);
  const [larva, pupa] = profile.stages;
  const own = pupaUpper === undefined ? pupa! : {...pupa!, rate: {...pupa!.rate, upper: pupaUpper}};
  return requestOf([COHORT], through(orders[0]!), {...profile, stages: [larva!, own]} as typeof profile, {
    nowDays: NOW,
    dayBoundsDays: [],
    ...more,
  });
}

const mean = {...through(orders[0]!), futures};

const DAY_BOUNDS = Array.from({length: DAYS}, (_, day) => START + day);

describe('many futures', () => {
  const separately = (pupaUpper?: number) =>
    orders.map(order => forecastLot(lot(pupaUpper, {course: through(order), dayBoundsDays: DAY_BOUNDS})));
  const separate = separately();

  it.each([
    ['that count in one dose', undefined, 0.0015],
    ['whose doses are proportional', 60, 0.01],
  ])('at once are as 50 separate forecasts, through stages %s', (_, pupaUpper, within) => {
    const together = forecastLot(lot(pupaUpper, {course: mean, dayBoundsDays: DAY_BOUNDS}));
    const outBy = (day: number) => (forecast: LotForecast) =>
      forecast.perDay.reduce((sum, {toDays, probability}) => (toDays <= day ? sum + probability : sum), 0);
    const runs = pupaUpper === undefined ? separate : separately(pupaUpper);
    for (const day of DAY_BOUNDS) {
      const expected = runs.map(outBy(day)).reduce((a, b) => a + b, 0) / SIZE;
      expect(Math.abs(outBy(day)(together) - expected)).toBeLessThan(within);
    }
  });

  it('widen the window: never narrower than the mean of those of the separate forecasts', () => {
    const together = forecastLot(lot(undefined, {course: mean}));
    const width = ({p10, p90}: {p10: number | null; p90: number | null}) => p90! - p10!;
    const narrow = separate.reduce((sum, {half}) => sum + width(half!), 0) / SIZE;
    expect(width(together.half!)).toBeGreaterThan(1.3 * narrow);
    // Between the coolest and the warmest of them.
    const medians = separate.map(({half}) => half!.p50!);
    expect(together.half!.p50!).toBeGreaterThan(Math.min(...medians));
    expect(together.half!.p50!).toBeLessThan(Math.max(...medians));
  });

  it('that are all alike change nothing', () => {
    const same: Futures = {...futures, orders: orders.map(() => orders[3]!)};
    const one = forecastLot(lot(undefined, {course: through(orders[3]!)}));
    const many = forecastLot(lot(undefined, {course: {...through(orders[3]!), futures: same}}));
    const near = (a: number | null, b: number | null) => expect(Math.abs(a! - b!)).toBeLessThan(0.01);
    for (const point of ['p05', 'p10', 'p50', 'p90', 'p95'] as const)
      near(many.animal[point], one.animal[point]);
    for (const point of ['p10', 'p50', 'p90'] as const) {
      near(many.first![point], one.first![point]);
      near(many.last![point], one.last![point]);
    }
  });
});
