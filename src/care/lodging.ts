// Whether animals could live in a unit: its water and air, who lives there, whether it is clean, and how many it holds.
import {heaviestFirst} from '../records/candidates.ts';
import type {Instant} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import {whenWritten} from '../records/plain-words.ts';
import type {Profile} from '../records/schema/index.ts';
import {total} from '../records/stage.ts';
import {type Lot, type RoomState, type Unit, valueAt} from '../records/state.ts';
import {classOf, coded} from './groups.ts';
import {isLiving} from './stages.ts';

/** What animals ask of a unit, and what they do to others there. */
export interface Needs {
  /** Room for one of them; undefined where nobody says it. */
  readonly litresEach?: number | undefined;
  /** As said of them; undefined where their profiles have it. */
  readonly coolestC?: number | undefined;
  readonly warmestC?: number | undefined;
  /** Its water needs air all day. */
  readonly aerated: boolean;
  /** They eat other animals of their unit. */
  readonly predatory: boolean;
  /** They may live beside animals that eat others. */
  readonly besideEaters: boolean;
  /** Somebody, or some profile, says how they are housed. */
  readonly known: boolean;
}

export interface Room {
  readonly from: Instant;
  /** How many animals there is room for beside those that live there; null where it is not known. */
  readonly holds: number | null;
  /** Lots that live there already. */
  readonly beside: readonly string[];
}

export type Verdict = Room | {readonly why: string};

/** What speaks against a unit. */
export interface Fault {
  readonly what: string;
  /** Animals die of it; all else only wants to be seen to. */
  readonly harms: boolean;
}

/** Candidates that weigh less do not bind. */
const MATTERS = 0.05;

type Named = Pick<Lot, 'candidates' | 'taxon' | 'needs'>;

/** The profiles that may say how animals are housed, nearest first, for each thing that they may be. */
function linesOf({candidates, taxon}: Named, profiles: ReadonlyMap<string, Profile>): string[][] {
  const whole = candidates.reduce((sum, {weight}) => sum + weight, 0);
  const heavy = heaviestFirst(candidates).filter(({weight}) => weight >= MATTERS * whole);
  const lines = heavy.map(({profile}) => [profile, ...classOf(profiles.get(profile))]);
  return lines.length > 0 || taxon === undefined ? lines : [[coded(taxon)]];
}

/** Codes of all profiles that `needsOf` may look at; those of wider taxa are known once the nearer ones are. */
export function housingCodes(lot: Named, profiles: ReadonlyMap<string, Profile>): string[] {
  return linesOf(lot, profiles).flat();
}

/** As is said of them; else, where animals may be several kinds, the strictest of what each needs. */
export function needsOf(lot: Named, profiles: ReadonlyMap<string, Profile>): Needs {
  const housings = linesOf(lot, profiles).flatMap(line => {
    const nearest = line.find(code => profiles.get(code)?.housing !== undefined);
    return nearest === undefined ? [] : [profiles.get(nearest)!.housing!];
  });
  const litres = housings.flatMap(({litresEach}) => litresEach ?? []);
  const said = lot.needs ?? {};
  return {
    litresEach: said.litresEach ?? (litres.length === 0 ? undefined : Math.max(...litres)),
    coolestC: said.coolestC,
    warmestC: said.warmestC,
    aerated: said.aerated ?? housings.some(({aerated}) => aerated === true),
    predatory: said.predatory ?? housings.some(({predatory}) => predatory === true),
    besideEaters: said.besideEaters === true,
    known: housings.length > 0 || lot.needs !== undefined,
  };
}

/** The nearest profile of each thing that they may be. */
export function nearestProfiles(lot: Named, profiles: ReadonlyMap<string, Profile>): Profile[] {
  return linesOf(lot, profiles).flatMap(([nearest]) => profiles.get(nearest ?? '') ?? []);
}

/** The types of unit that the animals are kept in; none where nobody says it. */
export function rearedIn(lot: Named, profiles: ReadonlyMap<string, Profile>): Unit['type'][] {
  return nearestProfiles(lot, profiles).flatMap(({rearing}) => rearing);
}

/** Lots other than one that live in a unit. */
export function tenantsOf(unit: string, state: RoomState, but?: string): Lot[] {
  return [...state.lots.values()].filter(
    lot => lot.code !== but && isLiving(lot) && lot.stays.at(-1)?.unit === unit,
  );
}

/**
 * Whether animals that need this could live in a unit, from when, and how many of them.
 * @param needsOfTenant of each lot that lives there; where its room is not known it is taken for that of the newcomers
 * @param lot the code of a lot whose own place is not counted as taken
 */
export function roomIn(
  unit: Unit,
  needs: Needs,
  needsOfTenant: (lot: Lot) => Needs,
  state: RoomState,
  lot?: string,
): Verdict {
  const tenants = tenantsOf(unit.code, state, lot);
  const isHome = state.lots.get(lot ?? '')?.stays.at(-1)?.unit === unit.code;
  const [fault] = [
    ...neighbourFaults(needs, tenants, needsOfTenant),
    ...airFaults(unit, needs),
    ...(isHome ? [] : uncleanFaults(unit, tenants, state, lot)),
  ];
  if (fault !== undefined) return {why: fault.what};
  return {
    from: Math.max(state.asOf, unit.freeFrom === undefined ? 0 : Date.parse(unit.freeFrom)),
    holds: holdsOf(unit, needs, tenants, needsOfTenant),
    beside: tenants.map(({code}) => code),
  };
}

