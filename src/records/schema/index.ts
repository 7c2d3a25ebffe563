// Every record that a room accepts, its type, and its check.
import * as z from 'zod';
import {Refusal} from '../refusal.ts';
import * as care from './care.ts';
import * as daybook from './daybook.ts';
import * as instruments from './instruments.ts';
import * as labels from './labels.ts';
import * as lots from './lots.ts';
import * as profile from './profile.ts';
import * as samples from './samples.ts';
import * as settings from './settings.ts';
import * as specimens from './specimens.ts';
import * as units from './units.ts';
import {refusalFor} from './wording.ts';

const schemas = {
  logger: instruments.logger,
  unit: units.unit,
  sample: samples.sample,
  subsample: samples.subsample,
  bycatch: samples.bycatch,
  sorting: samples.sorting,
  lot: lots.lot,
  reading: instruments.reading,
  extremes: instruments.extremes,
  water: instruments.water,
  mask: instruments.mask,
  count: lots.count,
  check: lots.check,
  hatch: lots.hatch,
  found: lots.found,
  loss: lots.loss,
  voucher: lots.voucher,
  move: lots.move,
  split: lots.split,
  merge: lots.merge,
  emergence: lots.emergence,
  imago: lots.imago,
  parasitoid: lots.parasitoid,
  identification: lots.identification,
  revision: lots.revision,
  preparation: specimens.preparation,
  print: labels.print,
  rule: care.rule,
  calendar: units.calendar,
  person: units.person,
  setting: settings.setting,
  care: care.care,
  skip: care.skip,
  acknowledge: care.acknowledge,
  note: daybook.note,
  close: lots.close,
  void: daybook.voiding,
} as const;

/** A profile's form follows from what it says: one taxon, how a group varies, or that no date can be given. */
const profileSchema = (value: object): z.ZodType<Profile> => {
  if ('variation' in value) return profile.groupProfile;
  return 'undated' in value ? profile.undatedProfile : profile.taxonProfile;
};

export type TaxonProfile = z.infer<typeof profile.taxonProfile>;
export type GroupProfile = z.infer<typeof profile.groupProfile>;
/** A group of which nothing can be said in days. */
export type UndatedProfile = z.infer<typeof profile.undatedProfile>;
export type Profile = TaxonProfile | GroupProfile | UndatedProfile;

type Schemas = typeof schemas;
/** The kinds of record, with the type of each once its defaults are filled in. */
export type RecordOf<Kind extends keyof Schemas> = z.infer<Schemas[Kind]>;
export type RecordKind = keyof Schemas | 'profile';
/** One record as checked. Instants still stand as they were given. */
export type RoomRecord = {[Kind in keyof Schemas]: RecordOf<Kind>}[keyof Schemas] | Profile;

/**
 * Check one record that came from outside.
 * @param where how to name it to a person, such as "records.json, record 3"
 * @throws Refusal naming the field, what was expected, and what stands there
 */
export function parseRecord(value: unknown, where: string): RoomRecord {
  const kind = kindOf(value, where);
  const schema: z.ZodType<RoomRecord> = kind === 'profile' ? profileSchema(value as object) : schemas[kind];
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  throw refusalFor(result.error, value, where === '' ? kind : `${where} (${kind})`);
}

/** The JSON Schema of all records, for other programs. */
export function jsonSchema(): object {
  const all = [...Object.values(schemas), profile.taxonProfile, profile.groupProfile, profile.undatedProfile];
  return z.toJSONSchema(z.union(all), {io: 'input', unrepresentable: 'any'});
}

function kindOf(value: unknown, where: string): RecordKind {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new Refusal('a record is an object in braces', where, 'Write it as {"record": "…", …}.');
  const kind: unknown = 'record' in value ? value.record : undefined;
  if (typeof kind === 'string' && (kind === 'profile' || Object.hasOwn(schemas, kind)))
    return kind as RecordKind;
  const said = kind === undefined ? 'the field "record" is missing' : `there is no record "${String(kind)}"`;
  throw new Refusal(said, where, `Known are ${Object.keys(schemas).join(', ')} and profile.`);
}
