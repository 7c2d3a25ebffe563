// The codes that adults, parasitoids and vouchers get where a person gives none.
import type {RecordOf} from './schema/index.ts';

export type SpecimenRecord = RecordOf<'emergence'> | RecordOf<'parasitoid'> | RecordOf<'voucher'>;

const marks = {emergence: '', parasitoid: 'p', voucher: 'v'} as const;

/** How many specimens a record brings. */
export function specimenCount(record: SpecimenRecord): number {
  if (record.record !== 'emergence') return record.count;
  return record.adults.reduce((sum, {count}) => sum + count, 0);
}

/** The codes that a person gave, in order. */
export function givenCodes(record: SpecimenRecord): readonly string[] {
  if (record.codes !== undefined) return record.codes;
  return record.record === 'voucher' && record.specimen !== undefined ? [record.specimen] : [];
}

/** A code for every specimen of the record: those given, then LOT-1 …, LOT-p1 … or LOT-v1 …, never one that is taken. */
export function specimenCodes(record: SpecimenRecord, isTaken: (code: string) => boolean): string[] {
  const count = specimenCount(record);
  const codes = givenCodes(record).slice(0, count);
  if (codes.length === count) return codes;
  const mark = marks[record.record];
  for (let number = 1; codes.length < count; number++) {
    const code = `${record.lot}-${mark}${number}`;
    if (!isTaken(code) && !codes.includes(code)) codes.push(code);
  }
  return codes;
}
