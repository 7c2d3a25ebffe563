// Rest, the cold that ends it, and what an animal may be that is not out in time.
import {describe, expect, it} from 'vitest';
import {forecastLot} from '../../src/development/forecast.ts';
import type {ForecastRequest} from '../../src/development/request.ts';
import type {Profile} from '../../src/records/schema/index.ts';
import {profileOf, requestOf, START} from './lots.ts';

/** 20 600 days after 1970 is 27 May 2026. */
const MAY = 5;
const kind = [{name: 'pupa', lower: 10, degreeDays: 100, cv: 0.02}];
const pupae = {atDays: START, stages: {pupa: 10}, progress: [0, 0] as const, ages: 'mixed' as const};

/** Steps of temperature: each holds from its day on. */
function steps(...levels: readonly (readonly [fromDay: number, celsius: number])[]) {
  const atDays: number[] = [];
  const temperatureC: number[] = [];
  levels.forEach(([from, celsius], i) => {
    atDays.push(START + from, START + (levels[i + 1]?.[0] ?? 400));
    temperatureC.push(celsius, celsius);
  });
  return {atDays: Float64Array.from(atDays), temperatureC: Float64Array.from(temperatureC)};
}

function resting(entry: Partial<Profile['diapause'][number]>, paceSd = 0, survival?: number): Profile {
  const diapause = {stage: 'pupa', months: [MAY], chance: 0.9, source: 'a', ...entry};
  return {...profileOf(kind, {paceSd, ...(survival === undefined ? {} : {survival})}), diapause: [diapause]};
}

const ask = (profile: Profile, course: ReturnType<typeof steps>, more: Partial<ForecastRequest> = {}) =>
  forecastLot(requestOf([pupae], course, profileOf(kind), {candidates: [{profile, weight: 1}], ...more}));

const chill = {belowC: 8, days: 20, source: 'a'};

describe('a lot of which most rest', () => {
  it('has its dates from when the cold that its profile states is complete and it is warm', () => {
    const {half, rest, status} = ask(resting({chill}), steps([0, 5], [30, 20]));
    expect(rest.chill).toMatchObject({unit: 'days', required: 20, completeDays: START + 20, stated: true});
    expect(rest.chill!.gathered).toBeCloseTo(2, 9);
    // Nothing is gathered at 5 °C; from day 30 on 100 degree-days at 20 − 10 a day.
    expect(half!.p50!).toBeCloseTo(START + 40, 0);
    expect(status).toBe('developing');
  });

  it('goes on from the end of the cold, not from when it is warmed, where it is warm then', () => {
    const broken = steps([0, 5], [10, 15], [20, 5], [25, 20]);
    const {rest} = ask(resting({chill}), broken);
    // Ten days and five days of cold: fifteen of twenty, and no more within the horizon.
    expect(rest.chill!.completeDays).toBeNull();
    const {half} = ask(resting({chill: {...chill, days: 12}}), broken);
    expect(half!.p50!).toBeGreaterThan(START + 22 + 9);
  });

  it('counts degree-days of cold where the profile does', () => {
    const degreeDays = {belowC: 8, degreeDays: 60, source: 'a'};
    const {rest} = ask(resting({chill: degreeDays}), steps([0, 5], [30, 20]));
    expect(rest.chill).toMatchObject({unit: 'degreeDays', required: 60, completeDays: START + 20});
  });

  it('is still one of resters when they come out after their cold, and those to come go by it', () => {
    const course = steps([0, 5], [30, 20]);
    const seen = {
      kind: 'emergence',
      sinceDays: START + 38,
      atDays: START + 40,
      count: 5,
      entry: 'e',
    } as const;
    const {rest, half} = ask(resting({chill}, 0.1), course, {
      nowDays: START + 40,
      alive: 5,
      sightings: [{kind: 'check', atDays: START + 38, entry: 'e'}, seen],
      looksDays: [START + 38, START + 40],
    });
    expect(rest.chance).toBeCloseTo(0.9, 9);
    expect(half!.p50!).toBeGreaterThan(START + 40);
    expect(half!.p50!).toBeLessThan(START + 41);
  });

  it('gets no date where it is never cold, and the words say what is wanting', () => {
    const {status, animal, half, stagesNow, assumptions} = ask(resting({chill}), steps([0, 20]));
    expect([status, animal.p50, half]).toEqual(['unknown', null, null]);
    expect(stagesNow).toEqual({pupa: 1});
    expect(assumptions.join(' ')).toMatch(/20 days below 8 °C: 0 days so far/);
  });

  it('is taken by the house rule where no cold is stated, and that is said', () => {
    const {rest, assumptions} = ask(resting({}), steps([0, 5], [100, 20]));
    expect(rest.chill).toMatchObject({belowC: 7, required: 84, stated: false});
    expect(assumptions.join(' ')).toContain('house rule');
  });

  it('holds of a part that was split off the animals that went, and dates of these', () => {
    const two = [{name: 'larva', lower: 10, degreeDays: 100, cv: 0.02}, ...kind];
    const entry = {stage: 'larva', months: [MAY], chance: 0.9, chill, source: 'a'};
    const profile = {...profileOf(two, {paceSd: 0}), diapause: [entry, {...entry, stage: 'pupa'}]};
    const left = {
      kind: 'removal',
      atDays: START + 5,
      stage: 'pupa',
      count: 4,
      entry: 'e',
      lot: 'A',
      into: 'B',
    } as const;
    const ofPart = (course: ReturnType<typeof steps>) =>
      forecastLot(
        requestOf([], course, profileOf(two), {
          ...{lot: 'B', alive: 4, nowDays: START + 6, sightings: [left], candidates: [{profile, weight: 1}]},
          cohorts: [{...pupae, stages: {larva: 8, pupa: 4}, lot: 'A'}],
        }),
      );
    const {stagesNow, half} = ofPart(steps([0, 5], [30, 20]));
    expect(stagesNow).toEqual({pupa: 1});
    expect(half!.p50!).toBeCloseTo(START + 40, 0);
    expect(ofPart(steps([0, 12])).stagesNow).toEqual({pupa: 1});
  });

  it('names the share that waits for a second winter where the profile has it, of hidden animals too', () => {
    const profile = resting({chill, secondYear: 0.2});
    expect(ask(profile, steps([0, 5], [30, 20])).assumptions.join(' ')).toContain('second winter');
    const hidden = forecastLot(
      requestOf([{...pupae, stages: {}}], steps([0, 5], [30, 20]), profileOf(kind), {
        candidates: [{profile, weight: 1}],
        alive: null,
      }),
    );
    expect(hidden.rest.secondYear).toBeCloseTo(0.2, 9);
    expect(hidden.animal.p50!).toBeGreaterThan(START + 30);
  });
});

