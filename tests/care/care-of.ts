// A room for tests of care: records as a person would write them, and what the care list makes of them at an instant.
import type {Alert, RoomFacts} from '../../src/care/alert.ts';
import {alertsOf} from '../../src/care/alerts.ts';
import {type Round, roundOf} from '../../src/care/round.ts';
import type {CareInput, Task} from '../../src/care/task.ts';
import {careTasks} from '../../src/care/tasks.ts';
import {civil as civilOf} from '../../src/exchange/civil.ts';
import type {Instant} from '../../src/records/entry.ts';
import {fold} from '../../src/records/fold.ts';
import type {Profile} from '../../src/records/schema/index.ts';
import {parseRecord} from '../../src/records/schema/index.ts';
import {daybook, type Written} from '../records/daybook-of.ts';

export const civil = civilOf('Europe/Berlin');

/** An instant as it stands on the wall in Berlin: 2031-05-23T16:30. */
export function at(wall: string): Instant {
  const [day = '', time = '00:00'] = wall.split('T');
  return civil.at(day, time);
}

/** How an instant stands on the wall. */
export function wall(instant: Instant | null): string | null {
  return instant === null ? null : civil.iso(instant).slice(0, 16);
}

export type Asked = Partial<Pick<CareInput, 'day' | 'profiles' | 'emergence' | 'instantAfterDegreeDays'>>;

/** What care is worked out from. Instants in the records stand as on the wall. */
export function careInput(records: readonly Written[], now: string, asked: Asked = {}): CareInput {
  return {
    state: fold(daybook(...records.map(zoned)), at(now)),
    civil,
    now: at(now),
    profiles: new Map(),
    emergence: new Map(),
    instantAfterDegreeDays: () => null,
    ...asked,
  };
}

export function tasksAt(records: readonly Written[], now: string, asked?: Asked): Task[] {
  return careTasks(careInput(records, now, asked));
}

export function roundAt(records: readonly Written[], now: string, asked?: Asked): Round {
  return roundOf(careInput(records, now, asked));
}

export function alertsAt(
  records: readonly Written[],
  now: string,
  asked?: Asked,
  facts: Partial<RoomFacts> = {},
): Alert[] {
  return alertsOf(careInput(records, now, asked), {lastReadings: new Map(), climate: new Map(), ...facts});
}

/** The open task of a kind: the one not done yet. */
export function openTask(tasks: readonly Task[], task: string, of?: string): Task | undefined {
  return tasks.find(
    each =>
      each.task === task &&
      each.state !== 'done' &&
      (of === undefined || each.lot === of || each.unit === of),
  );
}

/** A group as candidate, with nothing but its classification of interest. */
export function profile(code: string, classification: Record<string, string>, more: Written = {}): Profile {
  const record = parseRecord(
    {
      record: 'profile',
      profile: code,
      name: code,
      rank: 'species',
      classification,
      stages: [
        {stage: 'larva', rate: {kind: 'degree-day', lower: 10, degreeDays: 100}, cv: 0.1, source: 'a'},
      ],
      sources: [{id: 'a', citation: 'invented for a test', provenance: 'common-practice'}],
      ...more,
    },
    'test',
  );
  if (!('profile' in record)) throw new TypeError('not a profile');
  return record;
}

export const unit = (code: string, type = 'cage', more: Written = {}): Written => ({
  record: 'unit',
  code,
  type,
  place: `rack A/${code}`,
  ...more,
});

export const sample: Written = {
  record: 'sample',
  code: 'S1',
  collected: {from: '2031-01-01', to: '2031-01-02'},
  method: 'search',
};

export const lot = (
  code: string,
  unitCode: string,
  stages: Record<string, number>,
  began: string,
  more: Written = {},
): Written => ({
  record: 'lot',
  code,
  sample: 'S1',
  unit: unitCode,
  stages,
  at: began,
  ...more,
});

export const care = (task: string, lotCode: string, done: string): Written => ({
  record: 'care',
  task,
  lot: lotCode,
  at: done,
});

/** A rule that feeds one lot and takes the place of whatever start value there is. */
export const feedRule = (
  lotCode: string,
  days: readonly [number, number, number],
  more: Written = {},
): Written => ({
  record: 'rule',
  code: `feed-${lotCode}`,
  task: 'feed',
  for: {lot: lotCode},
  every: {days: days[1]},
  earliestDays: days[0],
  latestDays: days[2],
  at: '2031-01-01T00:00',
  ...more,
});

/** A record as written, with its instants as on the wall in Berlin. */
export function zoned(record: Written): Written {
  const fields = Object.entries(record).map(([name, value]) => [
    name,
    typeof value === 'string' && /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(value) ? civil.iso(at(value)) : value,
  ]);
  return Object.fromEntries(fields);
}
