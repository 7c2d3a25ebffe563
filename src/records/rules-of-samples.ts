// Rules about field samples: a method has its own fields, and nothing is taken out before it was collected.
import {methods, type TrapField, trapFieldsOf} from './methods.ts';
import type {Rule} from './rule.ts';
import {beginningOf} from './rules-of-time.ts';

const fieldsOfItsMethod: Rule = (_, {entry: {record}}) => {
  if (record.record !== 'sample' || record.trap === undefined) return undefined;
  const allowed = trapFieldsOf(record.method);
  const wrong = Object.keys(record.trap).find(field => !allowed.includes(field as TrapField));
  if (wrong === undefined) return undefined;
  const {words} = methods[record.method];
  return {
    what: `"${wrong}" says nothing about a sample by ${words}`,
    mend: allowed.length === 0 ? 'Leave it out.' : `It has ${allowed.join(', ')}.`,
  };
};

const emptiedWhileItStood: Rule = (_, {entry: {record}}, known) => {
  if (record.record !== 'sample' || record.trap?.lastEmptied === undefined) return undefined;
  const {from, to = from} = record.collected;
  const {lastEmptied} = record.trap;
  const at = beginningOf(lastEmptied, known);
  if (beginningOf(from, known) <= at && at <= beginningOf(to, known)) return undefined;
  const what = `emptied before on ${lastEmptied}, when the trap did not stand (${from} to ${to})`;
  return {what, mend: 'Correct "trap.lastEmptied" or "collected".'};
};

const afterItWasCollected: Rule = (room, {at, entry: {record}}, known) => {
  const isAbout = record.record === 'bycatch' || record.record === 'sorting' || record.record === 'voucher';
  const sample = isAbout ? room.samples.get(record.sample ?? '') : undefined;
  if (sample === undefined || at >= beginningOf(sample.collected.from, known)) return undefined;
  const what = `${known.civil.iso(at)} is before sample ${sample.code} was collected (${sample.collected.from})`;
  return {what, mend: 'Correct "at", or the sample.'};
};

const adultsOfALotEmerge: Rule = (_, {entry: {record}}) => {
  if (record.record !== 'voucher' || record.lot === undefined || record.stage !== 'adult') return undefined;
  return {
    what: `an adult of lot ${record.lot} is no immature preserved`,
    mend: 'Record it as "emergence", with the fate "killed".',
  };
};

export const rulesOfSamples: readonly Rule[] = [
  fieldsOfItsMethod,
  emptiedWhileItStood,
  afterItWasCollected,
  adultsOfALotEmerge,
];
