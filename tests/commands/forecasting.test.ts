// Planning, reasons, scenarios and looking back, asked of the built program.
import {beforeAll, describe, expect, it} from 'vitest';
import {newRoom, type RoomAt} from './program.ts';

interface Told {
  readonly status: string;
  readonly adults: {readonly animal: {readonly p50: string}; readonly half: Times};
  readonly pace: {readonly p10: number; readonly p50: number; readonly p90: number};
  readonly experience: readonly {
    readonly profile: string;
    readonly pace: {readonly p50: number; readonly lots: number};
  }[];
  readonly why: {
    readonly learned: readonly {readonly entries: readonly string[]; readonly pace: {readonly p50: number}}[];
    readonly doubts: Readonly<Record<string, number>>;
    readonly wouldHelp: string;
  };
}
interface Times {
  readonly p10: string;
  readonly p50: string;
  readonly p90: string;
}
interface Plan {
  readonly possible: boolean;
  readonly holdC: number | null;
  readonly earliest: string;
  readonly latest: string;
  readonly units: readonly {readonly unit: string; readonly p50: string}[];
  readonly unfit: readonly {readonly unit: string; readonly why: string}[];
}
interface Review {
  readonly lots: number;
  readonly forecasts: readonly {
    readonly when: string;
    readonly n: number;
    readonly biasDays: number | null;
  }[];
  readonly profiles: readonly {
    readonly profile: string;
    readonly pace: {readonly p50: number; readonly lots: number};
  }[];
  readonly replayed: readonly {readonly lot: string; readonly when: string; readonly half: Times}[];
  readonly passedOver: readonly {readonly lot: string; readonly when: string; readonly why: string}[];
}

/** Of 100 degree-days above 10 °C, individuals nearly alike: ten days at 20 °C. */
const profile = {
  record: 'profile',
  profile: 'invented',
  name: 'invented',
  rank: 'species',
  rearing: ['cage'],
  stages: [{stage: 'pupa', rate: {kind: 'degree-day', lower: 10, degreeDays: 100}, cv: 0.03}],
  paceSd: 0.1,
  limits: {temperature: {low: 12, high: 28}},
  sources: [{id: 'a', citation: 'invented for the test', provenance: 'computed'}],
};
const furnished = [
  profile,
  {record: 'unit', code: 'C1', type: 'cage', place: 'a/1', setPoints: {constant: 20}},
  {record: 'unit', code: 'C2', type: 'cage', place: 'a/2', setPoints: {constant: 24}},
  {record: 'unit', code: 'C3', type: 'cage', place: 'a/3', setPoints: {constant: 5}},
  {record: 'unit', code: 'T1', type: 'aquarium', place: 'a/4', setPoints: {constant: 20}},
  {record: 'sample', code: 'S', method: 'search', collected: {from: '2026-04-29'}},
];
const lot = (code: string, at: string) => ({
  record: 'lot',
  code,
  sample: 'S',
  unit: 'C1',
  at,
  stages: {pupa: 10},
  progress: [0, 0],
  candidates: [{profile: 'invented'}],
});
const START = '2026-06-01T12:00:00Z';
const hoursApart = (a: string, b: string) => Math.abs(Date.parse(a) - Date.parse(b)) / 3_600_000;

function granted({status, err}: {status: number | null; err: string}) {
  if (status !== 0) throw new Error(err);
}

describe('teneral plan', () => {
  let room: RoomAt;
  beforeAll(() => {
    room = newRoom();
    granted(room.apply(START, [...furnished, lot('A', START)]));
  });

  it('names the temperature that brings half of the adults out at noon of the day, and a forecast held there agrees', () => {
    const plan = room.ask<Plan>(START, 'plan', 'A', '--adults-by', '2026-06-09');
    // Eight days: 100 / 8 above 10 °C.
    expect(plan.possible).toBe(true);
    expect(plan.holdC!).toBeCloseTo(22.5, 0);
    const [held] = room.ask<Told[]>(START, 'forecast', 'A', '--hold', String(plan.holdC));
    expect(hoursApart(held!.adults.animal.p50, '2026-06-09T12:00:00Z')).toBeLessThan(2);
  });

  it('says what can be reached where the day cannot', () => {
    const plan = room.ask<Plan>(START, 'plan', 'A', '--adults-by', '2026-06-03');
    expect([plan.possible, plan.holdC]).toEqual([false, null]);
    // 100 degree-days at 28 − 10 and at 12 − 10 a day, as the middle animal goes.
    expect(hoursApart(plan.earliest, '2026-06-07T01:20:00Z')).toBeLessThan(6);
    expect(hoursApart(plan.latest, '2026-07-21T12:00:00Z')).toBeLessThan(24);
  });

  it('takes the warmer the larger the share', () => {
    const hold = (share: string) =>
      room.ask<Plan>(START, 'plan', 'A', '--adults-by', '2026-06-09', '--share', share).holdC!;
    expect(hold('0.9')).toBeGreaterThan(hold('0.5') + 0.5);
    expect(hold('0.1')).toBeLessThan(hold('0.5') - 0.5);
  });

  it('chooses among the units that fit the animals, the latest in time first, and says why others do not', () => {
    const plan = room.ask<Plan>(START, 'plan', 'A', '--adults-by', '2026-06-12');
    expect(plan.units.map(({unit}) => unit)).toEqual(['C1', 'C2']);
    expect(plan.unfit.map(({unit}) => unit)).toEqual(['C3', 'T1']);
    expect(plan.unfit[1]!.why).toContain('aquarium');
  });

  it.each([
    [['A', '--adults-by', 'soon'], '--adults-by'],
    [['A', '--adults-by', '2026-05-01'], '--adults-by'],
    [['A', '--adults-by', '2026-06-09', '--share', '1.5'], '--share'],
    [['nobody', '--adults-by', '2026-06-09'], 'plan'],
  ])('refuses %j and names what was wrong', (words, where) => {
    const {status, err} = room.at(START, 'plan', ...words);
    expect(status).toBe(1);
    expect(err).toContain(where);
  });

  it('refuses to hold what no unit can', () => {
    const {status, err} = room.at(START, 'forecast', 'A', '--hold', '500');
    expect(status).toBe(1);
    expect(err).toContain('--hold');
  });
});

