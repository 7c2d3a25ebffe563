// Care where the clocks change, and over the turn of the year: times of day stay, days are counted, not hours.
import ICAL from 'ical.js';
import {describe, expect, it} from 'vitest';
import {agendaOf} from '../../src/care/agenda.ts';
import {openTimeOf} from '../../src/care/calendar.ts';
import {jobsOf} from '../../src/care/jobs.ts';
import type {CareInput} from '../../src/care/task.ts';
import {careTasks} from '../../src/care/tasks.ts';
import {comingsOf} from '../../src/care/visits.ts';
import {civil as civilOf} from '../../src/exchange/civil.ts';
import {calendarFile} from '../../src/exchange/icalendar/write.ts';
import {MS_PER_HOUR} from '../../src/records/entry.ts';
import {fold} from '../../src/records/fold.ts';
import {plannedDays} from '../../src/work/ahead.ts';
import {eventsOf} from '../../src/work/calendar-file.ts';
import {daybook, type Written} from '../records/daybook-of.ts';

/**
 * Zone, the day on which its clocks change, and by how many hours that day is longer than 24.
 * IANA time zone data; Europe: Directive 2000/84/EC; United States: Energy Policy Act of 2005, section 110.
 */
const changes = [
  ['Europe/Amsterdam', '2031-03-30', -1],
  ['Europe/Amsterdam', '2031-10-26', 1],
  ['America/New_York', '2031-03-09', -1],
  ['America/New_York', '2031-11-02', 1],
  ['Australia/Lord_Howe', '2031-04-06', 0.5],
  ['Australia/Lord_Howe', '2031-10-05', -0.5],
  ['Europe/Amsterdam', '2031-12-31', 0],
  ['Asia/Kathmandu', '2031-12-31', 0],
] as const;

describe.each(changes)('in %s on %s', (zone, day, longerHours) => {
  const civil = civilOf(zone);
  const at = (date: string, time: string) => civil.iso(civil.at(date, time));
  const wall = (instant: number | null) => (instant === null ? null : civil.iso(instant).slice(0, 16));
  const before = civil.addDays(day, -1);
  const after = civil.addDays(day, 1);

  function input(now: string, every: number, latestDays: number, more: readonly Written[] = []): CareInput {
    const began = at(civil.addDays(day, -9), '08:00');
    const records: Written[] = [
      {record: 'sample', code: 'S1', collected: {from: '2031-01-01'}, method: 'search'},
      {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', at: began},
      {record: 'lot', code: 'A', sample: 'S1', unit: 'C1', stages: {larva: 8}, at: began},
      ...['clean', 'moisten', 'look', 'inspect'].map(task => ({
        ...{
          record: 'rule',
          code: `no-${task}`,
          task,
          for: {lot: 'A'},
          every: {days: 1},
          off: true,
          at: began,
        },
      })),
      {
        ...{record: 'rule', code: 'feed-A', task: 'feed', for: {lot: 'A'}, every: {days: every}},
        ...{earliestDays: every * 0.9, latestDays, at: began},
      },
      {record: 'care', lot: 'A', task: 'feed', at: at(before, '09:00')},
      ...more,
    ];
    const instant = Date.parse(now);
    return {
      ...{state: fold(daybook(...records), instant), civil, now: instant},
      ...{profiles: new Map(), emergence: new Map(), instantAfterDegreeDays: () => null},
    };
  }
  const feedOf = (each: CareInput) =>
    careTasks(each).find(({task, state}) => task === 'feed' && state !== 'done')!;

  it('what is done every day at nine is due at nine again', () => {
    const {target, latest} = feedOf(input(at(before, '10:00'), 1, 2));
    expect(wall(target)).toBe(`${day}T09:00`);
    expect(wall(latest)).toBe(`${after}T09:00`);
    expect((target - Date.parse(at(before, '09:00'))) / MS_PER_HOUR).toBeCloseTo(24 + longerHours, 9);
  });

  it('the days ahead keep their time of day, one turn a day', () => {
    const days = agendaOf(input(at(before, '10:00'), 1, 1.5), 4);
    expect(days.map(each => [each.day, each.items.map(item => wall(item.at))])).toEqual([
      [before, []],
      ...[1, 2, 3].map(n => {
        const date = civil.addDays(before, n);
        return [date, [`${date}T09:00`]];
      }),
    ]);
  });

  it('a closed day forces one visit, within the limit by the clock on the wall', () => {
    const closed = {
      ...{record: 'calendar', at: at(civil.addDays(day, -9), '08:00')},
      closed: [{from: day, to: day}],
    };
    const each = input(at(before, '10:00'), 1, 1.5, [closed]);
    const open = openTimeOf(each.state.calendar, civil);
    const [visit] = comingsOf(jobsOf(each, open), open, each).visits;
    // One day and twelve hours after Saturday nine.
    expect(wall(visit!.to)).toBe(`${day}T21:00`);
    expect(wall(visit!.from)! >= `${day}T00:00`).toBe(true);
  });

  it('the calendar file shows rounds at nine on the clock, to a reader of another make', () => {
    const each = input(at(before, '10:00'), 1, 1.5);
    const events = eventsOf(plannedDays(each, 3), each, {}, 'room').map(event => ({
      ...event,
      ...{sequence: 0, stamp: each.now, cancelled: false},
    }));
    const read = new ICAL.Component(ICAL.parse(calendarFile('room', events, civil)))
      .getAllSubcomponents('vevent')
      .map(event => new ICAL.Event(event).startDate.toJSDate().getTime());
    expect(read.map(wall).sort()).toEqual([`${day}T09:00`, `${after}T09:00`]);
  });
});
