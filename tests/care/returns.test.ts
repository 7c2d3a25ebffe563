// What bears less than a day, said at the morning list: who has to come back today, when and what for. Rooms, rules and
// dates are invented; the expected instants are those of the round and so many hours.
import {describe, expect, it} from 'vitest';
import {openTimeOf} from '../../src/care/calendar.ts';
import {jobsOf} from '../../src/care/jobs.ts';
import {comingsOf} from '../../src/care/visits.ts';
import type {Written} from '../records/daybook-of.ts';
import {type Asked, alertsAt, at, care, careInput, lot, sample, tasksAt, unit, wall} from './care-of.ts';

const weekdays = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];
const calendar = (...hours: string[]): Written => ({
  record: 'calendar',
  at: '2031-01-01T00:00',
  open: Object.fromEntries(weekdays.map(day => [day, hours])),
});
const office = calendar('09:00-17:00');

const codes = ['3', '5', '7'];
const room: Written[] = [
  sample,
  ...codes.flatMap(code => [
    unit(`A${code}`),
    lot(`L${code}`, `A${code}`, {larva: 10}, '2031-05-01T09:00'),
    ...['feed', 'clean', 'moisten'].map(task => ({
      ...{record: 'rule', code: `no-${task}-${code}`, task, for: {lot: `L${code}`}, every: {days: 1}},
      off: true,
    })),
  ]),
];

/** Hours: the soonest, as a rule, and the latest. */
const water = (code: string, [soonest, every, latest]: readonly [number, number, number]): Written => ({
  ...{record: 'rule', code: `water-${code}`, task: 'give-water', for: {lot: code}},
  ...{every: {days: every / 24}, earliestDays: soonest / 24, latestDays: latest / 24},
  at: '2031-01-01T00:00',
});
const watered = (code: string, done: string) => care('give-water', code, done);

const morning = '2031-05-21T09:00';
const said = (records: readonly Written[], now = morning, asked?: Asked) =>
  alertsAt(records, now, asked).flatMap(({id, what}) =>
    id.startsWith('return:') || id.startsWith('visit:2031-05-21') ? [`${id} ${what}`] : [],
  );
const comings = (records: readonly Written[], now = morning, asked?: Asked) => {
  const input = careInput(records, now, asked);
  const open = openTimeOf(input.state.calendar, input.civil);
  const {visits, returns} = comingsOf(jobsOf(input, open), open, input);
  const untilNext = at('2031-05-22T09:00');
  const told = (list: typeof visits) =>
    list
      .filter(({from}) => from < untilNext)
      .map(({from, to, jobs}) => [wall(from), wall(to), jobs.map(({unit: {code}}) => code).join(' ')]);
  return {visits: told(visits), returns: told(returns)};
};

