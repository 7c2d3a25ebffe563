// The codes that a record brings into use, and those of others that it names.
import type {RoomRecord} from './schema/index.ts';
import {givenCodes} from './specimen-codes.ts';

export type CodeKind = 'sample' | 'lot' | 'unit' | 'logger' | 'specimen' | 'profile';

/** A code named by a record; `anything` is whatever has a code. */
export interface Reference {
  readonly kind: CodeKind | 'anything';
  readonly code: string;
}

/** Codes of samples, lots and specimens that come into use by the record. They share one name space. */
export function codesGiven(record: RoomRecord): readonly string[] {
  switch (record.record) {
    case 'sample':
    case 'subsample':
    case 'lot':
      return [record.code];
    case 'split':
      return [record.into];
    case 'emergence':
    case 'parasitoid':
    case 'voucher':
      return givenCodes(record);
    default:
      return [];
  }
}

/** What must be there for the record to make sense. */
export function codesNamed(record: RoomRecord): readonly Reference[] {
  switch (record.record) {
    case 'unit':
      return named({logger: record.logger});
    case 'lot': {
      const {sample, from, unit, candidates} = record;
      const mother = from === undefined ? {} : 'lot' in from ? {lot: from.lot} : {specimen: from.specimen};
      return [...named({sample, unit, ...mother}), ...candidates.map(({profile}) => profileNamed(profile))];
    }
    case 'revision': {
      const {lot, specimen, candidates = []} = record;
      return [...named({lot, specimen}), ...candidates.map(({profile}) => profileNamed(profile))];
    }
    case 'subsample':
      return named({sample: record.of});
    case 'rule': {
      const {unit, lot, profile} = record.for;
      return named({unit, lot, profile});
    }
    case 'split':
      return named({lot: record.lot, unit: record.unit});
    case 'voucher':
      return [...named({lot: record.lot, sample: record.sample}), ...named({lot: record.scavengerIn})];
    case 'merge':
      return [...named({lot: record.lot}), {kind: 'lot', code: record.into}];
    case 'note':
      return record.about === undefined ? [] : [{kind: 'anything', code: record.about}];
    default:
      return named({
        sample: 'sample' in record ? record.sample : undefined,
        lot: 'lot' in record ? record.lot : undefined,
        unit: 'unit' in record ? record.unit : undefined,
        logger: 'logger' in record ? record.logger : undefined,
        specimen: 'specimen' in record ? record.specimen : undefined,
      });
  }
}

function named(codes: Readonly<Partial<Record<CodeKind, string | undefined>>>): Reference[] {
  const kinds = ['sample', 'lot', 'unit', 'logger', 'specimen', 'profile'] as const;
  return kinds.flatMap(kind => {
    const code = codes[kind];
    return code === undefined ? [] : [{kind, code}];
  });
}

function profileNamed(code: string): Reference {
  return {kind: 'profile', code};
}
