// Forecasts of lots: the first one, a room full of them, and how that grows; against a loop of plain arithmetic.
import type {Futures} from '../../src/climate/futures.ts';
import {forecastLot} from '../../src/development/forecast.ts';
import type {ForecastRequest, SeenAnimals} from '../../src/development/request.ts';
import {profileOf, requestOf, START} from '../development/lots.ts';
import {interleaved, processorMs} from './rounds.ts';

const READINGS_A_DAY = 144;
const HORIZON_DAYS = 400;
const FUTURES = 50;
const LIBRARY_DAYS = 14;
const UNITS = 10;
const LOTS = 200;
const FEW = 50;

interface Size {
  readonly lots: number;
  readonly days: number;
  readonly candidates: number;
}
const usual: Size = {lots: LOTS, days: 60, candidates: 3};

export function benchForecasts(): string {
  const [alone] = roomOf({...usual, lots: 1});
  const begun = processorMs();
  forecastLot(alone!);
  const coldMs = processorMs() - begun;

  const few = {...usual, lots: FEW};
  const sizes = {
    usual,
    half: {...usual, lots: LOTS / 2},
    few,
    days30: {...few, days: 30},
    days120: {...few, days: 120},
    candidates1: {...few, candidates: 1},
    candidates6: {...few, candidates: 6},
  };
  const rooms = Object.fromEntries(
    Object.entries(sizes).map(([name, size]) => [
      name,
      () => {
        for (const lot of roomOf(size)) forecastLot(lot);
      },
    ]),
  ) as Record<keyof typeof sizes, () => void>;
  const newUnit = () => {
    for (const lot of roomOf({...usual, lots: 1})) forecastLot(lot);
  };
  const timed = interleaved({arithmetic, newUnit, ...rooms}, 3, processorMs);
  const yards = (ms: number) => `${(ms / timed.arithmetic.medianMs).toFixed(2)} yards`;
  const ratio = (one: keyof typeof timed, other: keyof typeof timed) =>
    (timed[one].medianMs / timed[other].medianMs).toFixed(2);
  const all = timed.usual.medianMs;
  const further = (all - timed.half.medianMs) / (LOTS / 2);
  return [
    `forecasts: ${usual.days} days of readings, ${usual.candidates} candidates, ${FUTURES} futures, two counts a lot; in processor time`,
    `  a yard is a hundred million multiplications: ${timed.arithmetic.medianMs.toFixed(0)} ms`,
    `  the very first forecast ${coldMs.toFixed(0)} ms, ${yards(coldMs)}`,
    `  of a new unit, once warm ${timed.newUnit.medianMs.toFixed(1)} ms, ${yards(timed.newUnit.medianMs)}`,
    `  ${LOTS} lots in ${UNITS} units ${all.toFixed(0)} ms, ${yards(all)}; each further lot ${further.toFixed(1)} ms`,
    `  twice the lots take ${ratio('usual', 'half')} times as long, four times the lots ${ratio('usual', 'few')}`,
    `  twice the days ${ratio('few', 'days30')}, four times ${ratio('days120', 'days30')}`,
    `  three candidates ${ratio('few', 'candidates1')} times as long as one, six ${ratio('candidates6', 'candidates1')}`,
  ].join('\n');
}

/** A hundred million multiplications and additions. */
function arithmetic() {
  const numbers = new Float64Array(1000).fill(1);
  for (let round = 0; round < 100_000; round++)
    for (let i = 0; i < numbers.length; i++) numbers[i] = numbers[i]! * 0.999 + 0.5;
  if (!(numbers[0]! > 0)) throw new Error('arithmetic went wrong');
}

/** Lots spread over units; courses are made anew, so that nothing of them is remembered. */
function roomOf({lots, days, candidates}: Size): ForecastRequest[] {
  const units = Array.from({length: Math.min(UNITS, lots)}, (_, unit) => courseOf(unit, days));
  const profiles = Array.from({length: candidates}, (_, kind) => ({
    profile: profileOf(
      [
        {name: 'larva-4', lower: 7 + 0.3 * kind, degreeDays: 60 + 5 * kind, cv: 0.1},
        {name: 'larva-5', lower: 7.5, degreeDays: 80 + 6 * kind, cv: 0.1},
        {name: 'pupa', lower: 8, degreeDays: 130 + 8 * kind, cv: 0.07},
      ],
      {code: `kind-${kind}`},
    ),
    weight: 1,
  }));
  const now = START + days;
  return Array.from({length: lots}, (_, lot): ForecastRequest => {
    const start = now - 8 - (lot % 7);
    const count = (day: number, larvae: number): SeenAnimals => ({
      kind: 'count',
      atDays: start + day,
      stages: {'larva-4': larvae, 'larva-5': 12 - larvae},
      complete: true,
      entry: `lot ${lot} day ${day}`,
    });
    const cohort = {
      atDays: start,
      stages: {'larva-4': 12},
      progress: [0, 1] as const,
      ages: 'mixed' as const,
    };
    return requestOf([cohort], units[lot % units.length]!, profiles[0]!.profile, {
      candidates: profiles,
      sightings: [count(2, 8), count(5, 1 + (lot % 3))],
      looksDays: [start + 2, start + 5],
      nowDays: now,
      dayBoundsDays: Array.from({length: HORIZON_DAYS}, (_, day) => now + day),
      roundsDays: Array.from({length: HORIZON_DAYS}, (_, day) => now + day + 0.375),
    });
  });
}

/** Ten-minute readings up to now, and fifty orders of the last two weeks after it. */
function courseOf(unit: number, days: number) {
  const temperatureAt = (day: number) =>
    20 + 0.2 * unit + 2 * Math.sin(day / 5 + unit) + 3 * Math.sin(2 * Math.PI * (day - 0.4));
  const dayOf = (first: number) => {
    const atDays = Float64Array.from({length: READINGS_A_DAY + 1}, (_, i) => i / READINGS_A_DAY);
    return {atDays, temperatureC: atDays.map(at => temperatureAt(first + at))};
  };
  const library = Array.from({length: LIBRARY_DAYS}, (_, i) => dayOf(days - LIBRARY_DAYS + i));
  const orders = Array.from({length: FUTURES}, (_, future) =>
    Uint16Array.from(
      {length: HORIZON_DAYS},
      (_, day) => (7 * future + 3 * day + ((day * future) % 5)) % LIBRARY_DAYS,
    ),
  );
  const futures: Futures = {fromDays: START + days, days: library, orders, ofEarlierYears: 0};
  const nodes = (days + HORIZON_DAYS) * 24;
  const past = Array.from({length: days * READINGS_A_DAY}, (_, i) => i / READINGS_A_DAY);
  const ahead = Array.from({length: nodes - days * 24 + 1}, (_, i) => days + i / 24);
  const since = Float64Array.from([...past, ...ahead]);
  return {atDays: since.map(at => START + at), temperatureC: since.map(temperatureAt), futures};
}
