// A year of care in a room at random, worked through round by round: what the calendar allows is never missed.
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {agendaOf} from '../../src/care/agenda.ts';
import {openTimeOf} from '../../src/care/calendar.ts';
import {jobsOf} from '../../src/care/jobs.ts';
import {roundOf} from '../../src/care/round.ts';
import {visitsOf} from '../../src/care/visits.ts';
import {MS_PER_DAY, MS_PER_HOUR} from '../../src/records/entry.ts';
import type {Written} from '../records/daybook-of.ts';
import {at, careInput, civil, lot, sample, unit} from './care-of.ts';

const weekdays = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** Some closed weekdays, and some closed spells of up to twelve days. */
const calendars = fc
  .record({
    closedDays: fc.subarray(['tue', 'thu', 'sat', 'sun']),
    spells: fc.array(fc.tuple(fc.integer({min: 12, max: 330}), fc.integer({min: 0, max: 11})), {
      maxLength: 4,
    }),
  })
  .map(({closedDays, spells}) => ({
    record: 'calendar',
    at: '2031-01-01T00:00',
    open: Object.fromEntries(weekdays.map(day => [day, closedDays.includes(day) ? [] : ['09:00-17:00']])),
    closed: spells.map(([from, days]) => ({
      from: civil.addDays('2031-01-01', from),
      to: civil.addDays('2031-01-01', from + days),
    })),
  }));

const tasks = ['feed', 'clean', 'moisten', 'turn-leaves', 'weigh'];
const rules = fc
  .array(
    fc.record({
      task: fc.constantFrom(...tasks),
      every: fc.double({min: 0.8, max: 12, noNaN: true}),
      early: fc.double({min: 0.3, max: 1, noNaN: true}),
      late: fc.double({min: 1, max: 2, noNaN: true}),
      harm: fc.constantFrom('high', 'medium', 'low'),
      minutes: fc.integer({min: 1, max: 20}),
    }),
    {minLength: 3, maxLength: 6},
  )
  .map(list =>
    list.map(({task, every, early, late, harm, minutes}, i) => ({
      record: 'rule',
      at: '2031-01-01T00:00',
      code: `rule-${i}`,
      task: task === 'feed' ? 'feed' : `${task}-${i}`,
      for: {lot: 'ABC'[i % 3]!},
      every: {days: every},
      earliestDays: every * early,
      // This worker comes once a day; what bears less than a day is another's.
      latestDays: Math.max(1.05, every * late),
      harm,
      minutes,
    })),
  );

const start: Written[] = [
  sample,
  ...['A', 'B', 'C'].flatMap(code => [
    unit(`C${code}`),
    lot(code, `C${code}`, {larva: 10}, '2031-01-06T08:30'),
  ]),
];
/** Only what the rules of the year say. */
const quiet: Written[] = ['feed', 'clean', 'moisten', 'inspect', 'look'].map(task => ({
  record: 'rule',
  at: '2031-01-01T00:00',
  code: `quiet-${task}`,
  task,
  for: {type: 'cage'},
  every: {days: 1},
  off: true,
}));

/** A year takes seconds: always the same one, and other ones with TORTURE=1. */
const RUNS = process.env.TORTURE === undefined ? {numRuns: 1, seed: 31} : {numRuns: 20};

interface Done {
  readonly subject: string;
  readonly at: number;
}

