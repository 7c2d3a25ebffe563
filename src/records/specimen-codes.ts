// The codes that adults, parasitoids and vouchers get where a person gives none.
import type {RecordOf} from './schema/index.ts';

export type SpecimenRecord = RecordOf<'emergence'> | RecordOf<'parasitoid'> | RecordOf<'voucher'>;

const marks = {emergence: '', parasitoid: 'p', voucher: 'v'} as const;

/** How many animals a record brings. */
export function specimenCount(record: SpecimenRecord): number {
  if (record.record !== 'emergence') return record.count;
  return record.adults.reduce((sum, {count}) => sum + count, 0);
}

/** How many codes they have: each its own, or one for a vial that holds them together. */
export function codeCount(record: SpecimenRecord): number {
  return 'together' in record && record.together === true ? 1 : specimenCount(record);
}

/** The codes that a person gave, in order. */
export function givenCodes(record: SpecimenRecord): readonly string[] {
  if (record.codes !== undefined) return record.codes;
  return record.record === 'voucher' && record.specimen !== undefined ? [record.specimen] : [];
}

/**
 * A code for every specimen of the record: those given, then LOT-1 …, LOT-p1 … or LOT-v1 … (SAMPLE-v1 … where it
 * never was in a lot), none that is taken.
 */
export function specimenCodes(record: SpecimenRecord, isTaken: (code: string) => boolean): string[] {
  const count = codeCount(record);
  const codes = givenCodes(record).slice(0, count);
  if (codes.length === count) return codes;
  const mark = marks[record.record];
  const origin = record.record === 'voucher' ? (record.lot ?? record.sample) : record.lot;
  for (let number = 1; codes.length < count; number++) {
    const code = `${origin}-${mark}${number}`;
    if (!isTaken(code) && !codes.includes(code)) codes.push(code);
  }
  return codes;
}
