// What is unusual enough to be asked about before it is written down. Unlike a rule, a doubt gives way to a person who
// has looked again and is sure.
import type {Dated} from './counting.ts';
import {type Entry, instantOf, MS_PER_DAY, MS_PER_HOUR} from './entry.ts';
import {openRoomDraft} from './fold.ts';
import {live} from './fold-life.ts';
import type {Kin} from './orders.ts';
import type {Fault} from './rule.ts';
import type {RecordOf} from './schema/index.ts';
import {specimenCount} from './specimen-codes.ts';
import {countsInWords} from './stage-words.ts';
import type {Lot, RoomState, Specimen} from './state.ts';

/** How long adults of a lot need until they are hard, where that is known. */
export type HardenHours = (lot: Lot) => number | undefined;

/** The orders that animals of a lot may belong to; empty where nobody knows. */
export type OrdersOf = (lot: Lot) => readonly string[];

/** What a name says of order and family; undefined where nobody knows. */
export type KinOf = (taxon: string) => Kin | undefined;

/** @returns what is doubtful about entries to be added, by their ids */
export function doubtsAbout(
  before: RoomState,
  additions: readonly Entry[],
  hardenHours: HardenHours,
  ordersOf: OrdersOf,
  kinOf: KinOf,
): Map<string, Fault> {
  const doubts = new Map<string, Fault>();
  const asked = new Set(additions.filter(({record}) => ASKED.has(record.record)).map(({id}) => id));
  if (asked.size === 0) return doubts;
  const {room, dated} = openRoomDraft([...before.history, ...additions], Number.POSITIVE_INFINITY);
  live(room, dated, each => {
    if (!asked.has(each.entry.id)) return;
    const doubt =
      moreAdultsThanPupae(room, each) ??
      collectedSoft(room, each, hardenHours) ??
      namedOutsideTheOrder(room, each, ordersOf, kinOf) ??
      namedAsParasitoid(room, each, kinOf);
    if (doubt !== undefined) doubts.set(each.entry.id, doubt);
  });
  return doubts;
}

const ASKED: ReadonlySet<string> = new Set(['emergence', 'preparation', 'identification']);

/** No pupal stage known is over in less than a day (common practice, no source). */
const SHORTEST_PUPA_MS = MS_PER_DAY;

/** More adults than there were pupae at a count of all less than a day before. */
function moreAdultsThanPupae({lots}: RoomState, {at, entry: {record}}: Dated): Fault | undefined {
  if (record.record !== 'emergence') return undefined;
  const lot = lots.get(record.lot);
  const seen = lot && lastFullCount(lot);
  if (lot === undefined || seen === undefined || at - seen.at >= SHORTEST_PUPA_MS) return undefined;
  const ready = (seen.stages.pupa ?? 0) + (seen.stages.prepupa ?? 0);
  const out = specimenCount(record) + outSince(lot, seen.at);
  if (seen.stages.pupa === undefined || out <= ready) return undefined;
  return {
    what: `${out} adults in all since the count of less than a day ago, which found ${countsInWords(seen.stages)}`,
    mend: 'Correct the number, or count again.',
  };
}

/** Nothing pupated unseen since: the last time that every animal alive was looked at, the start of the lot too. */
function lastFullCount({sightings, cohorts, exact}: Lot) {
  if (!exact) return undefined;
  const count = sightings.findLast(one => one.kind === 'count' && one.complete);
  if (count?.kind === 'count') return count;
  return cohorts.length === 1 ? cohorts[0] : undefined;
}

function outSince({sightings}: Lot, since: number): number {
  return sightings.reduce(
    (sum, one) => sum + (one.kind === 'emergence' && one.at > since ? one.count : 0),
    0,
  );
}

