// The whole life of the animals that are in a lot: what was seen of them before they were split off, or merged in, is
// theirs too. What was seen later of those that stayed behind is not.
import {atOf, type Entry, type Instant} from './entry.ts';
import {isHidden} from './fold-lots.ts';
import type {Cohort, Lot, Sighting} from './state.ts';

export interface Line {
  readonly cohorts: readonly (Cohort & InLot)[];
  /** In order of time; of each the lot that the animals were in. */
  readonly sightings: readonly (SeenInLine & InLot)[];
  /** Every time somebody looked for adults among these animals. */
  readonly looks: readonly Instant[];
  readonly stays: Lot['stays'];
  /** Where those of other lots lived that were in other units than the lot's own animals, by the code of their lot. */
  readonly elsewhere: readonly (readonly [lot: string, stays: Lot['stays']])[];
}

interface InLot {
  readonly lot: string;
}

export type SeenInLine =
  | Exclude<Sighting, {kind: 'removal'}>
  /** Taken out; `into`: they went on in this lot, whose animals they are now. */
  | (Extract<Sighting, {kind: 'removal'}> & {readonly into?: string | undefined})
  /** All of the lot went on in another. */
  | {readonly kind: 'merge'; readonly at: Instant; readonly into: string; readonly entry: string};

type Lots = ReadonlyMap<string, Lot>;

/** What is known of a lot's animals, from before they came into it as well. Hidden animals have no life but the lot's. */
export function lineOf(lot: Lot, lots: Lots): Line {
  if (isHidden(lot) || !lot.cohorts.some(({inherits}) => inherits)) return ownLineOf(lot);
  const steps = stepsOf(lot, lots);
  const family = new Set(steps.map(({lot: one}) => one));
  const stays = staysOf(lot, lots);
  return {
    cohorts: steps.flatMap(step => foundersOf(step, lots)),
    sightings: steps.flatMap(step => seenAt(step, family, lots)).sort((a, b) => a.at - b.at),
    looks: looksOf(lot, lots),
    stays,
    elsewhere: [...family].flatMap(one => {
      const theirs = staysOf(one, lots);
      const until = Math.max(...steps.filter(step => step.lot === one).map(({entry}) => atOf(entry)));
      return one === lot || sameUnits(stays, theirs, until) ? [] : [[one.code, theirs] as const];
    }),
  };
}

/** The lot taken by itself, as if its animals had begun with it. */
export function ownLineOf(lot: Lot): Line {
  const {code, cohorts, sightings, looks, stays} = lot;
  return {
    cohorts: cohorts.map(cohort => ({...cohort, lot: code})),
    sightings: sightings.flatMap(toldOf).map(seen => ({...seen, lot: code})),
    ...{looks, stays, elsewhere: []},
  };
}

/** One entry of the life, and the lot in which it is told. */
interface Step {
  readonly entry: Entry;
  readonly lot: Lot;
}

/** The entries of a lot and of those its animals came from, each lot's in order, and before what they led to. */
function stepsOf(lot: Lot, lots: Lots): readonly Step[] {
  const told = new Map<Lot, number>();
  const steps: Step[] = [];
  const tell = (one: Lot, until: number) => {
    for (let next = told.get(one) ?? 0; next < until; next++) {
      const entry = one.entries[next]!;
      told.set(one, next + 1);
      const source = sourceOf(one, entry, lots);
      if (source !== undefined) tell(source, source.entries.indexOf(entry) + 1);
      steps.push({entry, lot: one});
    }
  };
  tell(lot, lot.entries.length);
  return steps;
}

/** The lot whose life goes on in this one with an entry. */
function sourceOf({cohorts}: Lot, {id}: Entry, lots: Lots): Lot | undefined {
  const joined = cohorts.find(({entry, inherits}) => inherits === true && entry === id);
  return lots.get(joined?.fromLot ?? '');
}

function foundersOf({entry, lot}: Step, lots: Lots): Line['cohorts'] {
  if (sourceOf(lot, entry, lots) !== undefined) return [];
  return lot.cohorts.filter(cohort => cohort.entry === entry.id).map(each => ({...each, lot: lot.code}));
}

function seenAt({entry, lot}: Step, family: ReadonlySet<Lot>, lots: Lots): (SeenInLine & InLot)[] {
  const {record, id} = entry;
  const into = record.record === 'split' ? lots.get(record.into) : undefined;
  const goesOn =
    into !== undefined && into !== lot && family.has(into) && sourceOf(into, entry, lots) === lot;
  const seen: (SeenInLine & InLot)[] = lot.sightings
    .filter(sighting => sighting.entry === id)
    .flatMap(toldOf)
    .map(sighting =>
      sighting.kind === 'removal' && goesOn
        ? {...sighting, lot: lot.code, into: into.code}
        : {...sighting, lot: lot.code},
    );
  const source = record.record === 'merge' ? sourceOf(lot, entry, lots) : undefined;
  if (source !== undefined)
    seen.push({kind: 'merge', at: atOf(entry), lot: source.code, into: lot.code, entry: id});
  return seen;
}

/** Whoever takes out animals of a stage that nobody knew of has seen them in it. */
function toldOf(seen: Sighting): Sighting[] {
  if (seen.kind !== 'removal' || seen.judged !== true || seen.stage === undefined) return [seen];
  const {at, stage, count, entry} = seen;
  return [{kind: 'count', at, stages: {[stage]: count}, complete: false, entry}, seen];
}

/** The lot that this one was split off from, where its life goes on. */
function parentOf(lot: Lot, lots: Lots): Lot | undefined {
  return lot.cohorts[0]?.how === 'split' ? sourceOf(lot, lot.entries[0]!, lots) : undefined;
}

function looksOf(lot: Lot, lots: Lots): readonly Instant[] {
  const parent = parentOf(lot, lots);
  if (parent === undefined) return lot.looks;
  return [...looksOf(parent, lots).filter(at => at <= lot.startedAt), ...lot.looks];
}

/** Where they lived: with the lot they were split off from, then by themselves. Who stays in a unit has one stay. */
export function staysOf(lot: Lot, lots: Lots): Lot['stays'] {
  const parent = parentOf(lot, lots);
  if (parent === undefined) return lot.stays;
  const before = staysOf(parent, lots).filter(({from}) => from < lot.startedAt);
  const [first, ...others] = lot.stays;
  const last = before.at(-1);
  if (last === undefined || first === undefined) return lot.stays;
  if (last.unit === first.unit) return [...before.slice(0, -1), {...first, from: last.from}, ...others];
  return [...before.slice(0, -1), {...last, to: first.from}, ...lot.stays];
}

/** Whether those who lived here and there were in the same units from the first stay there until an instant. */
function sameUnits(here: Lot['stays'], there: Lot['stays'], until: Instant): boolean {
  const changes = [...here, ...there].map(({from}) => from);
  const lived = changes.filter(at => at >= there[0]!.from && at < until);
  return lived.every(at => unitAt(here, at) === unitAt(there, at));
}

function unitAt(stays: Lot['stays'], at: Instant): string {
  return (stays.findLast(({from}) => from <= at) ?? stays[0]!).unit;
}