describe('an animal that is not out in time', () => {
  const late = (
    lookDay: number,
    more: Partial<ForecastRequest> = {},
    profile = resting({chance: 0.2}, 0, 0.9),
  ) =>
    ask(profile, steps([0, 20]), {
      nowDays: START + lookDay,
      looksDays: [START + lookDay],
      sightings: [{kind: 'check', atDays: START + lookDay, entry: 'e1'}],
      ...more,
    });

  const alone = (lookDay: number) =>
    forecastLot(
      requestOf([{...pupae, stages: {pupa: 1}}], steps([0, 20]), profileOf(kind), {
        candidates: [{profile: resting({chance: 0.2}, 0, 0.9), weight: 1}],
        nowDays: START + lookDay,
        looksDays: [START + lookDay],
        sightings: [{kind: 'check', atDays: START + lookDay, entry: 'e1'}],
      }),
    );

  it('long after its time rests or is dead, as likely as each was from the start', () => {
    const {status, notOut} = alone(30);
    expect(status).toBe('late');
    expect(notOut!.late).toBeLessThan(1e-6);
    expect(notOut!.diapause / notOut!.dead).toBeCloseTo(0.2 / 0.1, 6);
    expect(notOut!.late + notOut!.diapause + notOut!.dead).toBeCloseTo(1, 9);
  });

  it('rests the likelier the more brothers are not out: lots that mostly rest are one in five, and 8 in 10 rest there', () => {
    const {status, notOut, rest, animal} = late(30);
    expect(notOut!.diapause / notOut!.dead).toBeCloseTo(0.8 / 0.1, 4);
    expect(rest.chance).toBeCloseTo(notOut!.diapause, 9);
    expect([status, animal.p50]).toEqual(['late', null]);
  });

  it('may still be late while slow ones are to be expected: by Bayes, where all go at one pace', () => {
    // W lognormal of mean 1, cv 0.02: the look at day 10.35 stands 1.74 sd above the mean, 4.0 % are not out.
    const {notOut} = alone(10.35);
    const inside = 0.0416;
    expect(notOut!.late).toBeCloseTo((0.7 * inside) / (0.7 * inside + 0.3), 2);
  });

  it('is hardly late where brothers came out in time: their pace speaks', () => {
    const slow = resting({chance: 0.2}, 0.2, 0.9);
    const without = late(16, {}, slow).notOut!;
    const brothers = late(
      16,
      {
        alive: 5,
        sightings: [
          {kind: 'emergence', sinceDays: START + 9, atDays: START + 11, count: 5, entry: 'e1'},
          {kind: 'check', atDays: START + 16, entry: 'e2'},
        ],
      },
      slow,
    ).notOut!;
    expect(brothers.late).toBeLessThan(without.late);
    expect(brothers.late).toBeLessThan(0.05);
  });
});