export interface Newcomers {
  /** A lot of this code is not counted among those that live there. */
  readonly code: string;
  readonly animals: number;
  /** They join those of their own lot, so that nothing has to be clean. */
  readonly joins?: boolean | undefined;
}

/** All that speaks against putting animals into a unit now, but its type and its temperature. */
export function faultsOf(
  unit: Unit,
  {code, animals, joins = false}: Newcomers,
  needs: Needs,
  needsOfTenant: (lot: Lot) => Needs,
  state: RoomState,
): Fault[] {
  const tenants = tenantsOf(unit.code, state, code);
  const holds = holdsOf(unit, needs, tenants, needsOfTenant);
  return [
    ...neighbourFaults(needs, tenants, needsOfTenant),
    ...airFaults(unit, needs),
    ...(joins ? [] : uncleanFaults(unit, tenants, state, code)),
    ...freeFaults(unit, state),
    ...(holds === null || holds >= animals
      ? []
      : [untidy(holds === 0 ? 'it is full' : `it has room for ${holds} of these ${animals}`)]),
  ];
}

function untidy(what: string): Fault {
  return {what, harms: false};
}

function harmful(what: string): Fault {
  return {what, harms: true};
}

function neighbourFaults(needs: Needs, tenants: readonly Lot[], needsOfTenant: (lot: Lot) => Needs): Fault[] {
  const eater = needs.besideEaters ? undefined : tenants.find(tenant => needsOfTenant(tenant).predatory);
  if (eater !== undefined) return [harmful(`${named(eater)} live there and eat others`)];
  const prey = needs.predatory ? tenants.find(tenant => !needsOfTenant(tenant).besideEaters) : undefined;
  return prey === undefined ? [] : [harmful(`${named(prey)} live there, and these would eat them`)];
}

function airFaults({code, aerated}: Unit, needs: Needs): Fault[] {
  if (!needs.aerated || aerated === true) return [];
  return [
    aerated === false
      ? harmful('its water is not aerated')
      : untidy(`nobody says that its water is aerated (teneral unit ${code} --aerated)`),
  ];
}

function freeFaults({freeFrom}: Unit, {asOf}: RoomState): Fault[] {
  return freeFrom === undefined || Date.parse(freeFrom) <= asOf
    ? []
    : [untidy(`it is to be left free until ${whenWritten(freeFrom)}`)];
}

/** Where somebody lives already it is their unit, clean or not; so it is for the lot that left it last. */
function uncleanFaults({code}: Unit, tenants: readonly Lot[], state: RoomState, lot?: string): Fault[] {
  const last = tenants.length > 0 ? undefined : uncleanedAfter(code, state);
  return last === undefined || last.code === lot
    ? []
    : [untidy(`not cleaned out since ${last.code} lived there (teneral care ${code} clean-out)`)];
}

function named({code, taxon}: Lot): string {
  return taxon === undefined ? `the animals of ${code}` : `${taxon} of ${code}`;
}

function holdsOf(
  {volumeLitres}: Unit,
  {litresEach}: Needs,
  tenants: readonly Lot[],
  needsOfTenant: (lot: Lot) => Needs,
): number | null {
  if (volumeLitres === undefined || litresEach === undefined || tenants.some(isHidden)) return null;
  const taken = tenants.reduce(
    (sum, tenant) => sum + total(tenant.alive) * (needsOfTenant(tenant).litresEach ?? litresEach),
    0,
  );
  // A hair more than exact, so that 6 L hold twelve at 0.5 L however the numbers are stored.
  return Math.max(0, Math.floor((volumeLitres - taken) / litresEach + 1e-9));
}

/** The lot that left a unit last, if nobody has said since that the unit was cleaned out. */
function uncleanedAfter(unit: string, state: RoomState): Lot | undefined {
  const gone = [...state.lots.values()].flatMap(lot => {
    const left = leftAt(lot, unit);
    return left === undefined ? [] : [{lot, left}];
  });
  const last = gone.sort((a, b) => a.left - b.left).at(-1);
  if (last === undefined) return undefined;
  const homeOf = (code: string | undefined) => state.lots.get(code ?? '')?.stays.at(-1)?.unit;
  const cleaned = state.care.some(
    ({task, at, skipped, ...deed}) =>
      task === 'clean-out' &&
      skipped === undefined &&
      at >= last.left &&
      (deed.unit ?? homeOf(deed.lot)) === unit,
  );
  return cleaned ? undefined : last.lot;
}

/** When the last animal of a lot left a unit: with the lot, or because nobody of it was left. */
function leftAt(lot: Lot, unit: string): Instant | undefined {
  const stay = lot.stays.findLast(one => one.unit === unit);
  if (stay === undefined) return undefined;
  if (stay !== lot.stays.at(-1)) return stay.to ?? lot.startedAt;
  if (isLiving(lot)) return undefined;
  return lot.sightings.at(-1)?.at ?? lot.closed?.at ?? lot.startedAt;
}

/** A unit as it is now, of every unit of a room, in the order of the record. */
export function unitsNow({units, asOf}: RoomState): Unit[] {
  return [...units.values()].map(history => valueAt(history, asOf));
}