/** Killed while it was still soft: it shrivels, and its colours are not out. */
function collectedSoft(
  {lots, specimens}: RoomState,
  {entry: {record}}: Dated,
  hardenHours: HardenHours,
): Fault | undefined {
  if (record.record !== 'preparation' || record.killedAt === undefined) return undefined;
  const specimen = specimens.get(record.specimen);
  const lot = lots.get(specimen?.lot ?? '');
  if (specimen?.kind !== 'adult') return undefined;
  const killedAt = instantOf(record.killedAt);
  if (specimen.subimagoAt !== undefined) return killedAsSubimago(specimen, killedAt);
  const hours = lot && hardenHours(lot);
  if (hours === undefined) return undefined;
  const hardened = (killedAt - specimen.at) / MS_PER_HOUR;
  if (hardened >= hours) return undefined;
  return {
    what: `${specimen.code} was killed ${Math.round(hardened * 10) / 10} h after it was found, and adults of this kind need ${hours} h to harden`,
    mend: 'Correct "killedAt".',
  };
}

/** A mayfly is known by its imago, which is hard as soon as its last skin is off. Common practice, no source. */
function killedAsSubimago({code, imagoAt}: Specimen, killedAt: number): Fault | undefined {
  if (imagoAt !== undefined && killedAt >= imagoAt) return undefined;
  return {
    what: `${code} was killed as a subimago, before it moulted to the imago`,
    mend: `If it had moulted, record that first: teneral imago ${code}.`,
  };
}

/** Families whose members live in or on other arthropods until they kill them. Common practice, no source. */
const PARASITOID_FAMILIES = new Set(
  'Braconidae Ichneumonidae Chalcididae Pteromalidae Eulophidae Encyrtidae Torymidae Eurytomidae Eupelmidae Trichogrammatidae Mymaridae Aphelinidae Scelionidae Platygastridae Figitidae Bethylidae Dryinidae Tachinidae Bombyliidae Conopidae Pipunculidae'.split(
    ' ',
  ),
);

/** A parasitoid filed as its host spoils survival and hosts alike. */
function namedAsParasitoid(
  {lots, specimens}: RoomState,
  {entry: {record}}: Dated,
  kinOf: KinOf,
): Fault | undefined {
  if (record.record !== 'identification') return undefined;
  const specimen: Specimen | undefined = specimens.get(record.specimen);
  const family = kinOf(record.taxon)?.family;
  const lot = lots.get(specimen?.lot ?? '');
  if (specimen?.kind !== 'adult' || lot === undefined) return undefined;
  if (family === undefined || !PARASITOID_FAMILIES.has(family)) return undefined;
  if (lot.candidates.some(({profile}) => profile.includes('parasitoid'))) return undefined;
  if (lot.taxon !== undefined && PARASITOID_FAMILIES.has(kinOf(lot.taxon)?.family ?? '')) return undefined;
  return {
    what: `${family} are parasitoids, and ${specimen.code} is recorded as an adult of lot ${lot.code} itself`,
    mend: `If it came out of a host, say so: ${asParasitoid(record)}.`,
    isStranger: true,
  };
}

/** A fly out of caterpillars is no caterpillar's adult. */
function namedOutsideTheOrder(
  {lots, specimens}: RoomState,
  {entry: {record}}: Dated,
  ordersOf: OrdersOf,
  kinOf: KinOf,
): Fault | undefined {
  if (record.record !== 'identification') return undefined;
  const specimen: Specimen | undefined = specimens.get(record.specimen);
  const lot = lots.get(specimen?.lot ?? '');
  const order = kinOf(record.taxon)?.order;
  if (specimen?.kind !== 'adult' || lot === undefined || order === undefined) return undefined;
  const orders = ordersOf(lot);
  if (orders.length === 0 || orders.includes(order)) return undefined;
  const name = record.taxon === order ? order : `${record.taxon} (${order})`;
  return {
    what: `${name} differs from the order of lot ${lot.code} (${orders.join(' or ')}): parasitoid, scavenger or mistake?`,
    mend: `If a parasitoid, say ${asParasitoid(record)}; if a scavenger, --scavenger in its place; if a mistake, correct the name.`,
    isStranger: true,
  };
}

/** The command that records it at once as what it is. */
function asParasitoid({specimen, taxon}: RecordOf<'identification'>): string {
  return `teneral identify ${specimen} ${taxon.includes(' ') ? `"${taxon}"` : taxon} --parasitoid`;
}
