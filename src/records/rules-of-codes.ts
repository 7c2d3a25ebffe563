// Rules about codes: what is named must be there, and no code is given twice.
import {codesNamed, type Reference} from './codes.ts';
import {nearest} from './nearest.ts';
import type {Fault, Known, Rule} from './rule.ts';
import {codeCount, givenCodes} from './specimen-codes.ts';
import type {RoomState} from './state.ts';

/** Every code the record names is in the room, given what the rest of its batch brings. */
export const namesWhatIsThere: Rule = (room, {entry}, known) => {
  for (const reference of codesNamed(entry.record)) {
    const places = placesOf(room, known, reference);
    if (!places.some(place => place.has(reference.code))) return unknownCode(reference, places);
  }
  return undefined;
};

const asManyCodesAsSpecimens: Rule = (_, {entry: {record}}) => {
  if (record.record !== 'emergence' && record.record !== 'parasitoid' && record.record !== 'voucher')
    return undefined;
  if (record.codes === undefined || record.codes.length === codeCount(record)) return undefined;
  const what = `${record.codes.length} codes for ${codeCount(record)} specimens`;
  return {what, mend: 'Give one code for each, or leave "codes" out.'};
};

const noCodeTwiceInOneRecord: Rule = (_, {entry: {record}}) => {
  if (record.record !== 'emergence' && record.record !== 'parasitoid' && record.record !== 'voucher')
    return undefined;
  const codes = givenCodes(record);
  const twice = codes.find((code, index) => codes.indexOf(code) < index);
  if (twice === undefined) return undefined;
  return {what: `the code ${twice} is given twice`, mend: 'Give every specimen a code of its own.'};
};

/** A later record of a unit or logger gives what changes; the first has nothing to change yet. */
const firstSaysWhatItIs: Rule = (room, {entry: {id, record}}) => {
  if (record.record !== 'unit' && record.record !== 'logger') return undefined;
  const isNeeded = record.record === 'unit' ? {type: record.type, place: record.place} : {kind: record.kind};
  const missing = Object.entries(isNeeded).flatMap(([field, value]) => (value === undefined ? [field] : []));
  if (missing.length === 0) return undefined;
  const first = room.entries.find(
    ({record: other}) => other.record === record.record && other.code === record.code,
  );
  if (first?.id !== id) return undefined;
  const what = `${record.record} ${record.code} is new and stands without its ${missing.join(' and its ')}`;
  return {what, mend: `Give "${missing.join('" and "')}", or correct the code.`};
};

/** Held only when labels are printed: that the entry of a specimen is void later takes back no label. */
const printsForItsOwnSpecimens: Rule = (room, {entry: {record}}) => {
  if (record.record !== 'print') return undefined;
  const codes = record.labels.flatMap(label => label.for);
  const own = new Set((room.lots.get(record.lot ?? '') ?? room.samples.get(record.sample ?? ''))?.specimens);
  const stranger = codes.find(code => !own.has(code));
  if (stranger === undefined) return undefined;
  return {
    what: `${record.lot === undefined ? 'sample' : 'lot'} ${record.lot ?? record.sample} has no specimen ${stranger}`,
    mend: 'Name its own specimens; every lot has a record of its own.',
  };
};

const replacesWhatIsVoid: Rule = (room, {entry: {record}}) => {
  const {replaces} = record;
  if (replaces === undefined || room.voided.has(replaces)) return undefined;
  const known = room.history.some(({id}) => id === replaces);
  return {
    what: known ? `entry ${replaces} still counts` : `there is no entry ${replaces} to replace`,
    mend: known ? `Void entry ${replaces} in the same batch.` : 'Correct "replaces".',
  };
};

export const rulesOfCodes: readonly Rule[] = [
  namesWhatIsThere,
  firstSaysWhatItIs,
  asManyCodesAsSpecimens,
  noCodeTwiceInOneRecord,
  printsForItsOwnSpecimens,
  replacesWhatIsVoid,
];

type Place = Pick<ReadonlyMap<string, unknown>, 'has' | 'keys'>;

function placesOf(room: RoomState, {profiles}: Known, {kind}: Reference): readonly Place[] {
  const {samples, lots, units, loggers, specimens} = room;
  switch (kind) {
    case 'sample':
      return [samples];
    case 'lot':
      return [lots];
    case 'unit':
      return [units];
    case 'logger':
      return [loggers];
    case 'specimen':
      return [specimens];
    case 'profile':
      return [room.profiles, profiles];
    case 'anything':
      return [lots, units, samples, specimens, loggers];
  }
}

function unknownCode({kind, code}: Reference, places: readonly Place[]): Fault {
  const vial = kind === 'lot' ? vialOf(code, places) : undefined;
  if (vial !== undefined)
    return {
      what: `there is no lot ${code}`,
      mend: `For one animal of lot ${vial.lot} name the lot, and say --animal ${vial.animal} ("animal": "${vial.animal}").`,
    };
  const near = nearest(
    code,
    places.flatMap(place => [...place.keys()]),
  );
  const what = kind === 'anything' ? `nothing has the code ${code}` : `there is no ${kind} ${code}`;
  const known = near === undefined ? '' : `Nearest known is ${near}. `;
  const thing = kind === 'anything' ? 'what it is about' : `the ${kind}`;
  return {what, mend: `${known}Correct the code, or record ${thing} first or in the same batch.`};
}

/** A vial is labelled with its lot and the number of its animal. */
function vialOf(code: string, places: readonly Place[]): {lot: string; animal: string} | undefined {
  const [, lot = '', animal = ''] = /^(.+)-(\d{1,4})$/.exec(code) ?? [];
  return places.some(place => place.has(lot)) ? {lot, animal} : undefined;
}
