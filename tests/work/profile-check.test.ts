import {describe, expect, it} from 'vitest';
import {parseRecord} from '../../src/records/schema/index.ts';
import {checkedProfile, LARGEST_DEVIATION, type ProfileCheck} from '../../src/work/profile-check.ts';
import {bundled, bundledCodes} from '../profiles/bundled.ts';

const stages = [
  {stage: 'egg', rate: {kind: 'degree-day', lower: 10, upper: 32, degreeDays: 60}},
  {
    stage: 'larva',
    rate: {
      kind: 'table',
      points: [
        {temperature: 15, days: 40},
        {temperature: 20, days: 21},
        {temperature: 25, days: 14},
        {temperature: 30, days: 11},
      ],
      lower: 9,
      upper: 36,
    },
  },
  {stage: 'pupa', rate: {kind: 'briere-1', a: 9e-5, lower: 9.5, upper: 37}},
];
const sound = {
  record: 'profile',
  profile: 'made-up',
  name: 'Made up',
  rank: 'species',
  stages,
  sources: [{id: 'a', citation: 'invented', provenance: 'common-practice'}],
};

function check(changes: object): ProfileCheck {
  const record = parseRecord({...sound, ...changes}, 'file');
  if (record.record !== 'profile') throw new Error('this is no profile');
  return checkedProfile(record);
}

/** The profile with one stage's rate changed. */
const withRate = (stage: number, rate: object) => ({
  stages: stages.map((each, i) => (i === stage ? {...each, rate: {...each.rate, ...rate}} : each)),
});
const withDays = (...days: number[]) =>
  withRate(1, {points: days.map((each, i) => ({temperature: 15 + 5 * i, days: each}))});