/** Each open morning at nine the whole list is done; forced visits are made at their last moment. */
function playedOut(calendar: Written, ruled: readonly Written[]) {
  const records: Written[] = [calendar, ...start, ...quiet, ...ruled];
  const flagged = new Map<string, number[]>();
  const done: Done[] = [];
  const faults: string[] = [];
  const careRecord = (task: string, subject: {lot: string | null; unit: string}, when: number): void => {
    records.push({
      record: 'care',
      task,
      unit: subject.unit,
      lot: subject.lot ?? undefined,
      at: civil.iso(when),
    });
    done.push({subject: `${task} ${subject.lot ?? subject.unit}`, at: when});
  };
  const open = openTimeOf(careInput(records, '2031-01-06T09:00').state.calendar, civil);
  let planned: {
    from: number;
    to: number;
    jobs: readonly {task: string; lot: string | null; unit: string}[];
  }[] = [];
  for (const round of open.roundsBetween(at('2031-01-06T09:00'), at('2032-01-05T09:00'))) {
    // Visits that were announced at the last round and lie before this one.
    for (const visit of planned.filter(({to}) => to < round))
      for (const job of visit.jobs) careRecord(job.task, job, visit.to);
    const input = careInput(records, civil.iso(round).slice(0, 16));
    const list = roundOf(input);
    const ids = list.tasks.map(({id}) => id);
    if (new Set(ids).size !== ids.length) faults.push(`an id twice on ${civil.iso(round)}`);
    for (const task of list.tasks) {
      if (task.state === 'done') continue;
      if (task.state === 'early') continue;
      if (task.planned !== null && (task.planned < task.earliest || task.planned > task.latest))
        faults.push(`${task.id} is planned outside its window`);
      if (round > task.latest + 1) {
        const key = `${task.task} ${task.lot ?? task.unit}`;
        const known = (flagged.get(key) ?? []).some(to => Math.abs(to - task.latest) < 2 * MS_PER_DAY);
        if (!known)
          faults.push(`${task.id} passed ${civil.iso(task.latest)} unannounced, found ${civil.iso(round)}`);
      }
      if (task.earliest <= round + 8 * MS_PER_HOUR)
        careRecord(task.task, task, Math.max(round, task.earliest));
    }
    const after = careInput(records, civil.iso(round + 8 * MS_PER_HOUR - 60_000).slice(0, 16));
    const visits = visitsOf(jobsOf(after, open), open, after);
    planned = visits.map(({from, to, jobs}) => ({
      from,
      to,
      jobs: jobs.map(({rule, lot: one, unit: where}) => ({
        task: rule.task,
        lot: one?.code ?? null,
        unit: where.code,
      })),
    }));
    for (const {to, jobs} of planned)
      for (const job of jobs) {
        const key = `${job.task} ${job.lot ?? job.unit}`;
        flagged.set(key, [...(flagged.get(key) ?? []), to]);
      }
  }
  return {records, done, faults};
}

describe('a year in which every round and every announced visit is made', () => {
  it('leaves no gap above the latest that was not announced, loses no task and shows none twice', () => {
    fc.assert(
      fc.property(calendars, rules, (calendar, ruled) => {
        const {done, faults} = playedOut(calendar, ruled);
        expect(faults).toEqual([]);
        const latest = new Map(ruled.map(rule => [`${rule.task} ${rule.for.lot}`, rule.latestDays]));
        for (const [subject, days] of latest) {
          const times = done.filter(each => each.subject === subject).map(({at: when}) => when);
          expect(times.length, subject).toBeGreaterThan(365 / (days + 14));
          expect(new Set(times).size, subject).toBe(times.length);
        }
      }),
      RUNS,
    );
  }, 120_000);
});

describe('the days ahead', () => {
  it('hold every task within its window and level the work that can wait', () => {
    fc.assert(
      fc.property(calendars, rules, (calendar, ruled) => {
        const input = careInput([calendar, ...start, ...quiet, ...ruled], '2031-01-06T09:00');
        for (const {items} of agendaOf(input, 30))
          for (const {at: when, earliest, latest, visit} of items)
            if (!visit)
              expect(when >= Math.min(earliest, input.now) && when <= Math.max(latest, input.now)).toBe(true);
      }),
      {numRuns: 30},
    );
  });

  it('spreads ten weekly cleanings that fall on one Monday over the days around it', () => {
    const codes = Array.from({length: 10}, (_, i) => `L${i}`);
    const records: Written[] = [
      {
        record: 'calendar',
        at: '2031-01-01T00:00',
        open: Object.fromEntries(weekdays.slice(0, 5).map(day => [day, ['09:00-17:00']])),
      },
      sample,
      ...quiet,
      ...codes.flatMap((code): Written[] => [
        unit(`C${code}`),
        lot(code, `C${code}`, {larva: 4}, '2031-01-06T09:00'),
        {
          record: 'rule',
          at: '2031-01-01T00:00',
          code: `brush-${code}`,
          task: 'brush',
          for: {lot: code},
          every: {days: 7},
          earliestDays: 4,
          latestDays: 10,
          harm: 'low',
          minutes: 10,
        },
        {record: 'care', task: 'brush', lot: code, at: '2031-01-06T09:30'},
      ]),
    ];
    const days = agendaOf(careInput(records, '2031-01-07T09:00'), 12).filter(({items}) => items.length > 0);
    expect(days[0]!.day >= '2031-01-10' && days.at(-1)!.day <= '2031-01-17').toBe(true);
    const first = agendaOf(careInput(records, '2031-01-07T09:00'), 9).map(({minutes}) => minutes);
    expect(Math.max(...first)).toBeLessThanOrEqual(40);
  });
});
