// What gets a code of its own: adults, parasitoids, vouchers; and what becomes of them.
import type {Dated} from './counting.ts';
import type {LotDraft, RoomDraft, SpecimenDraft} from './draft.ts';
import type {Entry} from './entry.ts';
import {instantOf} from './entry.ts';
import {joinUnder, removeFrom} from './fold-lots.ts';
import {look, lookBefore} from './fold-stages.ts';
import type {RecordOf} from './schema/index.ts';
import {type SpecimenRecord, specimenCodes, specimenCount} from './specimen-codes.ts';

/** Adults leave the last stage first. */
export function emerge(
  room: RoomDraft,
  lot: LotDraft,
  record: RecordOf<'emergence'>,
  {at, entry}: Dated,
): void {
  const count = specimenCount(record);
  const since = record.since === undefined ? lookBefore(lot, at) : instantOf(record.since);
  removeFrom(lot, 'emerged', count, 'oldest');
  lot.sightings.push({kind: 'emergence', since, at, count, entry: entry.id});
  look(lot, at);
  const {fate, condition, exuviae} = record;
  const subimagoAt = record.as === 'subimago' ? at : undefined;
  const each = record.adults.flatMap(group => Array<typeof group>(group.count).fill(group));
  addSpecimens(room, lot, record, {at, entry}, index => {
    const own = each[index];
    return {
      since,
      sex: own?.sex,
      fate: own?.fate ?? fate,
      condition: own?.condition ?? condition,
      exuviae,
      subimagoAt,
    };
  });
}

/** Parasitoids are a product of their hosts: the hosts leave, the parasitoids never were in the sum. */
export function parasitise(
  room: RoomDraft,
  lot: LotDraft,
  record: RecordOf<'parasitoid'>,
  {at, entry}: Dated,
): void {
  const {hosts, hostStage, taxon, sex, hyper, outOf, remains, cocoon} = record;
  const since = record.since === undefined ? lookBefore(lot, at) : instantOf(record.since);
  removeFrom(lot, 'parasitised', hosts, hostStage === undefined ? 'oldest' : {stage: hostStage});
  if (hosts > 0) lot.sightings.push({kind: 'removal', at, stage: hostStage, count: hosts, entry: entry.id});
  const told = {since, taxon, sex, stage: hostStage, hyper, outOf, remains, cocoon};
  addSpecimens(room, lot, record, {at, entry}, () => told);
}

/** Immatures of a lot preserved as evidence. */
export function preserve(
  room: RoomDraft,
  lot: LotDraft,
  record: RecordOf<'voucher'>,
  {at, entry}: Dated,
): void {
  const {stage, count, sex} = record;
  removeFrom(lot, 'preserved', count, stage === undefined ? 'oldest' : {stage});
  lot.sightings.push({kind: 'removal', at, stage, count, entry: entry.id});
  const taxon = record.taxon ?? lot.taxon;
  addSpecimens(room, lot, record, {at, entry}, () => ({stage, sex, taxon}));
}

/** What was taken out of a field sample dead never was in a lot. */
export function takeOut(room: RoomDraft, record: RecordOf<'voucher'>, {at, entry}: Dated): void {
  const sample = room.samples.get(record.sample ?? '');
  if (sample === undefined) return;
  const {stage, sex, taxon} = record;
  addSpecimens(room, sample, record, {at, entry}, () => ({lot: undefined, stage, sex, taxon}));
}

/** The last identification gives the present name; all are kept. */
export function identify(room: RoomDraft, record: RecordOf<'identification'>, each: Dated): void {
  const specimen = room.specimens.get(record.specimen)!;
  specimen.taxon = nameIn(record);
  specimen.identifications.push(each.entry);
  joinUnder(room, record.specimen, each);
}

/** "Pieris cf. rapae", "Pieris rapae ?": a doubt stands where taxonomists write it. */
export function nameIn({taxon, qualifier}: RecordOf<'identification'>): string {
  if (qualifier === undefined) return taxon;
  if (qualifier === '?') return `${taxon} ?`;
  const [genus = '', ...epithets] = taxon.split(' ');
  return epithets.length === 0 ? `${qualifier} ${genus}` : [genus, qualifier, ...epithets].join(' ');
}

export function moultToImago(room: RoomDraft, record: RecordOf<'imago'>, each: Dated): void {
  const specimen = room.specimens.get(record.specimen)!;
  specimen.imagoAt = each.at;
  if (record.exuviae !== undefined) specimen.subimagoSkin = record.exuviae;
  joinUnder(room, record.specimen, each);
}

export function prepare(room: RoomDraft, record: RecordOf<'preparation'>, each: Dated): void {
  room.specimens.get(record.specimen)!.preparations.push(each.entry);
  joinUnder(room, record.specimen, each);
}

/** Specimens that are no longer there, because the entry that brought them is void, are passed over. */
export function printLabels(room: RoomDraft, record: RecordOf<'print'>, each: Dated): void {
  joinUnder(room, record.lot, each);
  for (const {kind, text, for: codes} of record.labels)
    for (const code of codes) room.specimens.get(code)?.printed.push({kind, text, at: each.at});
}

/** What a record says of each of its specimens; what every specimen of a lot or sample has is added. */
type Told = Partial<Omit<SpecimenDraft, 'code' | 'kind' | 'sample' | 'at' | 'entry'>>;

/** Where specimens come out of: a lot, or straight out of a field sample. */
interface Origin {
  readonly code: string;
  readonly sample?: string;
  readonly taxon?: string | undefined;
  readonly specimens: string[];
}

function addSpecimens(
  room: RoomDraft,
  origin: Origin,
  record: SpecimenRecord,
  {at, entry}: {readonly at: number; readonly entry: Entry},
  told: (index: number) => Told,
): void {
  const codes = specimenCodes(record, code => room.specimens.has(code) || room.lots.has(code));
  const individuals = codes.length === 1 ? specimenCount(record) : 1;
  for (const [index, code] of codes.entries()) {
    if (room.specimens.has(code)) continue;
    const specimen: SpecimenDraft = {
      code,
      kind: kinds[record.record],
      lot: origin.code,
      sample: origin.sample ?? origin.code,
      taxon: origin.taxon,
      animal: record.animal,
      individuals,
      at,
      entry: entry.id,
      identifications: [],
      preparations: [],
      printed: [],
    };
    room.specimens.set(code, Object.assign(specimen, told(index)));
    origin.specimens.push(code);
  }
}

const kinds = {emergence: 'adult', parasitoid: 'parasitoid', voucher: 'voucher'} as const;
