// Work that nobody who may do it is there for in time is said beforehand.
import {describe, expect, it} from 'vitest';
import {alertsAt, care, feedRule, lot, sample, unit} from './care-of.ts';

const room = [
  sample,
  unit('C1', 'cage', {place: 'rack A/1'}),
  unit('C2', 'cage', {place: 'rack B/2'}),
  ...['A', 'B'].flatMap((code, i) => [
    lot(code, `C${i + 1}`, {larva: 8}, '2031-05-19T08:00'),
    // 2031-05-19 is a Monday.
    feedRule(code, [1, 2, 3]),
    care('feed', code, '2031-05-19T09:00'),
    ...['clean', 'moisten'].map(task => ({
      record: 'rule',
      code: `no-${task}-${code}`,
      task,
      for: {lot: code},
      every: {days: 1},
      off: true,
      at: '2031-01-01T00:00',
    })),
  ]),
];
const person = (name: string, more: object) => ({record: 'person', name, at: '2031-01-01T00:00', ...more});
const nobody = (...people: object[]) =>
  alertsAt([...room, ...(people as typeof room)], '2031-05-19T10:00').filter(({id}) =>
    id.startsWith('nobody:'),
  );
const allWeek = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

describe('a place that nobody works in time', () => {
  it('is named with what falls due there first', () => {
    const [alert, ...others] = nobody(
      person('Ida', {days: allWeek, places: ['rack A']}),
      person('Ole', {days: ['mon'], places: ['rack B']}),
    );
    expect(others).toEqual([]);
    expect(alert).toMatchObject({
      id: 'nobody:C2:2031-05-22',
      where: 'C2',
      what: 'nobody who may do rack B is there in time: feed C2 by Thu 22 May 09:00',
    });
  });

  it('is none where somebody who may do it works on one day of the window', () => {
    expect(
      nobody(
        person('Ida', {days: allWeek, places: ['rack A']}),
        person('Ole', {days: ['mon', 'wed', 'fri', 'sun'], places: ['C2']}),
      ),
    ).toEqual([]);
  });

  it('is none in a room that names nobody, or somebody for all days and places', () => {
    expect(nobody()).toEqual([]);
    expect(nobody(person('Ida', {}))).toEqual([]);
  });
});