describe('work that bears less than the time to the next round', () => {
  const twice = [office, ...room, water('L3', [6, 12, 18]), water('L5', [6, 12, 18])];
  const before = [watered('L3', '2031-05-20T16:00'), watered('L5', '2031-05-20T16:00')];
  const alert =
    'return:2031-05-21 come back today between 15:00 and 17:00 (give water A3, A5); cost: 1 return, 2 units, about 6 min';

  it('is announced with the morning list, several units together, and late enough for the next morning', () => {
    // 09:00 + 18 h is 03:00, and after 15:00 it bears until 09:00.
    expect(said([...twice, ...before])).toEqual([alert]);
  });

  it('is said in the same words once the round is walked, and while somebody may still come', () => {
    const done = [...before, watered('L3', morning), watered('L5', morning)];
    for (const now of [morning, '2031-05-21T11:30', '2031-05-21T15:40', '2031-05-21T16:59'])
      expect(said([...twice, ...done], now), now).toEqual([alert]);
  });

  it('says only what is left when somebody came for a part, and nothing more when all is done', () => {
    const some = [...before, ...['L3', 'L5'].map(code => watered(code, morning))];
    const came = watered('L3', '2031-05-21T15:30');
    expect(said([...twice, ...some, came], '2031-05-21T15:40')).toEqual([
      'return:2031-05-21 come back today between 15:00 and 17:00 (give water A5); cost: 1 return, 1 unit, about 3 min',
    ]);
    expect(said([...twice, ...some, came, watered('L5', '2031-05-21T15:35')], '2031-05-21T15:40')).toEqual(
      [],
    );
  });

  it('stands on the list as late when nobody came', () => {
    const done = [...before, watered('L3', morning), watered('L5', '2031-05-21T15:30')];
    const [late] = tasksAt([...twice, ...done], '2031-05-22T08:00').filter(({state}) => state === 'overdue');
    expect(late).toMatchObject({lot: 'L3', latest: at('2031-05-22T03:00')});
  });

  it('is not announced where the next round is in time', () => {
    const daily = [office, ...room, water('L3', [12, 24, 25]), watered('L3', '2031-05-20T09:30')];
    expect(comings(daily)).toEqual({visits: [], returns: []});
  });

  it('is not announced for what the round that goes on can do at its end', () => {
    // Not before 09:40, when the round is still walked.
    const daily = [office, ...room, water('L3', [24, 24, 28]), watered('L3', '2031-05-20T09:40')];
    expect(said(daily)).toEqual([]);
  });

  it('does not count a second round as a return, but says what has to be done after it', () => {
    const two = [calendar('09:00-12:00', '14:00-18:00'), ...room];
    const six = [water('L3', [3, 6, 8]), watered('L3', '2031-05-21T08:00')];
    // 14:00 + 8 h is 22:00, and the room closes at 18:00.
    expect(comings([...two, ...six]).returns).toEqual([['2031-05-21T17:00', '2031-05-21T18:00', 'A3']]);
    const twelve = [water('L3', [3, 12, 20]), watered('L3', '2031-05-21T08:00')];
    expect(comings([...two, ...twelve])).toEqual({visits: [], returns: []});
  });

  it('has its hours from nine to midnight where no calendar is written', () => {
    // 09:00 + 15 h is midnight, and after 18:00 it bears until 09:00.
    const none = [...room, water('L3', [6, 12, 15]), watered('L3', '2031-05-20T20:00')];
    expect(comings(none)).toEqual({
      visits: [],
      returns: [['2031-05-21T18:00', '2031-05-22T00:00', 'A3']],
    });
  });
});

describe('work that bears only some hours', () => {
  it('is announced for every time before the next round, in the fewest returns and visits', () => {
    const short = [office, ...room, water('L3', [2, 4, 7]), watered('L3', '2031-05-21T05:00')];
    const {visits, returns} = comings(short);
    // 24 hours in steps of at most seven: three times, one of them in open time.
    expect([visits.length, returns.length]).toEqual([2, 1]);
    const [first] = said(short);
    expect(first).toMatch(/^return:2031-05-21 come back today between 1\d:\d\d and 16:00 \(give water A3\)/);
    expect(said(short)[1]).toContain('outside opening hours on Wed 21 May, and 2 visits are needed');
  });

  it('leaves time enough whenever somebody comes within each span', () => {
    const short = [office, ...room, water('L3', [2, 4, 6]), watered('L3', '2031-05-21T05:00')];
    const {visits, returns} = comings(short);
    const spans = [...returns, ...visits].map(([from, to]) => ({from: at(from!), to: at(to!)}));
    const [began, ends] = [at(morning), at('2031-05-22T09:00')];
    const all = [{from: began, to: began}, ...spans, {from: ends, to: ends}];
    for (const [i, {from, to}] of all.slice(1).entries()) {
      expect(to - all[i]!.from, String(i)).toBeLessThanOrEqual(6 * 3_600_000);
      expect(from - all[i]!.to, String(i)).toBeGreaterThanOrEqual(2 * 3_600_000);
    }
  });

  it('says how often to come back where once is not enough', () => {
    const long = [calendar('08:00-22:00'), ...room, water('L3', [2, 4, 7]), watered('L3', morning)];
    const [alert] = said(long, morning);
    expect(alert).toMatch(
      /come back twice today between .* \(give water A3\), between .* \(give water A3\); cost: 2 returns, 1 unit, about 6 min$/,
    );
  });

  it('takes two units whose limits differ along together', () => {
    const rules = [water('L3', [3.6, 7.2, 8.4]), water('L5', [3.6, 7.2, 9.6])];
    const done = ['L3', 'L5'].map(code => watered(code, '2031-05-21T04:00'));
    const {visits, returns} = comings([office, ...room, ...rules, ...done]);
    expect(returns.map(([, , units]) => units)).toEqual(['A3 A5']);
    expect(visits.map(([, , units]) => units)).toEqual(['A3 A5', 'A3 A5']);
  });

  it('is followed though it may be done again at once', () => {
    const atOnce = [office, ...room, water('L3', [0, 12, 18]), watered('L3', '2031-05-21T05:00')];
    expect(comings(atOnce).returns).toEqual([['2031-05-21T15:00', '2031-05-21T17:00', 'A3']]);
  });
});

