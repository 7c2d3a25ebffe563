// What comes out of a lot with a code of its own: adults, parasitoids, vouchers; and their names.
import type {Dated} from './counting.ts';
import type {LotDraft, RoomDraft, SpecimenDraft} from './draft.ts';
import {instantOf} from './entry.ts';
import {removeFrom} from './fold-lots.ts';
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
  const sexes = record.adults.flatMap(({sex, count}) => Array<typeof sex>(count).fill(sex));
  addSpecimens(room, lot, record, {at, entry}, index => {
    return {since, sex: sexes[index], fate, condition, exuviae, subimagoAt};
  });
}

/** Parasitoids are a product of their hosts: the hosts leave, the parasitoids never were in the sum. */
export function parasitise(
  room: RoomDraft,
  lot: LotDraft,
  record: RecordOf<'parasitoid'>,
  {at, entry}: Dated,
): void {
  const {hosts, hostStage, taxon} = record;
  const since = record.since === undefined ? lookBefore(lot, at) : instantOf(record.since);
  removeFrom(lot, 'parasitised', hosts, hostStage === undefined ? 'oldest' : {stage: hostStage});
  if (hosts > 0) lot.sightings.push({kind: 'removal', at, stage: hostStage, count: hosts, entry: entry.id});
  addSpecimens(room, lot, record, {at, entry}, () => ({since, taxon, stage: hostStage}));
}

/** Immatures preserved as evidence. */
export function preserve(
  room: RoomDraft,
  lot: LotDraft,
  record: RecordOf<'voucher'>,
  {at, entry}: Dated,
): void {
  const {stage, count} = record;
  removeFrom(lot, 'preserved', count, stage === undefined ? 'oldest' : {stage});
  lot.sightings.push({kind: 'removal', at, stage, count, entry: entry.id});
  addSpecimens(room, lot, record, {at, entry}, () => ({stage}));
}

/** The last identification gives the present name; all are kept. */
export function identify(room: RoomDraft, record: RecordOf<'identification'>, {entry}: Dated): void {
  const specimen = room.specimens.get(record.specimen)!;
  specimen.taxon = record.taxon;
  specimen.identifications.push(entry);
  room.lots.get(specimen.lot)!.entries.push(entry);
}

export function moultToImago(room: RoomDraft, record: RecordOf<'imago'>, {at, entry}: Dated): void {
  const specimen = room.specimens.get(record.specimen)!;
  specimen.imagoAt = at;
  room.lots.get(specimen.lot)!.entries.push(entry);
}

/** Specimens that are no longer there, because the entry that brought them is void, are passed over. */
export function printLabels(room: RoomDraft, record: RecordOf<'print'>, {at}: Dated): void {
  for (const {kind, text, for: codes} of record.labels)
    for (const code of codes) room.specimens.get(code)?.printed.push({kind, text, at});
}

/** What a record says of each of its specimens; what every specimen of a lot has is added. */
type Told = Partial<Omit<SpecimenDraft, 'code' | 'kind' | 'lot' | 'at' | 'entry'>>;

function addSpecimens(
  room: RoomDraft,
  lot: LotDraft,
  record: SpecimenRecord,
  {at, entry}: Dated,
  told: (index: number) => Told,
): void {
  const codes = specimenCodes(record, code => room.specimens.has(code) || room.lots.has(code));
  for (const [index, code] of codes.entries()) {
    if (room.specimens.has(code)) continue;
    const kind = kinds[record.record];
    const specimen: SpecimenDraft = {
      code,
      kind,
      lot: lot.code,
      at,
      entry: entry.id,
      identifications: [],
      printed: [],
    };
    room.specimens.set(code, Object.assign(specimen, {taxon: lot.taxon, animal: record.animal}, told(index)));
    lot.specimens.push(code);
  }
}

const kinds = {emergence: 'adult', parasitoid: 'parasitoid', voucher: 'voucher'} as const;
