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
