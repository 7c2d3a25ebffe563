import {readFileSync} from 'node:fs';
import {describe, expect, test} from 'vitest';
import {forecastLot} from '../../src/development/forecast.ts';
import type {ForecastRequest} from '../../src/development/request.ts';
import {type Profile, parseRecord} from '../../src/records/schema/index.ts';
import {profileOf, requestOf, START, wave} from './lots.ts';
import {dose, drawFrom, normal, type SimulatedCohort, type SimulatedStage, Simulation} from './simulated.ts';

const kind: readonly SimulatedStage[] = [
  {name: 'larva-4', lower: 7, degreeDays: 60, cv: 0.1},
  {name: 'larva-5', lower: 7, degreeDays: 80, cv: 0.1},
  {name: 'pupa', lower: 7.5, degreeDays: 120, cv: 0.06},
];
const course = wave(20, 4);
const start = START + 0.3;
const larvae = {
  atDays: start,
  stages: {'larva-4': 8, 'larva-5': 4},
  progress: [0, 1],
  ages: 'mixed',
} as const;
const ask = (more: Partial<ForecastRequest> = {}, profile = profileOf(kind)) =>
  forecastLot(requestOf([larvae], course, profile, more));

function bundled(code: string): Profile {
  const record = parseRecord(
    JSON.parse(readFileSync(new URL(`../../profiles/${code}.json`, import.meta.url), 'utf8')),
    code,
  );
  if (record.record !== 'profile') throw new TypeError(`${code} is no profile`);
  return record;
}

