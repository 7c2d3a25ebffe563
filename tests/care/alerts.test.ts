import {describe, expect, it} from 'vitest';
import {alertsAt, at, lot, profile, sample, unit} from './care-of.ts';

const noTasks = {
  record: 'calendar',
  at: '2031-01-01T00:00',
  open: {
    mon: ['09:00-17:00'],
    tue: ['09:00-17:00'],
    wed: ['09:00-17:00'],
    thu: ['09:00-17:00'],
    fri: ['09:00-17:00'],
    sat: ['09:00-17:00'],
    sun: ['09:00-17:00'],
  },
};
const logger = {record: 'logger', code: 'L1', kind: 'automatic', maxGapHours: 3};
const room = [
  noTasks,
  sample,
  logger,
  unit('C1', 'cage', {logger: 'L1'}),
  lot('A', 'C1', {larva: 5}, '2031-04-08T09:00', {candidates: [{profile: 'p'}]}),
];
const looked = {record: 'check', lot: 'A', at: '2031-04-12T09:00'};
const ids = (alerts: ReturnType<typeof alertsAt>) => alerts.map(({id}) => id);

describe('a silent logger', () => {
  const readings = {lastReadings: new Map([['L1', at('2031-04-11T02:40')]])};

  it('is told of a day after its allowed gap, with since when', () => {
    expect(ids(alertsAt(room, '2031-04-12T05:00', {}, readings))).toEqual([]);
    const [alert] = alertsAt(room, '2031-04-12T06:00', {}, readings);
    expect(alert).toMatchObject({id: 'silent:L1:2031-04-11', where: 'L1', since: at('2031-04-11T02:40')});
    expect(alert!.what).toContain('of C1');
  });

  it('keeps its id while it is silent, and is quiet once acknowledged', () => {
    expect(ids(alertsAt([...room, looked], '2031-04-20T09:00', {}, readings))).toEqual([
      'silent:L1:2031-04-11',
    ]);
    const seen = {
      record: 'acknowledge',
      alert: 'silent:L1:2031-04-11',
      at: '2031-04-12T09:00',
      done: 'new battery on order',
    };
    expect(ids(alertsAt([...room, looked, seen], '2031-04-20T09:00', {}, readings))).toEqual([]);
  });

  it('counts readings taken by hand and extremes', () => {
    const hand = {record: 'reading', logger: 'L1', at: '2031-04-12T02:00', temperature: 20};
    expect(ids(alertsAt([...room, hand], '2031-04-12T06:00', {}, readings))).toEqual([]);
  });

  it('is of no concern where nobody lives in its unit', () => {
    expect(ids(alertsAt(room.slice(0, 4), '2031-04-20T09:00', {}, readings))).toEqual([]);
  });

  it('is told of too where it never read', () => {
    expect(ids(alertsAt(room, '2031-04-10T09:00'))).toEqual(['silent:L1:2031-04-08']);
  });
});

describe('a unit out of limits', () => {
  const limits = {
    temperature: {lethalLow: -5, low: 10, high: 30, lethalHigh: 38},
    humidity: {low: 50, high: 75},
  };
  const profiles = new Map([['p', profile('p', {}, {limits})]]);
  const now = '2031-04-09T14:30';
  const read = (temperatureC: number, rhPercent = 60, more: object[] = []) =>
    alertsAt(
      [...room, ...(more as typeof room)],
      now,
      {profiles},
      {
        lastReadings: new Map([['L1', at('2031-04-09T14:00')]]),
        climate: new Map([['C1', {at: at('2031-04-09T14:00'), temperatureC, rhPercent}]]),
      },
    );

  it('is quiet within them, the limits included', () => {
    expect(read(20)).toEqual([]);
    expect(read(30, 75)).toEqual([]);
  });

  it('is told of with the reading, the limit and for whom', () => {
    expect(read(33.14)[0]).toMatchObject({
      id: 'temperature:C1:2031-04-09',
      what: 'C1 is too warm for A: 33.1 °C today 14:00, above 30 °C',
    });
    expect(read(38.5)[0]!.what).toContain('38 °C kills');
    expect(read(20, 40)[0]!.what).toBe('C1 is too dry for A: 40 % today 14:00, below 50 %');
    expect(read(20, 90)[0]!.what).toContain('too damp');
  });

  it('is held to what was said of the lot itself before its profile', () => {
    const said = {
      record: 'revision',
      lot: 'A',
      needs: {coolestC: 14, warmestC: 22},
      at: '2031-04-08T10:00',
    };
    expect(read(25)).toEqual([]);
    expect(read(25, 60, [said])[0]!.what).toBe('C1 is too warm for A: 25 °C today 14:00, above 22 °C');
    expect(read(12, 60, [said])[0]!.what).toContain('below 14 °C');
  });

  it('is not called cold where it is set to chill, short of what kills', () => {
    const fridge = {
      record: 'unit',
      code: 'C1',
      type: 'cage',
      place: 'cold room',
      logger: 'L1',
      setPoints: {constant: 4},
      at: '2031-04-08T10:00',
    };
    expect(read(4)[0]!.what).toContain('too cold');
    expect(read(4, 60, [fridge])).toEqual([]);
    expect(read(-6, 60, [fridge])[0]!.what).toContain('-5 °C kills');
  });
});

