// How lots begin, divide and join, and which entries belong to them.
import type {Dated} from './counting.ts';
import type {LotDraft, RoomDraft} from './draft.ts';
import type {Entry} from './entry.ts';
import type {RecordOf} from './schema/index.ts';
import {total} from './stage.ts';
import type {Cohort, Lot, Tally} from './state.ts';
import {isEmpty, knownIn, put, take} from './stock.ts';

export function beginLot(room: RoomDraft, record: RecordOf<'lot'>, {at, entry}: Dated): void {
  if (room.lots.has(record.code)) return;
  const mother = motherOf(room, record);
  const stages = record.stages ?? {};
  const {progress, ages, counted, within, material} = record;
  begin(room, {
    code: record.code,
    unit: record.unit,
    sample: record.sample ?? mother?.sample ?? '',
    origin: originOf(record),
    taxon: record.taxon ?? mother?.taxon,
    counted,
    within,
    material,
    candidates: record.candidates.length > 0 ? record.candidates : (mother?.candidates ?? []),
    needs: record.needs ?? mother?.needs,
    cohort: {at, stages, progress, ages, how: 'started', entry: entry.id},
    entry,
  });
}

/** Animals seen are counted when they are parted, so those of a lot of unknown number make a lot of known number. */
export function splitLot(room: RoomDraft, record: RecordOf<'split'>, {at, entry}: Dated): void {
  if (room.lots.has(record.into)) return;
  const parent = room.lots.get(record.lot)!;
  parent.entries.push(entry);
  const inherits = !isHidden(parent) && total(record.stages) <= total(parent.alive);
  for (const [stage, count] of Object.entries(record.stages)) {
    const judged = knownIn(parent.alive, stage) < count;
    removeFrom(parent, 'splitOff', count, {stage});
    if (count > 0) parent.sightings.push({kind: 'removal', at, stage, count, judged, entry: entry.id});
  }
  const counted = parent.counted === 'estimated' ? 'estimated' : 'exact';
  const {ages} = parent.cohorts[0]!;
  begin(room, {
    code: record.into,
    unit: record.unit ?? parent.stays.at(-1)!.unit,
    sample: parent.sample,
    origin: {kind: 'lot', code: parent.code, how: 'split'},
    taxon: parent.taxon,
    counted,
    candidates: parent.candidates,
    needs: parent.needs,
    cohort: {
      ...{at, stages: record.stages, progress: [0, 1], ages, entry: entry.id},
      ...{how: 'split', fromLot: parent.code, inherits},
    },
    entry,
  });
}

export function mergeLots(room: RoomDraft, record: RecordOf<'merge'>, {at, entry}: Dated): void {
  const from = room.lots.get(record.lot)!;
  const into = room.lots.get(record.into)!;
  from.entries.push(entry);
  if (from === into) return;
  into.entries.push(entry);
  const stages = from.alive;
  const {ages} = from.cohorts[0]!;
  const inherits = !isHidden(from) && !isHidden(into);
  if (!isEmpty(stages))
    into.cohorts.push({
      ...{at, stages, progress: [0, 1], ages, entry: entry.id},
      ...{how: 'merged', fromLot: from.code, inherits},
    });
  into.alive = put(into.alive, stages);
  into.tally.mergedIn += total(stages);
  from.tally.mergedOut += total(stages);
  from.alive = {};
  into.exact = into.exact && from.exact;
  into.counted = vaguer(into.counted, from.counted);
  into.material ??= from.material;
  if (from.needs !== undefined) into.needs = {...from.needs, ...into.needs};
  from.mergedInto = into.code;
  endLot(from, {at, reason: `merged into ${into.code}`});
}

/** A name, or what the animals may be or need, that somebody knows better now. */
export function reviseLot(lot: LotDraft, {taxon, candidates, needs}: RecordOf<'revision'>): void {
  lot.taxon = taxon ?? lot.taxon;
  if (needs !== undefined) lot.needs = needs === null ? undefined : {...lot.needs, ...needs};
  if (candidates !== undefined) lot.candidates = [...candidates];
}

