// What the room holds: samples, lots, units, loggers, specimens, as rows.

import {MS_PER_DAY} from '../records/entry.ts';
import {cautionsOf, type Method, methods, trapFieldsOf} from '../records/methods.ts';
import {total} from '../records/stage.ts';
import {waitedHours} from '../records/standing.ts';
import {type Sample, type Specimen, valueAt} from '../records/state.ts';
import type {Desk} from './desk.ts';
import {livingIn} from './unit-course.ts';

export interface SampleRow {
  readonly code: string;
  readonly method: string;
  readonly collected: {readonly from: string; readonly to?: string | undefined};
  readonly locality: string | null;
  readonly host: string | null;
  readonly medium: string;
  /** The sample that it is a part of. */
  readonly of: string | null;
  readonly sorting: string | null;
  /** For how many hours its animals may have waited in the trap, where that was over a day. */
  readonly waitedHours: number | null;
  readonly lots: readonly string[];
}

export interface MethodRow {
  readonly code: string;
  readonly words: string;
  /** A trap stands by itself, by hand somebody is there, material is taken home with its animals inside. */
  readonly how: string;
  /** Of a sample's "trap". */
  readonly fields: readonly string[];
  readonly usual: object;
  readonly usually: string;
  readonly cautions: readonly string[];
}

export interface LotRow {
  readonly code: string;
  readonly sample: string;
  readonly unit: string | null;
  readonly taxon: string | null;
  /** Null where the animals are hidden or were not counted. */
  readonly alive: number | null;
  readonly stages: Readonly<Record<string, number>>;
  readonly since: string;
  readonly closed: string | null;
}

export interface UnitRow {
  readonly code: string;
  readonly type: string;
  readonly place: string;
  readonly logger: string | null;
  readonly setPoints: unknown;
  readonly lots: readonly string[];
}

export interface LoggerRow {
  readonly code: string;
  readonly kind: string;
  readonly name: string | null;
  /** Imported, read by hand, and read off as extremes. */
  readonly readings: number;
  readonly from: string | null;
  readonly to: string | null;
  readonly units: readonly string[];
}

export interface SpecimenRow {
  readonly code: string;
  readonly kind: string;
  /** Null where it was taken out of its field sample dead. */
  readonly lot: string | null;
  readonly sample: string;
  readonly taxon: string | null;
  readonly sex: string | null;
  readonly individuals: number;
  readonly since: string | null;
  readonly at: string;
  readonly fate: string | null;
  readonly condition: string | null;
  readonly identified: boolean;
  readonly labelled: boolean;
  /** How it was last prepared, and where it is kept. */
  readonly preparation: string | null;
  readonly store: string | null;
}

export function samples({state, civil}: Desk): SampleRow[] {
  return [...state.samples.values()].map(sample => ({
    ...sampleFacts(sample),
    waitedHours: waitedHours(sample, civil) ?? null,
    lots: [...state.lots.values()].filter(lot => lot.sample === sample.code).map(lot => lot.code),
  }));
}

function sampleFacts({code, method, collected, place, host, medium, of, sorting}: Sample) {
  return {
    code,
    method,
    collected,
    locality: place?.locality ?? null,
    host: host ?? null,
    medium,
    of: of ?? null,
    sorting: sorting?.state ?? null,
  };
}

/** The collecting methods, with what is usual for each: common practice, no source. */
export function methodRows(): MethodRow[] {
  return Object.entries(methods).map(([code, {words, how, usual, usually}]) => ({
    code,
    words,
    how,
    fields: trapFieldsOf(code as Method),
    usual,
    usually,
    cautions: cautionsOf({method: code as Method, medium: usual.medium ?? 'none'}),
  }));
}

export function lots({state, civil}: Desk): LotRow[] {
  return [...state.lots.values()].map(lot => ({
    code: lot.code,
    sample: lot.sample,
    unit: lot.stays.at(-1)?.unit ?? null,
    taxon: lot.taxon ?? null,
    alive: lot.exact || lot.counted === 'estimated' ? total(lot.alive) : null,
    stages: lot.alive,
    since: civil.iso(lot.startedAt),
    closed: lot.closed === undefined ? null : civil.iso(lot.closed.at),
  }));
}

export function units(desk: Desk): UnitRow[] {
  const {state, now} = desk;
  return [...state.units.values()].map(history => {
    const {code, type, place, logger, setPoints} = valueAt(history, now);
    return {
      code,
      type,
      place,
      logger: logger ?? null,
      setPoints: setPoints ?? null,
      lots: livingIn(desk, code).map(lot => lot.code),
    };
  });
}

export function loggers({state, now, room, civil}: Desk): LoggerRow[] {
  const iso = (at: number) => (Number.isFinite(at) ? civil.iso(at) : null);
  return [...state.loggers.values()].map(history => {
    const {code, kind, name} = valueAt(history, now);
    const span = room.span(code);
    const imported = span === undefined ? [] : [span.fromDays * MS_PER_DAY, span.toDays * MS_PER_DAY];
    const byHand = [
      ...state.handReadings.filter(reading => reading.logger === code).map(({at}) => at),
      ...state.extremes.filter(extremes => extremes.logger === code).map(({to}) => to),
    ];
    return {
      code,
      kind,
      name: name ?? null,
      readings: (span?.rows ?? 0) + byHand.length,
      from: iso(Math.min(...imported, ...byHand)),
      to: iso(Math.max(...imported, ...byHand)),
      units: [...state.units.values()]
        .map(unit => valueAt(unit, now))
        .filter(unit => unit.logger === code)
        .map(unit => unit.code),
    };
  });
}

export function specimens({state, civil}: Desk): SpecimenRow[] {
  return [...state.specimens.values()].map(specimen => ({
    code: specimen.code,
    kind: specimen.kind,
    lot: specimen.lot ?? null,
    sample: specimen.sample,
    taxon: specimen.taxon ?? null,
    sex: specimen.sex ?? null,
    individuals: specimen.individuals,
    since: specimen.since === undefined ? null : civil.iso(specimen.since),
    at: civil.iso(specimen.at),
    fate: specimen.fate ?? null,
    condition: specimen.condition ?? null,
    identified: specimen.identifications.length > 0,
    labelled: specimen.printed.length > 0,
    preparation: lastSaid(specimen, 'method'),
    store: lastSaid(specimen, 'store'),
  }));
}

/** What the last preparation that says so says. */
function lastSaid({preparations}: Specimen, field: 'method' | 'store'): string | null {
  const said = preparations.flatMap(({record}) => (record.record === 'preparation' ? [record[field]] : []));
  return said.findLast(one => one !== undefined) ?? null;
}
