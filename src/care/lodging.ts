// Whether animals could live in a unit: its water and air, who lives there, whether it is clean, and how many it holds.
import {heaviestFirst} from '../records/candidates.ts';
import type {Instant} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import type {Profile} from '../records/schema/index.ts';
import {total} from '../records/stage.ts';
import {type Lot, type RoomState, type Unit, valueAt} from '../records/state.ts';
import {classOf, coded} from './groups.ts';
import {isLiving} from './stages.ts';

/** What animals ask of a unit, and what they do to others there. */
export interface Needs {
  /** Room for one of them; undefined where no profile says it. */
  readonly litresEach?: number | undefined;
  /** Its water needs air all day. */
  readonly aerated: boolean;
  /** They eat other animals of their unit. */
  readonly predatory: boolean;
  /** Some profile says how they are housed. */
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

/** Candidates that weigh less do not bind. */
const MATTERS = 0.05;

type Named = Pick<Lot, 'candidates' | 'taxon'>;

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

/** Where animals may be several kinds, the strictest of what each needs. */
export function needsOf(lot: Named, profiles: ReadonlyMap<string, Profile>): Needs {
  const housings = linesOf(lot, profiles).flatMap(line => {
    const nearest = line.find(code => profiles.get(code)?.housing !== undefined);
    return nearest === undefined ? [] : [profiles.get(nearest)!.housing!];
  });
  const litres = housings.flatMap(({litresEach}) => litresEach ?? []);
  return {
    litresEach: litres.length === 0 ? undefined : Math.max(...litres),
    aerated: housings.some(({aerated}) => aerated === true),
    predatory: housings.some(({predatory}) => predatory === true),
    known: housings.length > 0,
  };
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
  const eater = tenants.find(tenant => needsOfTenant(tenant).predatory);
  if (eater !== undefined) return {why: `${named(eater)} live there and eat others`};
  if (needs.predatory && tenants.length > 0)
    return {why: `${named(tenants[0]!)} live there, and these would eat them`};
  if (needs.aerated && unit.aerated !== true)
    return {
      why:
        unit.aerated === false
          ? 'its water is not aerated'
          : `nobody says that its water is aerated (teneral unit ${unit.code} --aerated)`,
    };
  const last = isHome || tenants.length > 0 ? undefined : uncleanedAfter(unit.code, state);
  if (last !== undefined)
    return {why: `not cleaned out since ${last.code} lived there (teneral care ${unit.code} clean-out)`};
  return {
    from: Math.max(state.asOf, unit.freeFrom === undefined ? 0 : Date.parse(unit.freeFrom)),
    holds: holdsOf(unit, needs, tenants, needsOfTenant),
    beside: tenants.map(({code}) => code),
  };
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
