// Whether entries may be added to a daybook. The rules are in the rules-of-* files; fold.ts has none.
import {codesGiven} from './codes.ts';
import {atOf, type Entry} from './entry.ts';
import {openRoomDraft} from './fold.ts';
import {live} from './fold-life.ts';
import {Refusal} from './refusal.ts';
import {type Fault, firstFault, type Known} from './rule.ts';
import {rulesOfAnimals} from './rules-of-animals.ts';
import {namesWhatIsThere, rulesOfCodes} from './rules-of-codes.ts';
import {rulesOfLots} from './rules-of-lots.ts';
import {rulesOfSamples} from './rules-of-samples.ts';
import {rulesOfSpecimens} from './rules-of-specimens.ts';
import {rulesOfTime} from './rules-of-time.ts';
import type {RoomState} from './state.ts';

const rulesOfForm = [...rulesOfTime, ...rulesOfCodes, ...rulesOfSamples];
const rulesOfLife = [...rulesOfLots, ...rulesOfAnimals, ...rulesOfSpecimens];

/**
 * Check a batch of entries against everything recorded before: all together, as of every instant of the daybook.
 * A record may name one that stands later in the batch.
 * @param before the room as folded now, with whatever is archived that the batch names
 * @param nameOf how to name an entry of the batch to a person, by its position
 * @throws Refusal for the first entry of the batch that cannot be granted; the batch then fails as a whole
 */
export function decide(
  before: RoomState,
  additions: readonly Entry[],
  known: Known,
  nameOf: (index: number) => string = index => `record ${index + 1}`,
): void {
  const whereOf = (index: number) => named(nameOf(index), additions[index]!);
  const {room, faults} = livedThrough([...before.history, ...additions], known);
  const firstUses = firstUsesOf(room);
  for (const [index, entry] of additions.entries()) {
    const fault =
      voidFault(before, additions, index) ??
      codeFault(firstUses, entry) ??
      firstFault(rulesOfForm, room, {at: atOf(entry), entry}, known) ??
      faults.get(entry.id);
    if (fault !== undefined) throw new Refusal(fault.what, whereOf(index), fault.mend);
  }

  const added = new Set(additions.map(({id}) => id));
  if (additions.some(isVoid)) addLostReferences(room, known, faults);
  const broken = room.entries.filter(({id}) => faults.has(id) && !added.has(id));
  if (broken.length > 0) refuseBreaking(broken, faults, before, additions, known, whereOf);
}

interface Lived {
  readonly room: RoomState;
  /** What is wrong with entries at their place in the life of lots and specimens, by the entry's id. */
  readonly faults: Map<string, Fault>;
}

/** Live through a daybook to its end, and note what is wrong with which entry. */
function livedThrough(history: readonly Entry[], known: Known): Lived {
  const {room, dated} = openRoomDraft(history, Number.POSITIVE_INFINITY);
  const faults = new Map<string, Fault>();
  live(room, dated, each => {
    const fault = firstFault(rulesOfLife, room, each, known);
    if (fault !== undefined) faults.set(each.entry.id, fault);
  });
  return {room, faults};
}

/** Which entry brought a code into use, in the order of writing. */
function firstUsesOf({history, voided}: RoomState): ReadonlyMap<string, Entry> {
  const uses = new Map<string, Entry>();
  for (const entry of history)
    if (!voided.has(entry.id))
      for (const code of codesGiven(entry.record)) if (!uses.has(code)) uses.set(code, entry);
  return uses;
}

/** Samples, lots and specimens are traced by their code alone, so no two may share one. */
function codeFault(firstUses: ReadonlyMap<string, Entry>, {id, record}: Entry): Fault | undefined {
  for (const code of codesGiven(record)) {
    const user = firstUses.get(code);
    if (user === undefined || user.id === id) continue;
    const what = `the code ${code} is in use already (${user.record.record}, entry ${user.id})`;
    return {what, mend: 'Choose another code; samples, lots and specimens share one set of codes.'};
  }
  return undefined;
}

function voidFault(
  {history, voided}: RoomState,
  additions: readonly Entry[],
  index: number,
): Fault | undefined {
  const {record} = additions[index]!;
  if (record.record !== 'void') return undefined;
  const isTarget = ({id}: Entry) => id === record.entry;
  const isSame = ({record: other}: Entry) => other.record === 'void' && other.entry === record.entry;
  if (!history.some(isTarget) && !additions.slice(0, index).some(isTarget))
    return {what: `there is no entry ${record.entry}`, mend: 'The daybook lists entries with their ids.'};
  if (voided.has(record.entry) || additions.slice(0, index).some(isSame))
    return {what: `entry ${record.entry} is void already`, mend: 'Leave it out.'};
  return undefined;
}

/** What is void leaves entries without the sample, lot, unit, logger or specimen that they name. */
function addLostReferences(room: RoomState, known: Known, faults: Map<string, Fault>): void {
  for (const entry of room.entries) {
    const fault = namesWhatIsThere(room, {at: atOf(entry), entry}, known);
    if (fault !== undefined) faults.set(entry.id, fault);
  }
}

/** Refuse a batch that makes wrong what was right before it. What was wrong already does not count against it. */
function refuseBreaking(
  broken: readonly Entry[],
  faults: ReadonlyMap<string, Fault>,
  before: RoomState,
  additions: readonly Entry[],
  known: Known,
  whereOf: (index: number) => string,
): void {
  const earlier = livedThrough(before.history, known);
  addLostReferences(earlier.room, known, earlier.faults);
  const entry = broken.find(({id}) => !earlier.faults.has(id));
  if (entry === undefined) return;
  const {id, record} = entry;
  const when = known.civil.iso(atOf(entry));
  const what = `it would break what is recorded already: ${record.record} of ${when} (entry ${id}): ${faults.get(id)!.what}`;
  const where = whereOf(culpritOf(entry, additions));
  throw new Refusal(what, where, `Correct it, or void entry ${id} in the same batch.`);
}

/** The entry of the batch that a person should look at: a void, else one about the same lot. */
function culpritOf({record}: Entry, additions: readonly Entry[]): number {
  const isVoiding = additions.findIndex(isVoid);
  if (isVoiding >= 0) return isVoiding;
  const lot = 'lot' in record ? record.lot : undefined;
  const sameLot = additions.findIndex(
    ({record: other}) =>
      lot !== undefined && (('lot' in other && other.lot === lot) || ('into' in other && other.into === lot)),
  );
  return Math.max(sameLot, 0);
}

/** "records.json, record 3 (loss)", or the kind alone where there is no name for it. */
function named(name: string, {record}: Entry): string {
  return name === '' ? record.record : `${name} (${record.record})`;
}

function isVoid({record}: Entry): boolean {
  return record.record === 'void';
}
