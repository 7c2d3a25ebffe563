// A year of care in a room at random, worked through round by round: what the calendar allows is never missed.
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {agendaOf} from '../../src/care/agenda.ts';
import {openTimeOf} from '../../src/care/calendar.ts';
import {jobsOf} from '../../src/care/jobs.ts';
import {roundOf} from '../../src/care/round.ts';
import type {CareInput} from '../../src/care/task.ts';
import {comingsOf} from '../../src/care/visits.ts';
import {MS_PER_HOUR} from '../../src/records/entry.ts';
import {fold} from '../../src/records/fold.ts';
import {batch, type Written} from '../records/daybook-of.ts';
import {at, careInput, civil, lot, sample, unit, zoned} from './care-of.ts';

const weekdays = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** One round a day, two, or none written down: then there is one at nine. */
const hours = fc.constantFrom(['09:00-17:00'], ['09:00-12:00', '14:00-18:00'], ['08:00-15:30'], undefined);

/** Some closed weekdays, and some closed spells of up to twelve days. */
const calendars = fc
  .record({
    hours,
    closedDays: fc.subarray(['tue', 'thu', 'sat', 'sun']),
    spells: fc.array(fc.tuple(fc.integer({min: 12, max: 330}), fc.integer({min: 0, max: 11})), {
      maxLength: 4,
    }),
  })
  .map(({hours: open, closedDays, spells}) => ({
    record: 'calendar',
    at: '2031-01-01T00:00',
    open:
      open === undefined
        ? undefined
        : Object.fromEntries(weekdays.map(day => [day, closedDays.includes(day) ? [] : open])),
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
      every: fc.oneof(fc.integer({min: 20, max: 100}), fc.integer({min: 80, max: 1200})),
      early: fc.integer({min: 0, max: 100}),
      late: fc.integer({min: 100, max: 200}),
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
      task: task === 'feed' && i < 3 ? 'feed' : `${task}-${i}`,
      for: {lot: 'ABC'[i % 3]!},
      every: {days: every / 100},
      earliestDays: Math.floor((every * early) / 100) / 100,
      latestDays: Math.ceil((every * late) / 100) / 100,
      harm,
      minutes,
    })),
  );

const start: Written[] = [
  sample,
  ...['A', 'B', 'C'].flatMap(code => [
    unit(`C${code}`),
    lot(code, `C${code}`, {larva: 10}, '2031-01-06T07:30'),
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

/** A year takes seconds: always the same ones, and other ones with TORTURE=1. */
const RUNS =
  process.env.TORTURE === undefined
    ? {numRuns: 2, seed: 31, endOnFailure: true}
    : {numRuns: 24, endOnFailure: true};

interface Deed {
  readonly subject: string;
  readonly at: number;
}

/** As a round takes: what may be done within it is done on it. */
const ROUND_MS = 2 * MS_PER_HOUR;

/**
 * Somebody walks each round with the list as it stands when the round begins, and comes for what it announces until the
 * next round, at any time that it names; nothing is asked in between.
 */
function playedOut(calendar: Written, ruled: readonly Written[], chance: () => number) {
  let entries = batch('start', ...[calendar, ...start, ...quiet, ...ruled].map(zoned));
  const done: Deed[] = [];
  const faults: string[] = [];
  const inputAt = (now: number): CareInput => ({
    ...careInput([], '2031-01-06T09:00'),
    state: fold(entries, now),
    now,
  });
  const doIt = (rule: string, task: string, subject: {lot: string | null; unit: string}, when: number) => {
    const {unit: where, lot: one} = subject;
    const record = {record: 'care', task, unit: where, lot: one ?? undefined, at: civil.iso(when)};
    entries = [...entries, ...batch(`care-${entries.length}`, record)];
    done.push({subject: `${rule} ${one ?? where}`, at: when});
  };
  const open = openTimeOf(inputAt(at('2031-01-06T09:00')).state.calendar, civil);
  for (const round of open.roundsBetween(at('2031-01-06T08:00'), at('2032-01-05T09:00'))) {
    const input = inputAt(round);
    const list = roundOf(input);
    const ids = list.tasks.map(({id}) => id);
    if (new Set(ids).size !== ids.length) faults.push(`an id twice on ${civil.iso(round)}`);
    const {visits, returns} = comingsOf(jobsOf(input, open), open, input);
    for (const task of list.tasks) {
      if (task.state === 'done' || task.state === 'early') continue;
      if (task.planned !== null && (task.planned < task.earliest || task.planned > task.latest))
        faults.push(`${task.id} is planned outside its window`);
      if (task.earliest <= round + ROUND_MS && open.isOpenAt(Math.max(round, task.earliest)))
        doIt(task.rule, task.task, task, Math.max(round, task.earliest));
    }
    const next = open.nextRound(round + 1)!;
    const comings = [...visits, ...returns].filter(({from}) => from < next).sort((a, b) => a.to - b.to);
    for (const {from, to} of returns) {
      const inHours = open.isOpenAt(from) && open.isOpenAt(to - 1) && open.nextRound(from)! >= to;
      if (!inHours) faults.push(`a return at ${civil.iso(from)}`);
    }
    for (const {from, to, jobs} of comings) {
      if (to >= next) faults.push(`a visit to ${civil.iso(to)} beyond the next round`);
      const when = Math.round(from + chance() * (to - from));
      for (const {rule, lot: one, unit: where} of jobs)
        doIt(rule.code, rule.task, {lot: one?.code ?? null, unit: where.code}, when);
    }
  }
  return {input: inputAt(at('2032-01-05T09:00')), done, faults};
}

/** What was done too soon or too late after the time before. */
function missed(input: CareInput): string[] {
  const open = openTimeOf(input.state.calendar, civil);
  return jobsOf(input, open).flatMap(job =>
    job.deeds.flatMap(({at: when}, i) => {
      const {earliest, latest} = job.windowAfter(job.deeds[i - 1]?.at)!;
      if (earliest <= when + 1 && when <= latest + 1) return [];
      return [`${job.rule.code} on ${civil.iso(when)}, not ${civil.iso(earliest)} to ${civil.iso(latest)}`];
    }),
  );
}

describe('a year in which every round is walked and somebody comes as announced', () => {
  it('leaves no gap above the latest, loses no task and shows none twice', () => {
    fc.assert(
      fc.property(calendars, rules, fc.integer({min: 1, max: 1e9}), (calendar, ruled, seed) => {
        const {input, done, faults} = playedOut(calendar, ruled, chanceFrom(seed));
        expect(faults).toEqual([]);
        expect(missed(input)).toEqual([]);
        for (const {code, for: whom, latestDays} of ruled) {
          const times = done.filter(({subject}) => subject === `${code} ${whom.lot}`).map(deed => deed.at);
          expect(times.length, code).toBeGreaterThan(365 / (latestDays + 14));
          expect(new Set(times).size, code).toBe(times.length);
        }
      }),
      RUNS,
    );
  }, 600_000);
});

/** Numbers from 0 to 1, the same for one seed (a linear congruence: Park and Miller 1988, Communications of the ACM 31:1192). */
function chanceFrom(seed: number): () => number {
  let state = seed % 2147483647;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}

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