describe('a lot nobody looked at', () => {
  const quiet = {lastReadings: new Map([['L1', at('2031-04-30T09:00')]])};

  it('is told of after a week, until anything is written down of it', () => {
    expect(ids(alertsAt(room, '2031-04-15T08:00', {}, quiet))).toEqual([]);
    expect(ids(alertsAt(room, '2031-04-15T10:00', {}, quiet))).toEqual(['unseen:A']);
    for (const done of [looked, {record: 'care', task: 'feed', unit: 'C1', at: '2031-04-10T09:00'}])
      expect(ids(alertsAt([...room, done], '2031-04-15T10:00', {}, quiet))).toEqual([]);
  });
});

// Invented readings. A minimum and maximum that both stay as they were, to 0.1 °C, tell that the thermometer was not
// reset: common practice, no source.
describe('a minimum–maximum thermometer', () => {
  const extremes = (day: string, minimum: number, maximum: number, more: object = {}) => ({
    record: 'extremes',
    logger: 'M1',
    from: `2031-04-${Number(day) - 1}T08:35`,
    to: `2031-04-${day}T08:35`,
    minimum,
    maximum,
    ...more,
  });
  const told = (...readings: object[]) =>
    ids(
      alertsAt(
        [{record: 'logger', code: 'M1', kind: 'extremes'}, ...(readings as typeof room)],
        '2031-04-19T09:00',
      ),
    );

  it('was probably not reset when both its extremes are those of the day before', () => {
    expect(told(extremes('18', 16.8, 26.4), extremes('19', 16.8, 26.4))).toEqual(['not-reset:M1:2031-04-19']);
  });

  it('was read rightly when either differs, or when somebody says that it was reset', () => {
    expect(told(extremes('18', 16.8, 26.4), extremes('19', 16.9, 26.4))).toEqual([]);
    expect(told(extremes('18', 16.8, 26.4, {reset: true}), extremes('19', 16.8, 26.4))).toEqual([]);
  });
});

describe('how long and how much beyond a limit', () => {
  const limits = {temperature: {high: 30, lethalHigh: 38}, humidity: {low: 50, high: 75}};
  const profiles = new Map([['p', profile('p', {}, {limits})]]);
  const hours = [20, 29, 32, 34, 33];
  const from = at('2031-04-09T10:00');
  const recent = {
    at: hours.map((_, i) => from + i * 3_600_000),
    temperatureC: hours,
    rhPercent: hours.map(() => 60),
    maxGapMs: 3 * 3_600_000,
  };
  const told = (more: readonly object[] = []) =>
    alertsAt(
      [...room, looked, ...(more as typeof room)],
      '2031-04-09T14:10',
      {profiles},
      {
        lastReadings: new Map([['L1', from + 4 * 3_600_000]]),
        climate: new Map([['C1', {at: from + 4 * 3_600_000, temperatureC: 33, rhPercent: 60, recent}]]),
      },
    );
  const seen = (when: string) => ({
    record: 'acknowledge',
    alert: 'temperature:C1:2031-04-09',
    at: when,
    done: 'shaded',
  });

  it('is told from the readings since the last one within it, as a dose', () => {
    // Two hours: from 2 to 4 degrees beyond, then from 4 to 3.
    expect(told()[0]).toMatchObject({since: at('2031-04-09T12:00')});
    expect(told()[0]!.what).toContain('for 2 h, 6.5 degree-hours');
  });

  it('is quiet once seen to, but not for what was seen to before it began', () => {
    expect(ids(told([seen('2031-04-09T13:00')]))).toEqual([]);
    expect(ids(told([seen('2031-04-09T09:00')]))).toEqual(['temperature:C1:2031-04-09']);
  });
});

