// Tracing: from a specimen up to its field sample, and from a field sample down to everything that came of it.
import {codesNamed} from './codes.ts';
import type {Entry} from './entry.ts';
import {nearest} from './nearest.ts';
import {Refusal} from './refusal.ts';
import type {Lot, RoomState, Specimen} from './state.ts';

/** A sample, lot or specimen, what was recorded about it, and what it came from and led to. */
export interface TraceNode {
  readonly code: string;
  readonly kind: 'specimen' | 'lot' | 'sample';
  /** Of a sample that is a part of another: which one. */
  readonly of?: string | undefined;
  /** Its present name, where it has one. */
  readonly taxon?: string | undefined;
  /** The cast skin kept with a specimen. */
  readonly exuviae?: Specimen['exuviae'];
  readonly subimagoSkin?: Specimen['subimagoSkin'];
  /** Every entry about it that counts, in order of time. */
  readonly entries: readonly Entry[];
  /** What it came from, each with what that came from. */
  readonly up: readonly TraceNode[];
  /** What came of it, each with what came of that. A lot that several merged into is followed once. */
  readonly down: readonly TraceNode[];
}

/**
 * Everything a code leads to, in both directions. The code of exuviae leads to the specimen they belong to.
 * @throws Refusal where no sample, lot, specimen or single exuviae has the code
 */
export function trace(state: RoomState, code: string): TraceNode {
  const kin = kinOf(state);
  if (state.samples.has(code) || state.lots.has(code) || state.specimens.has(code)) return both(kin, code);
  const owners = [...state.specimens.values()].filter(
    ({exuviae, subimagoSkin}) => exuviae?.code === code || subimagoSkin?.code === code,
  );
  if (owners.length === 1) return both(kin, owners[0]!.code);
  if (owners.length === 0) throw unknown(state, code);
  const what = `the exuviae ${code} are kept for ${owners.length} specimens`;
  throw new Refusal(what, 'trace', `Trace one of them: ${owners.map(owner => owner.code).join(', ')}.`);
}

/** Who came from whom, as the folded room has it. */
interface Kin {
  readonly state: RoomState;
  readonly parents: ReadonlyMap<string, readonly string[]>;
  readonly children: ReadonlyMap<string, readonly string[]>;
  /** What was recorded of a sample or specimen itself. */
  readonly about: ReadonlyMap<string, readonly Entry[]>;
}

function kinOf(state: RoomState): Kin {
  const parents = new Map<string, string[]>();
  const children = new Map<string, string[]>();
  const link = (parent: string, child: string) => {
    append(parents, child, parent);
    append(children, parent, child);
  };
  for (const lot of state.lots.values()) link(lot.origin.code, lot.code);
  for (const lot of state.lots.values()) if (lot.mergedInto !== undefined) link(lot.code, lot.mergedInto);
  for (const {of, code} of state.samples.values()) if (of !== undefined) link(of, code);
  for (const {lot, sample, code} of state.specimens.values()) link(lot ?? sample, code);
  return {state, parents, children, about: aboutSamplesAndSpecimens(state)};
}

function aboutSamplesAndSpecimens({entries, samples, specimens}: RoomState): Map<string, Entry[]> {
  const broughtBy = new Map<string, string[]>();
  for (const {entry, code} of specimens.values()) append(broughtBy, entry, code);
  const about = new Map<string, Entry[]>();
  for (const entry of entries) {
    const {id, record} = entry;
    const named = [...samplesNamed(record), ...specimensNamed(record)];
    for (const code of [...(broughtBy.get(id) ?? []), ...named])
      if (samples.has(code) || specimens.has(code)) append(about, code, entry);
  }
  return about;
}

function append<Value>(map: Map<string, Value[]>, key: string, value: Value): void {
  const values = map.get(key);
  if (values === undefined) map.set(key, [value]);
  else values.push(value);
}

function both(kin: Kin, code: string): TraceNode {
  return {...bare(kin, code), up: upFrom(kin, [code]), down: downFrom(kin, code, new Set([code]))};
}

/** A lot split off and merged back would go round in circles, so nothing on the path is met again. */
function upFrom(kin: Kin, path: readonly string[]): TraceNode[] {
  const next = (kin.parents.get(path.at(-1)!) ?? []).filter(code => !path.includes(code));
  return next.map(code => ({...bare(kin, code), up: upFrom(kin, [...path, code]), down: []}));
}

/** All that came of one are marked before any is followed further, so that each stands where it is nearest. */
function downFrom(kin: Kin, from: string, met: Set<string>): TraceNode[] {
  const next = (kin.children.get(from) ?? []).filter(code => !met.has(code));
  for (const code of next) met.add(code);
  return next.map(code => ({...bare(kin, code), up: [], down: downFrom(kin, code, met)}));
}

function bare({state: {lots, specimens, samples}, about}: Kin, code: string): Omit<TraceNode, 'up' | 'down'> {
  const lot = lots.get(code);
  if (lot !== undefined) return {code, kind: 'lot', taxon: lot.taxon, entries: ofLotAlone(lot)};
  const entries = about.get(code) ?? [];
  const specimen = specimens.get(code);
  if (specimen === undefined) return {code, kind: 'sample', of: samples.get(code)?.of, entries};
  return {
    code,
    kind: 'specimen',
    taxon: specimen.taxon,
    exuviae: specimen.exuviae,
    subimagoSkin: specimen.subimagoSkin,
    entries,
  };
}

/** What was recorded of a lot, without what is about one of its specimens alone. */
function ofLotAlone({entries, specimens}: Lot): Entry[] {
  const own = new Set(specimens);
  return entries.filter(({record}) => !specimensNamed(record).some(code => own.has(code)));
}

/** Samples that a record is about in itself: not those that it brings lots or specimens out of. */
function samplesNamed(record: Entry['record']): string[] {
  switch (record.record) {
    case 'sample':
    case 'subsample':
      return [record.code];
    case 'bycatch':
    case 'sorting':
      return [record.sample];
    default:
      return [];
  }
}

/** Specimens that a record is about; a note may name anything. */
function specimensNamed(record: Entry['record']): string[] {
  return codesNamed(record).flatMap(({kind, code}) =>
    kind === 'specimen' || kind === 'anything' ? [code] : [],
  );
}

function unknown({samples, lots, specimens}: RoomState, code: string): Refusal {
  const near = nearest(code, [...samples.keys(), ...lots.keys(), ...specimens.keys()]);
  const mend = near === undefined ? 'Name one that is in the room.' : `Nearest known is ${near}.`;
  return new Refusal(`no sample, lot or specimen has the code ${code}`, 'trace', mend);
}