describe('an interval in warmth that heat shortens under a day', () => {
  const inWarmth = {
    ...{
      record: 'rule',
      code: 'warm',
      task: 'give-water',
      for: {lot: 'L3'},
      every: {degreeDays: 12, lower: 8},
    },
    at: '2031-01-01T00:00',
  };
  const records = [office, ...room, inWarmth, watered('L3', '2031-05-20T09:00')];
  /** So warm before this morning, °C, and so warm from then on. */
  const warmed = (beforeC: number, fromC: number): Asked => ({
    instantAfterDegreeDays: (_, from, degreeDays, lower) => {
      const cool = Math.max(0, at(morning) - from) / 86_400_000;
      const gathered = cool * (beforeC - lower);
      return gathered >= degreeDays
        ? from + (degreeDays / (beforeC - lower)) * 86_400_000
        : Math.max(from, at(morning)) + ((degreeDays - gathered) / (fromC - lower)) * 86_400_000;
    },
  });

  it('is announced on the first warm morning already', () => {
    // At 20 °C a day, never over one and a half; at 30 °C 13 h, never over 19.6: 04:38, and after 13:22 until 09:00.
    expect(comings(records, morning, warmed(20, 20))).toEqual({visits: [], returns: []});
    expect(comings(records, morning, warmed(20, 30)).returns).toEqual([
      ['2031-05-21T15:32', '2031-05-21T17:00', 'A3'],
    ]);
  });
});

describe('looks for adults that may not wait a day', () => {
  const emergence = new Map([
    [
      'L3',
      {
        ...{startChecking: at('2031-05-19T09:00'), nextCheck: at('2031-05-21T09:00')},
        ...{p05: at('2031-05-20T09:00'), p95: at('2031-05-27T09:00'), holdHours: 12},
      },
    ],
  ]);
  const looked = {record: 'check', lot: 'L3', found: 0, at: '2031-05-20T16:00'};

  it('are announced: once more before the room closes', () => {
    expect(said([office, ...room, looked], morning, {emergence})[0]).toContain(
      'come back today between 15:00 and 17:00 (look A3)',
    );
  });

  it('are not where no hours are written: there is one round a day', () => {
    expect(said([...room, looked], morning, {emergence})).toEqual([]);
  });
});

describe('an alert that is said beforehand', () => {
  it('is seen to as soon as somebody has said what is done about it', () => {
    const twice = [office, ...room, water('L3', [6, 12, 18]), watered('L3', '2031-05-20T16:00')];
    const seen = (alert: string) => ({
      record: 'acknowledge',
      alert,
      done: 'Ida comes',
      at: '2031-05-21T08:50',
    });
    expect(said([...twice, seen('return:2031-05-21')])).toEqual([]);
    const closed = {...office, closed: [{from: '2031-05-24', to: '2031-05-25'}]};
    const weekend = [closed, ...room, water('L3', [12, 24, 30]), watered('L3', '2031-05-20T16:00')];
    const ids = (records: readonly Written[]) => alertsAt(records, morning).map(({id}) => id);
    expect(ids(weekend)).toContain('visit:2031-05-24');
    expect(ids([...weekend, seen('visit:2031-05-24')])).not.toContain('visit:2031-05-24');
  });
});
