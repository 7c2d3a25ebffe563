// An adult that was entered as a lot's own and is no animal of its kind: what it is stands in its place, under its code.
import type {Civil} from '../records/civil.ts';
import {Refusal} from '../records/refusal.ts';
import type {RecordOf} from '../records/schema/index.ts';
import {total} from '../records/stage.ts';
import type {Lot, RoomState, Specimen} from '../records/state.ts';

export const STRANGERS = ['parasitoid', 'scavenger'] as const;
export type Stranger = (typeof STRANGERS)[number];

/**
 * The records that make of an adult a parasitoid, or a scavenger that came out beside the lot's animals. The adults
 * entered together with it stay as they are, and all keep their codes.
 * @throws Refusal where it is no adult of a lot
 */
export function strangerRecords(
  code: string,
  as: Stranger,
  taxon: string,
  {specimens, entries, lots}: Pick<RoomState, 'specimens' | 'entries' | 'lots'>,
  civil: Civil,
): object[] {
  const specimen = specimens.get(code);
  const entry = entries.find(({id}) => id === specimen?.entry);
  if (specimen === undefined || entry?.record.record !== 'emergence')
    throw new Refusal(
      specimen === undefined ? `there is no specimen ${code}` : `${code} is no adult of a lot`,
      `--${as}`,
      'Name an adult that was entered as one of a lot; teneral list specimens shows them.',
    );
  const wrong = entry.record;
  const others = withoutIt(wrong, code, specimen, civil);
  const right = {
    ...(as === 'parasitoid' ? parasitoidOf : scavengerOf)(wrong, specimen, civil),
    ...{at: wrong.at, taxon},
    ...(others === undefined ? {replaces: entry.id} : {}),
  };
  return [
    {record: 'void', entry: entry.id, reason: `${code} is a ${as}`},
    ...(others === undefined ? [] : [{...others, replaces: entry.id}]),
    right,
    ...(as === 'scavenger' ? ofItsAnimal(wrong, specimen, lots.get(wrong.lot)) : []),
  ];
}

/** The animal that it was taken for is alive again; in a lot that was closed because none was, nobody knows its end. */
function ofItsAnimal(
  {lot, at, animal}: RecordOf<'emergence'>,
  {code}: Specimen,
  home: Lot | undefined,
): object[] {
  if (home?.closed === undefined || total(home.alive) > 0) return [];
  const known = animal === undefined ? {} : {animal};
  return [{record: 'loss', lot, count: 1, cause: 'missing', at, note: `${code} was a scavenger`, ...known}];
}

/** The emergence of those entered together with it; undefined where it was alone. */
function withoutIt(
  {key, recordedAt, ...wrong}: RecordOf<'emergence'>,
  code: string,
  {since}: Specimen,
  civil: Civil,
): object | undefined {
  const index = wrong.codes?.indexOf(code) ?? 0;
  let before = 0;
  const left = wrong.adults.flatMap(group => {
    const isIn = before <= index && index < before + group.count;
    before += group.count;
    const count = isIn ? group.count - 1 : group.count;
    return count === 0 ? [] : [{...group, count}];
  });
  if (left.length === 0) return undefined;
  return {
    ...wrong,
    adults: left,
    codes: wrong.codes?.toSpliced(index, 1),
    ...(since === undefined ? {} : {since: civil.iso(since)}),
    sure: true,
  };
}

function parasitoidOf(
  {lot, animal, exuviae}: RecordOf<'emergence'>,
  specimen: Specimen,
  civil: Civil,
): object {
  const {code, sex, since} = specimen;
  return {
    ...{record: 'parasitoid', lot, count: 1, codes: [code]},
    ...(animal === undefined ? {} : {animal}),
    ...(sex === undefined ? {} : {sex}),
    ...(since === undefined ? {} : {since: civil.iso(since)}),
    ...(exuviae === undefined ? {} : {remains: exuviae}),
  };
}

function scavengerOf({lot}: RecordOf<'emergence'>, {code, sample, sex}: Specimen): object {
  return {
    ...{record: 'voucher', sample, stage: 'adult', specimen: code, scavengerIn: lot},
    ...(sex === undefined ? {} : {sex}),
  };
}
