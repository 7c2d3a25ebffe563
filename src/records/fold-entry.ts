// One entry about lots or specimens takes effect.
import type {Dated} from './counting.ts';
import type {RoomDraft} from './draft.ts';
import {beginLot, joinUnder, mergeLots, reviseLot, splitLot} from './fold-lots.ts';
import {noteBycatch, noteSorting} from './fold-samples.ts';
import {
  emerge,
  identify,
  moultToImago,
  parasitise,
  prepare,
  preserve,
  printLabels,
  takeOut,
} from './fold-specimens.ts';
import {
  closeLot,
  countAnimals,
  findAnimals,
  hatchAnimals,
  lookForAdults,
  loseAnimals,
  moveLot,
} from './fold-stages.ts';
import type {RoomRecord} from './schema/index.ts';

/** Change the room as the entry says. What it names must be there: see `absentCode`. Other entries change nothing. */
export function takeEffect(room: RoomDraft, each: Dated): void {
  const {record} = each.entry;
  switch (record.record) {
    case 'lot':
      beginLot(room, record, each);
      break;
    case 'split':
      splitLot(room, record, each);
      break;
    case 'merge':
      mergeLots(room, record, each);
      break;
    case 'identification':
      identify(room, record, each);
      break;
    case 'imago':
      moultToImago(room, record, each);
      break;
    case 'preparation':
      prepare(room, record, each);
      break;
    case 'print':
      printLabels(room, record, each);
      break;
    case 'bycatch':
      noteBycatch(room, record, each);
      break;
    case 'sorting':
      noteSorting(room, record, each);
      break;
    case 'note':
      joinUnder(room, record.about, each);
      break;
    case 'care':
    case 'skip':
      joinUnder(room, record.lot, each);
      break;
    default:
      takeEffectInLot(room, each);
  }
}

function takeEffectInLot(room: RoomDraft, each: Dated): void {
  const {record} = each.entry;
  if (record.record === 'voucher' && record.lot === undefined) takeOut(room, record, each);
  const lot = 'lot' in record ? room.lots.get(record.lot ?? '') : undefined;
  if (lot === undefined) return;
  lot.entries.push(each.entry);
  switch (record.record) {
    case 'count':
      countAnimals(lot, record, each);
      break;
    case 'check':
      lookForAdults(lot, record, each);
      break;
    case 'hatch':
      hatchAnimals(lot, record, each);
      break;
    case 'found':
      findAnimals(lot, record, each);
      break;
    case 'loss':
      loseAnimals(lot, record, each);
      break;
    case 'voucher':
      preserve(room, lot, record, each);
      break;
    case 'emergence':
      emerge(room, lot, record, each);
      break;
    case 'parasitoid':
      parasitise(room, lot, record, each);
      break;
    case 'move':
      moveLot(lot, record, each);
      break;
    case 'revision':
      reviseLot(lot, record);
      break;
    case 'close':
      closeLot(lot, record, each);
      break;
  }
}

/** The lot or specimen that the record is about and that is not there. */
export function absentCode(room: RoomDraft, record: RoomRecord): string | undefined {
  switch (record.record) {
    case 'lot':
      if (record.from === undefined) return undefined;
      if ('lot' in record.from) return absent(room.lots, record.from.lot);
      return absent(room.specimens, record.from.specimen);
    case 'merge':
      return absent(room.lots, record.lot) ?? absent(room.lots, record.into);
    case 'identification':
    case 'imago':
    case 'preparation':
      return absent(room.specimens, record.specimen);
    case 'note':
      return isThere(room, record.about) ? undefined : record.about;
    default:
      return 'lot' in record && record.lot !== undefined ? absent(room.lots, record.lot) : undefined;
  }
}

function absent(there: ReadonlyMap<string, unknown>, code: string): string | undefined {
  return there.has(code) ? undefined : code;
}

/** A note may be about anything that has a code. */
function isThere({lots, specimens, units, samples, loggers}: RoomDraft, code: string | undefined): boolean {
  return code === undefined || [lots, specimens, units, samples, loggers].some(kind => kind.has(code));
}
