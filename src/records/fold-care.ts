// What was done about the room: care, tasks skipped, alerts acknowledged.
import type {Dated} from './counting.ts';
import type {RoomDraft} from './draft.ts';

/** Take in an entry about care; any other is left alone. */
export function attend(room: RoomDraft, {at, entry}: Dated): void {
  const {record, id, by} = entry;
  switch (record.record) {
    case 'care': {
      const {task, unit, lot, seen} = record;
      room.care.push({entry: id, task, unit, lot, at, by, seen});
      break;
    }
    case 'skip': {
      const {task, unit, lot, why} = record;
      room.care.push({entry: id, task, unit, lot, at, by, seen: {}, skipped: why});
      break;
    }
    case 'acknowledge':
      room.acknowledged.set(record.alert, {at, done: record.done});
      break;
  }
}