describe('profile check', () => {
  it.each(bundledCodes)('%s gives back what it was made of: tables exactly, lines within the bound', code => {
    const profile = bundled(code);
    const {sound, doubts, deviations} = checkedProfile(profile);
    expect(doubts).toEqual([]);
    expect(sound).toBe(true);
    const tables =
      'variation' in profile || 'undated' in profile
        ? []
        : profile.stages.filter(({rate}) => rate.kind === 'table');
    const points = tables.flatMap(({rate}) => (rate.kind === 'table' ? rate.points : []));
    for (const {deviation} of deviations.slice(0, points.length))
      expect(Math.abs(deviation!)).toBeLessThan(1e-9);
    for (const {deviation} of deviations) expect(Math.abs(deviation!)).toBeLessThanOrEqual(LARGEST_DEVIATION);
  });

  it('recomputes what was published over one stage and over several', () => {
    const published = [
      {from: 'egg', to: 'egg', points: [{temperature: 20, days: 6.3}], source: 'a'},
      {from: 'egg', to: 'larva', points: [{temperature: 20, days: 25}], source: 'a'},
    ];
    const {deviations, sound} = check({published});
    expect(sound).toBe(true);
    expect(deviations.slice(-2)).toEqual([
      {stage: 'egg', temperature: 20, days: 6.3, recomputed: 6, deviation: 6 / 6.3 - 1},
      {
        stage: 'egg to larva',
        temperature: 20,
        days: 25,
        recomputed: expect.closeTo(27, 9),
        deviation: expect.closeTo(0.08, 9),
      },
    ]);
  });

  it('asks about published days that the rates miss by far, or do not reach at all', () => {
    const points = [
      {temperature: 8, days: 90},
      {temperature: 20, days: 60},
    ];
    const {sound, doubts} = check({published: [{from: 'pupa', to: 'pupa', points, source: 'a'}]});
    expect(sound).toBe(false);
    expect(doubts.map(({why}) => why)).toEqual([
      '90 days are published, but by the profile nothing develops there',
      expect.stringMatching(/^60 days are published, \d+\.\d recomputed$/),
    ]);
  });

  it.each<[string, object, string, RegExp]>([
    [
      'days that rise in the linear range',
      withDays(20, 30, 14, 11),
      'stages.1.rate.points.1.days',
      /warmth should still speed/,
    ],
    ['days that rise throughout', withDays(10, 14, 20, 30), 'stages.1.rate.points.1.days', /10 at 15 °C/],
    [
      'a lower threshold in °F',
      withRate(0, {lower: 39, upper: undefined}),
      'stages.0.rate.lower',
      /were it °F, it is 3\.9 °C/,
    ],
    [
      'limits in °F',
      {limits: {temperature: {low: 50, high: 77}}},
      'limits.temperature.low',
      /were it °F, it is 10 °C/,
    ],
    ['an optimum in the cold', withRate(2, {upper: 15}), 'stages.2.rate', /optimum/],
    [
      'degree-hours for degree-days',
      withRate(0, {degreeDays: 24 * 60}),
      'stages.0.rate',
      /96 days of egg .*were it hours, it is 4 days/,
    ],
    [
      'days that were divided by 24 once too often',
      withRate(0, {degreeDays: 60 / 24}),
      'stages.0.rate',
      /0\.17 days of egg .*it is 4 days/,
    ],
    [
      'stages out of order',
      {stages: [stages[1], stages[0], stages[2]]},
      'stages.1.stage',
      /egg stands after larva/,
    ],
    [
      'a moth without a pupa',
      {classification: {order: 'Lepidoptera'}, stages: stages.slice(0, 2)},
      'stages',
      /Lepidoptera have a pupa between larva and adult/,
    ],
    [
      'a beetle with nymphs',
      {classification: {order: 'Coleoptera'}, stages: [stages[0], {...stages[1], stage: 'nymph'}]},
      'stages.1.stage',
      /no nymph/,
    ],
  ])('asks about %s, naming the field', (_, changes, field, why) => {
    const {sound, doubts} = check(changes);
    expect(sound).toBe(false);
    expect(doubts[0]).toMatchObject({field, why: expect.stringMatching(why)});
  });

  it.each<[string, object, RegExp]>([
    [
      'the lower threshold above the upper',
      withRate(0, {lower: 33}),
      /stages\.0\.rate\.upper: 32 is not accepted\. Upper must be above the lower one/,
    ],
    [
      'a table in °F',
      withRate(1, {points: [59, 68, 77].map(temperature => ({temperature, days: 9}))}),
      /stages\.1\.rate\.points\.0\.temperature: 59 .*were it °F/,
    ],
    ['a negative constant', withRate(0, {degreeDays: -60}), /stages\.0\.rate\.degreeDays/],
    [
      'no larva between egg and pupa',
      {stages: [stages[0], stages[2]]},
      /stages: .*a larva or nymph is missing between egg and pupa/i,
    ],
    [
      'a missing instar',
      {
        stages: [
          {...stages[1], stage: 'larva-1'},
          {...stages[1], stage: 'larva-3'},
        ],
      },
      /larva-2 is missing before larva-3/i,
    ],
    [
      'instars told apart and not',
      {stages: [stages[1], {...stages[1], stage: 'larva-3'}]},
      /larva stands beside larva-3/i,
    ],
    [
      'no first instar after the egg',
      {stages: [stages[0], {...stages[1], stage: 'larva-2'}]},
      /larva-1 is missing between egg and larva-2/i,
    ],
    [
      'limits that do not rise',
      {limits: {temperature: {low: 30, high: 12}}},
      /limits\.temperature\.high: 12 .*high must be above low/i,
    ],
    [
      'published days of a stage it has not',
      {published: [{from: 'egg', to: 'nymph', points: [{temperature: 20, days: 9}], source: 'a'}]},
      /published\.0\.to: .*no stage nymph/i,
    ],
  ])('refuses %s, naming the field', (_, changes, message) => {
    expect(() => check(changes)).toThrow(message);
  });

  it('takes a chain that begins in the middle, and the larva and nymphs of a mite', () => {
    expect(check({stages: [{...stages[1], stage: 'larva-5'}, stages[2]]}).sound).toBe(true);
    const mite = ['egg', 'larva', 'nymph-1', 'nymph-2'].map(stage => ({...stages[1]!, stage}));
    expect(check({stages: mite}).sound).toBe(true);
  });
});