/** The lot ends, and with it its stay. */
export function endLot(lot: LotDraft, closed: NonNullable<Lot['closed']>): void {
  lot.closed = closed;
  leaveUnit(lot, closed.at);
}

export function leaveUnit(lot: LotDraft, at: number): void {
  const stay = lot.stays.pop();
  if (stay !== undefined) lot.stays.push(stay.to === undefined ? {...stay, to: at} : stay);
}

/** Take animals out of a lot. Those that were not known of are booked as found, so that the sum holds. */
export function removeFrom(
  lot: LotDraft,
  account: 'emerged' | 'parasitised' | 'lost' | 'preserved' | 'splitOff',
  count: number,
  source: Parameters<typeof take>[2],
): void {
  const {left, missing} = take(lot.alive, count, source);
  lot.alive = left;
  lot.tally[account] += count;
  lot.tally.found += missing;
}

/** Animals are hidden, or nobody knows how many there are. */
export function isHidden({material, counted}: Pick<Lot, 'material' | 'counted'>): boolean {
  return material !== undefined || counted === 'unknown';
}

/** An entry about a lot, or about one of its specimens, that changes nothing about its animals. */
export function joinUnder(room: RoomDraft, code: string | undefined, {entry}: Dated): void {
  if (code === undefined) return;
  const lot = room.lots.get(code) ?? room.lots.get(room.specimens.get(code)?.lot ?? '');
  lot?.entries.push(entry);
}

/** What a lot begins with; all else follows. */
interface Beginning
  extends Pick<
    LotDraft,
    'code' | 'sample' | 'origin' | 'taxon' | 'counted' | 'within' | 'material' | 'candidates' | 'needs'
  > {
  readonly unit: string;
  readonly cohort: Cohort;
  readonly entry: Entry;
}

function begin(room: RoomDraft, beginning: Beginning): void {
  const {code, unit, sample, origin, taxon, counted, within, material, candidates, needs, cohort, entry} =
    beginning;
  const {at, stages} = cohort;
  // Field by field, for every lot alike: a large room has hundreds, and spreading shapes takes longer than the rest.
  room.lots.set(code, {
    code,
    sample,
    origin,
    taxon,
    startedAt: at,
    counted,
    within,
    material,
    candidates,
    needs,
    cohorts: [cohort],
    stays: [{unit, from: at}],
    sightings: [],
    alive: put({}, stages),
    tally: beginningWith(total(stages)),
    exact: counted === 'exact' && material === undefined,
    looks: [],
    lastLook: undefined,
    specimens: [],
    closed: undefined,
    mergedInto: undefined,
    entries: [entry],
  });
}

function beginningWith(started: number): Tally {
  return {
    started,
    hatched: 0,
    mergedIn: 0,
    found: 0,
    emerged: 0,
    parasitised: 0,
    lost: 0,
    preserved: 0,
    splitOff: 0,
    mergedOut: 0,
  };
}

function originOf({sample, from}: RecordOf<'lot'>): Lot['origin'] {
  if (from === undefined) return {kind: 'sample', code: sample ?? ''};
  if ('lot' in from) return {kind: 'lot', code: from.lot, how: 'eggs'};
  return {kind: 'specimen', code: from.specimen};
}

/** The lot of the female whose eggs these are; of one caught as an adult, what is known of herself. */
function motherOf(room: RoomDraft, {from}: RecordOf<'lot'>): Mother | undefined {
  if (from === undefined) return undefined;
  if ('lot' in from) return room.lots.get(from.lot);
  const female = room.specimens.get(from.specimen);
  const lot = room.lots.get(female?.lot ?? '');
  return lot ?? (female && {sample: female.sample, taxon: female.taxon, candidates: []});
}

type Mother = Pick<LotDraft, 'sample' | 'taxon' | 'candidates' | 'needs'>;

function vaguer(a: Lot['counted'], b: Lot['counted']): Lot['counted'] {
  const order = ['exact', 'estimated', 'unknown'] as const;
  return order.indexOf(a) < order.indexOf(b) ? b : a;
}
