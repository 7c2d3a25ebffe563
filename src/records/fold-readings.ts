// What a person read off instruments, and which spans are not to be trusted.
import type {Dated} from './counting.ts';
import type {RoomDraft} from './draft.ts';
import {instantOf} from './entry.ts';
import type {RecordOf} from './schema/index.ts';

/** Take in an entry about readings; any other is left alone. */
export function measure(room: RoomDraft, {at, entry}: Dated): void {
  const {record, id} = entry;
  switch (record.record) {
    case 'reading': {
      const {logger, temperature, humidity} = record;
      room.handReadings.push({logger, at, temperature, humidity, entry: id});
      break;
    }
    case 'extremes': {
      const {logger, from, to, minimum, maximum, now, reset} = record;
      const span = {from: instantOf(from), to: instantOf(to)};
      room.extremes.push({logger, ...span, minimum, maximum, now, reset, entry: id});
      break;
    }
    case 'water': {
      const {unit, temperature} = record;
      room.water.push({unit, at, temperature, entry: id, values: waterValues(record)});
      break;
    }
    case 'mask': {
      const {logger, from, to, why, lift} = record;
      room.masks.push({logger, from: instantOf(from), to: instantOf(to), why, lift});
      break;
    }
  }
}

function waterValues(record: RecordOf<'water'>): Readonly<Record<string, number>> {
  const numbers = Object.entries(record).flatMap(([name, value]) =>
    typeof value === 'number' ? [[name, value] as const] : [],
  );
  return Object.fromEntries(numbers);
}
