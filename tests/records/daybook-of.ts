// Daybooks for tests: records as a person would write them, checked and numbered as a room would.
import type {Civil} from '../../src/records/civil.ts';
import type {Entry} from '../../src/records/entry.ts';
import {parseRecord, type RoomRecord} from '../../src/records/schema/index.ts';

export type Written = Readonly<Record<string, unknown>>;

/** 09:00 UTC, days after 1 May 2031. */
export function day(days: number, time = '09:00'): string {
  const date = new Date(Date.UTC(2031, 4, 1) + days * 86_400_000).toISOString().slice(0, 10);
  return `${date}T${time}:00Z`;
}

export function at(days: number, time?: string): number {
  return Date.parse(day(days, time));
}

export function recordOf(written: Written): RoomRecord {
  return parseRecord(written, 'test');
}

/** One request for each record, written down when it happened. */
export function daybook(...written: readonly Written[]): Entry[] {
  return written.map((each, index) => entry(each, index + 1));
}

/** One request for all records. */
export function batch(request: string, ...written: readonly Written[]): Entry[] {
  return written.map((each, index) => ({...entry(each, index + 1), id: `${request}.${index + 1}`, request}));
}

function entry(written: Written, number: number): Entry {
  const recordedAt = typeof written.at === 'string' ? written.at : day(0, '08:00');
  return {id: `e${number}`, request: `r${number}`, recordedAt, by: 'Ida', record: recordOf(written)};
}

export const unit = (code = 'C1'): Written => ({record: 'unit', code, type: 'cage', place: 'rack A/1'});

export const sample = (code = 'S1', more: Written = {}): Written => ({
  record: 'sample',
  code,
  collected: {from: '2031-04-29', to: '2031-04-30'},
  method: 'search',
  ...more,
});

export const lot = (stages: Readonly<Record<string, number>>, more: Written = {}): Written => ({
  record: 'lot',
  code: 'A',
  sample: 'S1',
  unit: 'C1',
  at: day(0),
  stages,
  ...more,
});

/** Civil time of a room in Greenwich. */
export const greenwich: Civil = {
  zone: 'UTC',
  dayOf: instant => new Date(instant).toISOString().slice(0, 10),
  at: (civilDay, time) => Date.parse(`${civilDay}T${time}:00Z`),
  addDays: (civilDay, days) => new Date(Date.parse(civilDay) + days * 86_400_000).toISOString().slice(0, 10),
  weekdayOf: civilDay =>
    (['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const)[new Date(civilDay).getUTCDay()]!,
  offsetMs: () => 0,
  iso: instant => new Date(instant).toISOString().replace('.000', ''),
};