describe('water', () => {
  const tank = [noTasks, sample, unit('T1', 'aquarium'), lot('A', 'T1', {nymph: 5}, '2031-04-08T09:00')];
  const water = (when: string, values: object) => ({record: 'water', unit: 'T1', at: when, ...values});
  const amiss = (...readings: object[]) =>
    ids(alertsAt([...tank, ...(readings as typeof room)], '2031-04-10T09:00')).filter(id =>
      id.startsWith('water-'),
    );

  it('is told of where the last measurement is beyond what animals bear, and no longer once it is mended', () => {
    const bad = water('2031-04-09T09:00', {oxygenMgL: 3, nitriteMgL: 2});
    expect(amiss(bad)).toEqual(['water-oxygenMgL:T1:2031-04-09', 'water-nitriteMgL:T1:2031-04-09']);
    expect(amiss(bad, water('2031-04-10T08:00', {oxygenMgL: 8}))).toEqual(['water-nitriteMgL:T1:2031-04-09']);
  });

  it('judges ammonia by its un-ionised part', () => {
    expect(amiss(water('2031-04-09T09:00', {temperature: 15, ph: 7, ammoniaMgL: 1}))).toEqual([]);
    expect(amiss(water('2031-04-09T09:00', {temperature: 25, ph: 8.5, ammoniaMgL: 1}))).toEqual([
      'water-unionisedMgL:T1:2031-04-09',
    ]);
  });
});

describe('a logger that disagrees with a thermometer beside it', () => {
  const quiet = {lastReadings: new Map([['L1', at('2031-04-12T06:00')]])};
  const checks = (offC: number, n: number) =>
    Array.from({length: n}, (_, day) => ({
      logger: 'L1',
      at: at(`2031-04-${String(9 + day).padStart(2, '0')}T09:00`),
      byHandC: 20 + offC,
      loggerC: 20,
    }));

  it('is told of after three checks, and not of less than a degree and a half', () => {
    const amiss = (offC: number, n: number) =>
      ids(alertsAt([...room, looked], '2031-04-12T10:00', {}, {...quiet, checked: checks(offC, n)}));
    expect(amiss(-2.3, 3)).toEqual(['disagrees:L1:2031-04-09']);
    expect(amiss(-2.3, 2)).toEqual([]);
    expect(amiss(1.2, 3)).toEqual([]);
  });
});

describe('a minimum–maximum thermometer that cannot be right', () => {
  it('is told of where the minimum is above what it showed at one of the visits', () => {
    const visit = (day: string, minimum: number, maximum: number, now: number, reset?: boolean) => ({
      record: 'extremes',
      logger: 'L1',
      from: `2031-04-${String(Number(day) - 1).padStart(2, '0')}T08:30`,
      to: `2031-04-${day}T08:30`,
      minimum,
      maximum,
      now,
      reset,
    });
    const room = [noTasks, sample, {...logger, kind: 'extremes'}, unit('C1', 'cage', {logger: 'L1'})];
    const told = (...visits: object[]) =>
      alertsAt([...room, ...(visits as typeof room)], '2031-04-09T09:00').map(({id, what}) => [id, what]);
    expect(told(visit('08', 17, 26, 21.5, true), visit('09', 20.9, 25.2, 20.5, true))).toEqual([
      ['misread:L1:2031-04-09', expect.stringContaining('cannot have a minimum of 20.9 °C')],
    ]);
    expect(told(visit('08', 17, 26, 21.5, true), visit('09', 20.1, 25.2, 20.5, true))).toEqual([]);
  });
});
