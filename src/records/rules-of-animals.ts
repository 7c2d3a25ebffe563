// Rules that keep the sum of a lot: no animal counted, emerged or lost that is not there.
import {balanceInWords} from './balance.ts';
import {isHidden} from './fold-lots.ts';
import type {Fault, Rule} from './rule.ts';
import type {RoomRecord} from './schema/index.ts';
import {specimenCount} from './specimen-codes.ts';
import {total} from './stage.ts';
import type {Lot, RoomState} from './state.ts';

/** Hidden animals cannot be counted out; an estimate may prove too low, but not too high without a loss. */
const countsWhatIsAlive: Rule = (room, {entry: {record}}) => {
  if (record.record !== 'count') return undefined;
  const lot = room.lots.get(record.lot);
  if (lot === undefined || isHidden(lot)) return undefined;
  const counted = total(record.stages);
  const alive = total(lot.alive);
  const what = `${counted} counted where ${areAlive(lot)} (${balanceInWords(lot)})`;
  if (counted > alive && lot.counted === 'exact')
    return {what, mend: 'Correct the count, or record the animals found in the same batch.'};
  if (record.complete !== true || counted >= alive) return undefined;
  return {
    what: `all were looked at and ${what}: ${alive - counted} not accounted for`,
    mend: `Eaten by the others, not found, or miscounted? Say --others cannibalised, not-found or miscounted, and --why. Record the loss of ${alive - counted} in the same batch (cause "missing" if nobody knows), or correct the count.`,
  };
};

const takesWhatIsAlive: Rule = (room, {entry: {record}}) => {
  if (!('lot' in record)) return undefined;
  const lot = exactLot(room, record.lot ?? '');
  const taken = takenBy(record);
  if (lot === undefined || taken === undefined) return undefined;
  if (taken.count <= total(lot.alive)) return undefined;
  const hosts =
    record.record === 'emergence' && taken.count > 1
      ? ` If several came out of one as their host, record them as parasitoids: teneral parasitoid ${lot.code} ${taken.count} --hosts 1.`
      : '';
  return {
    what: `${taken.count} ${taken.how} where ${areAlive(lot)} (${balanceInWords(lot)})`,
    mend: `Correct the number, or record the animals found in the same batch.${hosts}`,
  };
};

/** Many out of one animal are not its adults. */
const oneAdultOfOneAnimal: Rule = (_, {entry: {record}}) => {
  if (record.record !== 'emergence' || record.animal === undefined || specimenCount(record) === 1)
    return undefined;
  const count = specimenCount(record);
  return {
    what: `${count} adults of the one animal ${record.animal}, ${count} from one host: parasitoids?`,
    mend: `If they came out of it as their host, record them as "parasitoid": teneral parasitoid ${record.lot} ${count} --animal ${record.animal} --together.`,
  };
};

/** An animal followed by itself ends once. */
const endsOnce: Rule = (room, {entry}) => {
  const {record} = entry;
  if (!endsAnAnimal(record) || record.animal === undefined) return undefined;
  const {animal} = record;
  const lot = room.lots.get(record.lot ?? '');
  const before = lot?.entries.find(
    ({record: other}) => endsAnAnimal(other) && other.lot === record.lot && other.animal === animal,
  );
  if (before === undefined) return undefined;
  const what = `animal ${animal} of lot ${record.lot} has its end already (${before.record.record}, entry ${before.id})`;
  const {record: earlier} = before;
  const moults =
    earlier.record === 'emergence' && earlier.as === 'subimago' && record.record === 'emergence'
      ? `Its moult to the imago adds no animal: teneral imago ${earlier.codes?.[0] ?? 'SPECIMEN'}. Else correct`
      : 'Correct';
  return {what, mend: `${moults} the animal, or void that entry.`};
};

const moultsOnceToImago: Rule = (room, {at, entry: {record}}, {civil}): Fault | undefined => {
  if (record.record !== 'imago') return undefined;
  const specimen = room.specimens.get(record.specimen);
  if (specimen === undefined) return undefined;
  const {code, subimagoAt, imagoAt} = specimen;
  const mend = 'Correct the specimen or the date.';
  if (subimagoAt === undefined) return {what: `${code} was not recorded as a subimago`, mend};
  if (imagoAt !== undefined) return {what: `${code} has been an imago since ${civil.iso(imagoAt)}`, mend};
  if (at < subimagoAt)
    return {what: `${civil.iso(at)} is before ${code} emerged (${civil.iso(subimagoAt)})`, mend};
  return undefined;
};

export const rulesOfAnimals: readonly Rule[] = [
  countsWhatIsAlive,
  oneAdultOfOneAnimal,
  endsOnce,
  takesWhatIsAlive,
  moultsOnceToImago,
];

function exactLot({lots}: RoomState, code: string): Lot | undefined {
  const lot = lots.get(code);
  return lot?.exact === true ? lot : undefined;
}

/** How many animals leave the lot, and how. */
function takenBy(record: RoomRecord): {readonly count: number; readonly how: string} | undefined {
  switch (record.record) {
    case 'emergence':
      return {count: specimenCount(record), how: 'emerged'};
    case 'parasitoid':
      return {count: record.hosts, how: 'parasitised'};
    case 'loss':
      return {count: record.count, how: 'lost'};
    case 'voucher':
      return {count: record.count, how: 'preserved'};
    case 'split':
      return {count: total(record.stages), how: 'split off'};
    default:
      return undefined;
  }
}

function areAlive({alive}: Lot): string {
  return total(alive) === 1 ? '1 is alive' : `${total(alive)} are alive`;
}

type Ending = Extract<RoomRecord, {record: 'emergence' | 'loss' | 'voucher' | 'parasitoid'}>;

function endsAnAnimal(record: RoomRecord): record is Ending {
  if (record.record === 'parasitoid') return record.hosts > 0;
  return record.record === 'emergence' || record.record === 'loss' || record.record === 'voucher';
}
