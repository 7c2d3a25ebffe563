// The codes by which a record says what it is about.
import type {RoomRecord} from '../records/schema/index.ts';

/** Codes of samples, lots and specimens in a record, its own included; units and loggers never leave the room. */
export function codesIn(record: RoomRecord): string[] {
  switch (record.record) {
    case 'sample':
      return [record.code];
    case 'lot':
      return given(record.code, record.sample, ...Object.values(record.from ?? {}));
    case 'split':
    case 'merge':
      return [record.lot, record.into];
    case 'emergence':
      return given(record.lot, ...(record.codes ?? []), record.exuviae?.code);
    case 'parasitoid':
      return [record.lot, ...(record.codes ?? [])];
    case 'voucher':
      return given(record.lot, record.specimen, ...(record.codes ?? []));
    case 'imago':
    case 'identification':
      return [record.specimen];
    case 'rule':
      return given(record.for.lot);
    case 'note':
      return given(record.about);
    case 'count':
    case 'check':
    case 'hatch':
    case 'found':
    case 'loss':
    case 'move':
    case 'close':
    case 'care':
    case 'skip':
      return given(record.lot);
    default:
      return [];
  }
}

function given(...codes: (string | undefined)[]): string[] {
  return codes.filter(code => code !== undefined);
}
