// Entries of one instant have no order of their own: a count may stand before the loss that explains it.
import type {Dated} from './counting.ts';
import type {LotDraft, RoomDraft} from './draft.ts';
import type {RoomRecord} from './schema/index.ts';
import {total} from './stage.ts';

/** A count that does not add up where it stands, but does after what else was recorded of the same instant. */
export function addsUpLater(room: RoomDraft, dated: readonly Dated[], index: number): boolean {
  const {at, entry} = dated[index]!;
  if (entry.record.record !== 'count') return false;
  const {lot: code, stages, complete} = entry.record;
  const lot = room.lots.get(code);
  if (lot === undefined) return false;
  const surplus = total(stages) - total(lot.alive);
  if (surplus === 0 || (surplus < 0 && complete === false)) return false;
  let change = 0;
  for (let next = index + 1; next < dated.length && dated[next]!.at === at; next++)
    change += changeOf(lot, dated[next]!.entry.record);
  return surplus > 0 ? change > 0 : change === surplus;
}

/** By how many a record changes the number alive in a lot; a hatch out of counted eggs is taken for a full one. */
function changeOf(lot: LotDraft, record: RoomRecord): number {
  if (!('lot' in record) || record.lot !== lot.code) return 0;
  switch (record.record) {
    case 'found':
    case 'hatch':
      return record.count;
    case 'loss':
    case 'voucher':
      return -record.count;
    case 'parasitoid':
      return -record.hosts;
    case 'emergence':
      return -record.adults.reduce((sum, {count}) => sum + count, 0);
    case 'split':
      return -total(record.stages);
    default:
      return 0;
  }
}