describe('forecastLot', () => {
  test('says the same for the same request, and changes nothing in it', () => {
    const request = Object.freeze(requestOf([larvae], course, profileOf(kind)));
    expect(forecastLot(request)).toEqual(forecastLot(request));
  });

  test('orders its quantiles, and first before half before last', () => {
    const {animal, first, half, last} = ask();
    const points = Object.values(animal).map(Number);
    expect(points).toEqual(points.toSorted((a, b) => a - b));
    for (const point of ['p10', 'p50', 'p90'] as const) {
      expect(first![point]).toBeLessThan(half![point]!);
      expect(half![point]).toBeLessThan(last![point]!);
    }
  });

  test('expects as many adults as are alive, day by day and in all, less those that survival takes', () => {
    const {expected, perDay} = ask({}, profileOf(kind, {survival: 0.75}));
    expect(expected).toBeCloseTo(9, 4);
    expect(perDay.reduce((sum, day) => sum + day.expected!, 0)).toBeCloseTo(9, 3);
    expect(ask({survival: 0.5}).expected).toBeCloseTo(6, 4);
    expect(ask().assumptions.join(' ')).toContain('No survival is known');
  });

  test('gives one animal alone where nobody knows how many there are', () => {
    const {alive, expected, first, half, last, animal, perDay} = ask({alive: null});
    expect([alive, expected, first, half, last, perDay[0]!.expected]).toEqual([
      null,
      null,
      null,
      null,
      null,
      null,
    ]);
    for (const point of ['p05', 'p50', 'p95'] as const)
      expect(animal[point]).toBeCloseTo(ask().animal[point]!, 3);
  });

  test('of hidden animals, those that came out say when they do, not how many there are', () => {
    const pupae = {...larvae, stages: {pupa: 1}};
    const asked = (sightings: ForecastRequest['sightings']) =>
      forecastLot(
        requestOf([pupae], course, profileOf(kind), {
          alive: null,
          nowDays: start + 8,
          looksDays: [start + 8],
          sightings,
        }),
      );
    const seen = {sinceDays: start + 7, atDays: start + 8, entry: 'e'};
    const early = {...seen, sinceDays: start, atDays: start + 2};
    const checked = asked([{...seen, kind: 'check'}]);
    const late = asked([{...seen, kind: 'emergence', count: 30}]);
    const spread = asked([
      {...early, kind: 'emergence', count: 20},
      {...seen, kind: 'emergence', count: 10},
    ]);
    expect(late.pace!.p50).toBeLessThan(spread.pace!.p50);
    expect(late.animal.p50).toBeGreaterThan(spread.animal.p50!);
    expect(checked.animal.p05).toBeGreaterThanOrEqual(start + 7.9);
    expect(spread.animal.p05).toBeGreaterThanOrEqual(start + 7.9);
    expect(late.status).toBe('emerging');
    expect(asked([{...seen, kind: 'removal', count: 3}]).animal.p50).not.toBeNull();
  });

  test('takes a hidden animal as likely in any stage as each takes', () => {
    const hidden = {...larvae, stages: {}};
    const {stagesNow} = forecastLot(
      requestOf([hidden], course, profileOf(kind), {alive: null, nowDays: start}),
    );
    // At 20 °C the stages take 60/13, 80/13 and 120/12.5 days.
    const days = {'larva-4': 60 / 13, 'larva-5': 80 / 13, pupa: 120 / 12.5};
    const whole = days['larva-4'] + days['larva-5'] + days.pupa;
    for (const [stage, length] of Object.entries(days))
      expect(stagesNow[stage]).toBeCloseTo(length / whole, 2);
  });

  test('is finished with a closed lot and with one that has no animal left', () => {
    expect(ask({closed: true}).status).toBe('finished');
    expect(ask({alive: 0}).status).toBe('finished');
  });

  test('without a candidate, or with weights of zero, says what would help', () => {
    for (const candidates of [[], [{profile: profileOf(kind), weight: 0}]]) {
      const {status, animal, assumptions} = ask({candidates});
      expect(status).toBe('unknown');
      expect(animal.p50).toBeNull();
      expect(assumptions[0]).toContain('candidate');
    }
  });

  test('gives each candidate its weight in the dates, however its pace is laid out', () => {
    const slow = kind.map(stage => ({...stage, degreeDays: stage.degreeDays * 8}));
    const candidates = [
      {profile: profileOf(kind, {code: 'known-pace', paceSd: 0}), weight: 0.3},
      {profile: profileOf(slow, {code: 'slow', paceSd: 0.1}), weight: 0.7},
    ];
    const {perDay} = ask({candidates});
    const early = perDay.filter(({toDays}) => toDays < START + 40);
    expect(early.reduce((sum, {probability}) => sum + probability, 0)).toBeCloseTo(0.3, 4);
  });

  test('a candidate without the stage they were found in is left out, naming both', () => {
    const profile = profileOf(kind);
    const other = profileOf([...kind.slice(0, -1), {...kind[0]!, name: 'prepupa'}, kind.at(-1)!]);
    const prepupae = [{...larvae, stages: {prepupa: 2}}];
    const alone = forecastLot(requestOf(prepupae, course, profile));
    expect(alone).toMatchObject({status: 'unknown', animal: {p50: null}});
    expect(alone.assumptions[0]).toMatch(/no stage prepupa.*larva-4, larva-5, pupa/s);
    const candidates = [
      {profile, weight: 0.7},
      {profile: other, weight: 0.3},
    ];
    const both = forecastLot(requestOf(prepupae, course, profile, {candidates}));
    expect(both.candidates.map(({weight}) => weight)).toEqual([0, 1]);
    expect(both.animal).toEqual(forecastLot(requestOf(prepupae, course, other)).animal);
    expect(both.assumptions[0]).toMatch(/no stage prepupa/);
  });

  test('leaves open what lies beyond an unknown temperature, and says so', () => {
    const {animal} = ask();
    const gap = (animal.p25! + animal.p50!) / 2;
    const temperatureC = course.temperatureC.map((value, i) =>
      course.atDays[i]! >= gap ? Number.NaN : value,
    );
    const open = ask({course: {atDays: course.atDays, temperatureC}});
    expect(open.status).toBe('unknown');
    expect(open.animal.p25).toBeCloseTo(animal.p25!, 1);
    expect(open.animal.p50).toBeNull();
    expect(open.assumptions[0]).toContain('temperature is not known');
  });

  test('knows no date where the past temperature is missing', () => {
    const temperatureC = course.temperatureC.map((value, i) => (i > 8 && i < 20 ? Number.NaN : value));
    expect(ask({course: {atDays: course.atDays, temperatureC}}).animal.p05).toBeNull();
  });

  test('gives no date beyond the horizon where it is too cold to go on', () => {
    const {animal, status, expected, startCheckingDays} = ask({course: wave(4, 1)});
    expect([animal.p05, startCheckingDays, status]).toEqual([null, null, 'developing']);
    expect(expected).toBeCloseTo(0, 6);
  });

  test('is due once adults may come, and says when they are probably out already', () => {
    const {animal} = ask();
    expect(ask({nowDays: animal.p05! - 2}).status).toBe('developing');
    expect(ask({nowDays: animal.p05!}).status).toBe('due');
    const {status, assumptions} = ask({nowDays: animal.p95! + 5});
    expect(status).toBe('due');
    expect(assumptions.join(' ')).toContain('probably out already');
  });

  test('keeps the stage shares of played-out animals, at any instant', () => {
    const at = [start + 2, start + 8, start + 14];
    const {stageShares} = ask({sharesAtDays: at});
    const draw = drawFrom(3);
    const simulation = new Simulation(course);
    const lots = 4000;
    const counts = at.map(() => [0, 0, 0, 0]);
    for (let lot = 0; lot < lots; lot++) {
      const pace = Math.exp(0.1 * normal(draw));
      for (const [stage, n] of [
        [0, 8],
        [1, 4],
      ] as const)
        for (let i = 0; i < n; i++) {
          const toGo = dose(draw, kind[stage]!) * (1 - draw());
          const leaves = simulation.leaves({stages: kind, paceSd: 0.1}, pace, stage, start, toGo, draw);
          at.forEach((instant, k) => {
            counts[k]![stage + leaves.filter(left => left <= instant).length]!++;
          });
        }
    }
    stageShares.forEach(({shares}, k) => {
      for (const [stage, name] of ['larva-4', 'larva-5', 'pupa', 'adult'].entries())
        expect(shares[name] ?? 0, `${name} on day ${at[k]}`).toBeCloseTo(
          counts[k]![stage]! / (12 * lots),
          1.6,
        );
      expect(Object.values(shares).reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    });
  });

  test('counts degree-days of the stage that most are in', () => {
    const fresh = {...larvae, stages: {'larva-4': 5}, progress: [0, 0] as const};
    const constant = {atDays: Float64Array.of(START, START + 402), temperatureC: Float64Array.of(20, 20)};
    const {degreeDays} = forecastLot(requestOf([fresh], constant, profileOf(kind), {nowDays: start + 2}));
    expect(degreeDays).toMatchObject({stage: 'larva-4', required: 60, lower: 7});
    expect(degreeDays!.accumulated).toBeCloseTo(26, 0);
  });

  test('adds cohorts that joined on different days', () => {
    const later = {atDays: start + 6, stages: {pupa: 12}, progress: [0, 0] as const, ages: 'mixed' as const};
    const {animal} = forecastLot(
      requestOf([larvae, later], course, profileOf(kind, {paceSd: 0}), {nowDays: start + 7}),
    );
    const alone = (cohort: typeof larvae | typeof later) =>
      forecastLot(requestOf([cohort], course, profileOf(kind, {paceSd: 0}), {nowDays: start + 7}));
    // Half of the animals each: the share out by any instant is the mean of both.
    const outBy = (perDay: ReturnType<typeof ask>['perDay'], at: number) =>
      perDay.filter(({toDays}) => toDays <= at + 1e-6).reduce((sum, {probability}) => sum + probability, 0);
    const day = Math.floor(animal.p50!);
    const both = forecastLot(
      requestOf([larvae, later], course, profileOf(kind, {paceSd: 0}), {nowDays: start + 7}),
    );
    expect(outBy(both.perDay, day)).toBeCloseTo(
      (outBy(alone(larvae).perDay, day) + outBy(alone(later).perDay, day)) / 2,
      3,
    );
  });

  test('says with what chance an animal rests, by stage and month', () => {
    const profile: Profile = {
      ...profileOf(kind),
      diapause: [{stage: 'larva', months: [5], chance: 0.4, source: 'a'}],
    };
    // 20 600 days after 1970 is 27 May 2026.
    const {rest, assumptions} = ask({candidates: [{profile, weight: 1}]});
    expect(rest.chance).toBeCloseTo(0.4, 9);
    expect(assumptions.join(' ')).toContain('diapause');
  });
});

describe('forecastLot of a group', () => {
  const constant = {atDays: Float64Array.of(START, START + 450), temperatureC: Float64Array.of(20, 20)};
  const eggs = {atDays: START, stages: {egg: 1}, progress: [0, 0] as const, ages: 'mixed' as const};
  const askGroup = (code: string, cohort: SimulatedCohort, more: Partial<ForecastRequest> = {}) =>
    forecastLot(
      requestOf([cohort], constant, profileOf(kind), {
        candidates: [{profile: bundled(code), weight: 1}],
        dayBoundsDays: [],
        ...more,
      }),
    );

  // The windows from egg to adult at 20 °C that the groups' variation was made for: computed from the species named
  // in each profile (Lepidoptera 33 to 85 d, Diptera 15 to 43 d over 68 and 70 species).
  test.each([
    ['lepidoptera', 33, 85],
    ['diptera', 15, 43],
  ])('%s: four of five are out from %d to %d days', (code, from, to) => {
    const {animal} = askGroup(code, eggs);
    expect(animal.p10! - START).toBeGreaterThan(from - 0.6);
    expect(animal.p10! - START).toBeLessThan(from + 0.6);
    expect(animal.p90! - START).toBeGreaterThan(to - 1.5);
    expect(animal.p90! - START).toBeLessThan(to + 1.5);
  });

  test('the pace of a group is a pace: what its members differ by is not in it', () => {
    const {pace} = askGroup('lepidoptera', larvae);
    expect(pace!.p50).toBeCloseTo(1, 4);
    expect(pace!.p90).toBeCloseTo(Math.exp(0.1 * 1.2816), 2);
  });

  test('members with too few instars drop out; where all do, no date is given', () => {
    const seventh = {...larvae, stages: {'larva-7': 3}};
    expect(Object.keys(askGroup('lepidoptera', seventh).stagesNow)).not.toContain('larva-6');
    const ninth = askGroup('lepidoptera', {...larvae, stages: {'larva-9': 3}});
    expect(ninth.status).toBe('unknown');
    expect(ninth.assumptions[0]).toMatch(/no stage larva-9/);
  });

  test('none comes out before the last look at which none was', () => {
    const day = START + 24;
    const seen = {kind: 'emergence', sinceDays: day - 2, atDays: day, count: 4, entry: 'e'} as const;
    const looked = {sightings: [seen], looksDays: [day - 2, day], nowDays: day, alive: 36};
    const {first} = askGroup('lepidoptera', {...larvae, stages: {'larva-5': 40}}, looked);
    expect(first!.p10).toBeGreaterThanOrEqual(day);
    expect(first!.p10! - day).toBeLessThan(0.5);
  });

  test('a candidate without dates keeps its share, and says how many moults are to go', () => {
    const {candidates, assumptions, animal} = askGroup(
      'ephemeroptera',
      {...larvae, stages: {nymph: 4}},
      {
        candidates: [
          {profile: bundled('odonata'), weight: 1},
          {profile: bundled('ephemeroptera'), weight: 3},
        ],
      },
    );
    expect(animal.p50).not.toBeNull();
    expect(candidates).toEqual([
      {profile: 'odonata', weight: 0.25},
      {profile: 'ephemeroptera', weight: expect.closeTo(0.75, 9)},
    ]);
    expect(assumptions.join(' ')).toMatch(/Odonata\) get no date.*hold for the other candidates alone/);
  });

  test('a moult seen sharpens what the group may be', () => {
    const before = askGroup('lepidoptera', larvae).half!;
    const count = {kind: 'count', atDays: START + 6, complete: true, entry: 'c'} as const;
    const after = askGroup('lepidoptera', larvae, {
      sightings: [
        {...count, stages: {'larva-4': 8, 'larva-5': 4}, atDays: START + 2},
        {...count, stages: {'larva-5': 10, 'larva-6': 2}},
      ],
      nowDays: START + 6,
    }).half!;
    expect(after.p90! - after.p10!).toBeLessThan(0.95 * (before.p90! - before.p10!));
  });
});