describe('teneral review', () => {
  const day = (start: string, days: number) => new Date(Date.parse(start) + days * 86_400_000).toISOString();
  const starts = ['2026-05-01T12:00:00Z', '2026-05-03T12:00:00Z', '2026-05-05T12:00:00Z'];
  let room: RoomAt;
  const asked: Told[] = [];

  beforeAll(() => {
    room = newRoom();
    granted(room.apply('2026-04-30T12:00:00Z', furnished));
    const doings = starts.flatMap((start, i) => {
      const code = `R${i + 1}`;
      // All out after 8.3 days in place of 10: a pace of 1.2.
      const out = [
        {record: 'emergence', lot: code, at: day(start, 8.5), since: day(start, 8.1), adults: [{count: 10}]},
        {record: 'close', lot: code, at: day(start, 8.5), reason: 'all emerged'},
      ];
      return [
        {at: start, records: [lot(code, start)]},
        {at: day(start, 8.5), records: out},
      ];
    });
    doings.sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
    for (const {at, records} of doings) {
      granted(room.apply(at, records));
      const [begun] = records;
      if (begun!.record === 'lot')
        asked.push(...room.ask<Told[]>(at, 'forecast', (begun as {code: string}).code));
    }
    granted(room.apply(START, [lot('A', START)]));
  }, 240_000);

  it('replays what was said then, although more is known now', () => {
    const review = room.ask<Review>(START, 'review');
    expect(review.lots).toBe(3);
    const first = review.replayed.filter(({when}) => when === 'start');
    expect(first.map(each => each.lot)).toEqual(['R1', 'R2', 'R3']);
    first.forEach((each, i) => {
      expect(hoursApart(each.half.p50, asked[i]!.adults.half.p50)).toBeLessThan(0.1);
      expect(hoursApart(each.half.p90, asked[i]!.adults.half.p90)).toBeLessThan(0.1);
    });
    const [start] = review.forecasts;
    expect(start).toMatchObject({when: 'start', n: 3});
    // Ten days were said of what took 8.3.
    expect(start!.biasDays!).toBeCloseTo(1.7, 0);
  });

  it('leaves out lots that were finished before a day', () => {
    expect(room.ask<Review>(START, 'review', '--since', '2026-05-13').lots).toBe(1);
    expect(room.ask<Review>(START, 'review', '--since', '2026-06-01').lots).toBe(0);
  });

  it('lets the next lot begin from the pace of the finished ones, shrunk, said, and left out where asked', () => {
    const [own] = room.ask<Told[]>(START, 'forecast', 'A');
    const [published] = room.ask<Told[]>(START, 'forecast', 'A', '--published');
    expect(published!.pace.p50).toBeCloseTo(1, 2);
    expect(own!.pace.p50).toBeGreaterThan(1.05);
    expect(own!.pace.p50).toBeLessThan(1.2);
    expect(own!.pace.p90 - own!.pace.p10).toBeLessThan(published!.pace.p90 - published!.pace.p10);
    expect(own!.experience[0]).toMatchObject({profile: 'invented', pace: {lots: 3}});
    expect(room.at(START, 'forecast', 'A').out).toContain('begins from');
    expect(published!.experience).toEqual([]);
  });

  it('leaves them out as long as the room is set so, and says it', () => {
    const pace = (...words: string[]) => room.ask<Told[]>(START, 'forecast', 'A', ...words)[0]!.pace.p50;
    const own = pace();
    granted(room.apply(START, [{record: 'setting', finishedLots: 'left-out'}]));
    expect(pace()).toBeCloseTo(1, 2);
    expect(pace('--own')).toBe(own);
    expect(room.at(START, 'forecast', 'A').out).toContain('set to leave finished lots out');
    expect(room.at(START, 'review').out).toContain('begin as published');
    granted(room.apply(START, [{record: 'setting', finishedLots: 'used'}]));
    expect(pace()).toBe(own);
  });

  it('asked why, a forecast says what each entry taught and what would narrow it most', () => {
    granted(room.apply(day(START, 6), [{record: 'check', lot: 'A', at: day(START, 6), found: 0}]));
    granted(room.apply(day(START, 9), [{record: 'check', lot: 'A', at: day(START, 9), found: 0}]));
    const [told] = room.ask<Told[]>(day(START, 9), 'forecast', 'A', '--why');
    const {learned, doubts, wouldHelp} = told!.why;
    expect(learned.map(({entries}) => entries.length)).toEqual([1, 1]);
    expect(learned[1]!.pace.p50).toBeLessThan(learned[0]!.pace.p50);
    expect(Object.values(doubts).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    expect(wouldHelp).not.toBe('');
    const said = room.at(day(START, 9), 'forecast', 'A', '--why').out;
    for (const name of ['readings', 'at first', 'learned', 'open', 'would help', 'figures'])
      expect(said).toContain(name);
  });
});
