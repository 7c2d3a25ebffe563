// What the stories share: an invented kind that develops by degree-days with a normal spread, its sample, and times.
import type {RoomAt} from '../commands/program.ts';

export const DAY_MS = 86_400_000;
/** The standard normal quantile of 95 %. */
export const Z95 = 1.645;

export interface Kind {
  readonly lower: number;
  readonly degreeDays: number;
  readonly cv: number;
}

/** A profile of one stage, the pupa, whose every animal keeps the pace it says. */
export function kind({lower, degreeDays, cv}: Kind, more: object = {}): object {
  return {
    record: 'profile',
    profile: 'kind',
    name: 'an invented kind',
    rank: 'species',
    classification: {order: 'Lepidoptera', family: 'Invented'},
    rearing: ['cage', 'aquarium', 'emergence-box'],
    stages: [
      {stage: 'pupa', rate: {kind: 'degree-day', lower, degreeDays}, cv, family: 'normal', source: 'a'},
    ],
    paceSd: 0,
    survival: 1,
    sources: [{id: 'a', citation: 'invented for a story', provenance: 'common-practice'}],
    ...more,
  };
}

export function sample(code: string, collected: string, more: object = {}): object {
  return {record: 'sample', code, collected: {from: collected}, method: 'search', ...more};
}

/** Pupae that all began now, of the invented kind. */
export function pupae(code: string, from: string, unit: string, at: string, count: number): object {
  return {
    ...{record: 'lot', code, sample: from, unit, at, stages: {pupa: count}},
    ...{progress: [0, 0], ages: 'one-brood', candidates: [{profile: 'kind', weight: 1}]},
  };
}

export interface Forecast {
  readonly alive: number;
  readonly status: string;
  readonly startChecking: string;
  readonly degreeDays: {readonly accumulated: number};
  readonly adults: {readonly animal: {readonly p05: string; readonly p50: string; readonly p95: string}};
  readonly readings: {readonly filledHours: number; readonly basis: string};
}

export function forecastOf(room: RoomAt, now: string, lot: string, ...more: string[]): Forecast {
  return room.ask<Forecast[]>(now, 'forecast', lot, ...more)[0]!;
}

/** How many hours an instant lies after another; both in UTC. */
export function hoursAfter(at: string, other: string): number {
  return (Date.parse(at) - Date.parse(/[Z+]/.test(other) ? other : `${other}Z`)) / 3_600_000;
}

/** The instant so many days after one in UTC. */
export function daysLater(from: string, days: number): string {
  return new Date(Date.parse(`${from}Z`) + days * DAY_MS).toISOString();
}

/** What a command says; a refusal fails the test with its words. */
export function said(room: RoomAt, now: string, ...args: string[]): string {
  const {status, out, err} = room.at(now, ...args);
  if (status !== 0) throw new Error(`teneral ${args.join(' ')} ended with ${status}: ${err}`);
  return flat(out);
}

/** The words of a refusal; what was granted fails the test. */
export function refused(room: RoomAt, now: string, ...args: string[]): string {
  const {status, out, err} = room.at(now, ...args);
  if (status !== 1) throw new Error(`teneral ${args.join(' ')} ended with ${status}: ${out}`);
  return flat(err);
}

export function applied(room: RoomAt, now: string, records: readonly object[]): void {
  const {status, err} = room.apply(now, records);
  if (status !== 0) throw new Error(err);
}

/** Without the breaks of lines. */
function flat(text: string): string {
  return text.replaceAll(/\s+/g, ' ');
}
