// Rules about how lots begin, divide, join and end.
import type {Instant} from './entry.ts';
import {isHidden} from './fold-lots.ts';
import {whenWritten} from './plain-words.ts';
import type {Fault, Known, Rule} from './rule.ts';
import {beginningOf} from './rules-of-time.ts';
import {total} from './stage.ts';
import type {Lot, RoomState} from './state.ts';

const beginsAfterItWasCollected: Rule = (room, {at, entry: {record}}, known) => {
  if (record.record !== 'lot') return undefined;
  const mother = motherOf(room, record.from);
  if (mother !== undefined && at < mother.from) {
    const what = `the lot begins ${known.civil.iso(at)}, before ${mother.name} (${known.civil.iso(mother.from)})`;
    return {what, mend: 'Correct "at".'};
  }
  const sample = room.samples.get(record.sample ?? '');
  if (sample === undefined || at >= beginningOf(sample.collected.from, known)) return undefined;
  const what = `the lot begins ${known.civil.iso(at)}, before sample ${sample.code} was collected (${sample.collected.from})`;
  return {what, mend: 'Correct "at", or the sample.'};
};

/** Only a sample that met no killing agent or preservative can hold living animals. */
const comesFromALivingSample: Rule = (room, {entry: {record}}) => {
  if (record.record !== 'lot' || record.sample === undefined) return undefined;
  const medium = room.samples.get(record.sample)?.medium ?? 'none';
  if (medium === 'none') return undefined;
  const what = `sample ${record.sample} was caught in ${medium}, which leaves nothing alive`;
  if (medium !== 'water' && medium !== 'water-detergent')
    return {what, mend: 'Correct the sample’s "medium" if that is wrong; else this is no living lot.'};
  if (record.foundAlive === true) return undefined;
  return {
    what: `sample ${record.sample} was caught in ${medium}, where few stay alive`,
    mend: 'Say "foundAlive": true on the lot if these animals were seen alive.',
  };
};

const happensAfterTheLotBegan: Rule = (room, {at, entry: {record}}, known) => {
  const {civil} = known;
  const early = lotsIn(room, record).find(lot => at < lot.startedAt);
  if (early === undefined) return undefined;
  const unborn = beforeItsSample(room, early, at, known);
  if (unborn !== undefined) return unborn;
  const what = `${civil.iso(at)} is before lot ${early.code} began (${civil.iso(early.startedAt)})`;
  return {what, mend: 'Correct "at", or void the lot and enter its beginning anew.'};
};

/** Said of the sample rather than of the lot: nobody had the animals yet. */
function beforeItsSample(room: RoomState, lot: Lot, at: Instant, known: Known): Fault | undefined {
  const sample = room.samples.get(lot.sample);
  if (sample === undefined || at >= beginningOf(sample.collected.from, known)) return undefined;
  const day = known.civil.addDays(known.civil.dayOf(at), -1);
  const entry = room.entries.find(({record}) => record.record === 'sample' && record.code === sample.code);
  const older = entry === undefined ? '' : `: teneral correct ${entry.id} collected.from=${day}`;
  return {
    what: `${whenWritten(known.civil.iso(at))} is before the animals of lot ${lot.code} were collected: sample ${sample.code} is of ${whenWritten(sample.collected.from)}`,
    mend: `Correct "at" (--at), or the sample if it was collected earlier${older}.`,
  };
}

/** What may be said of a lot at any time after it has ended. */
const KNOWN_LATER: ReadonlySet<string> = new Set(['note', 'print', 'revision']);

const happensWhileTheLotIsOpen: Rule = (room, {at, entry: {record}}, {civil}) => {
  if (KNOWN_LATER.has(record.record)) return undefined;
  const over = lotsIn(room, record).find(lot => lot.closed !== undefined && at >= lot.closed.at);
  if (over?.closed === undefined) return undefined;
  const ended = civil.iso(over.closed.at);
  return over.mergedInto === undefined
    ? {what: `lot ${over.code} was closed ${ended}`, mend: 'Void the closing first if the lot still lives.'}
    : {
        what: `lot ${over.code} was merged into ${over.mergedInto} ${ended}`,
        mend: `Record it for ${over.mergedInto}.`,
      };
};

const splitsAnimalsOff: Rule = (_, {entry: {record}}) => {
  if (record.record !== 'split' || total(record.stages) > 0) return undefined;
  return {what: 'no animals are split off', mend: 'Give their number by stage.'};
};

const mergesWithinOneSample: Rule = (room, {entry: {record}}) => {
  if (record.record !== 'merge') return undefined;
  if (record.lot === record.into)
    return {what: `lot ${record.lot} cannot merge into itself`, mend: 'Name two lots.'};
  const from = room.lots.get(record.lot);
  const into = room.lots.get(record.into);
  if (from === undefined || into === undefined || from.sample === into.sample) return undefined;
  const what = `${from.code} comes from sample ${from.sample} and ${into.code} from ${into.sample}; their adults could no longer be traced to one sample`;
  return {what, mend: 'Keep them apart; two lots may live in one unit.'};
};

const closesWithAReason: Rule = (room, {entry: {record}}) => {
  if (record.record !== 'close' || record.reason !== undefined) return undefined;
  const lot = room.lots.get(record.lot);
  if (lot === undefined) return undefined;
  const mend = 'Give the "reason" for closing it.';
  if (isHidden(lot)) return {what: `nobody knows whether lot ${lot.code} still holds animals`, mend};
  const alive = total(lot.alive);
  if (alive === 0) return undefined;
  return {
    what: `${alive} of lot ${lot.code} ${alive === 1 ? 'is' : 'are'} alive as far as anybody knows`,
    mend,
  };
};

/** Each revision gives what changes: together they may ask for what no unit has. */
const needsWhatThereCanBe: Rule = (room, {entry: {record}}) => {
  if (record.record !== 'revision') return undefined;
  const {coolestC, warmestC} = {...room.lots.get(record.lot)?.needs, ...record.needs};
  if (coolestC === undefined || warmestC === undefined || coolestC < warmestC) return undefined;
  return {
    what: `lot ${record.lot} would need to live no cooler than ${coolestC} °C and no warmer than ${warmestC} °C`,
    mend: 'Give both, the cooler one below the other.',
  };
};

export const rulesOfLots: readonly Rule[] = [
  beginsAfterItWasCollected,
  comesFromALivingSample,
  happensAfterTheLotBegan,
  happensWhileTheLotIsOpen,
  splitsAnimalsOff,
  mergesWithinOneSample,
  closesWithAReason,
  needsWhatThereCanBe,
];

type Mother = {readonly name: string; readonly from: number};

function motherOf(room: RoomState, from: {specimen: string} | {lot: string} | undefined): Mother | undefined {
  if (from === undefined) return undefined;
  if ('lot' in from) {
    const lot = room.lots.get(from.lot);
    return lot && {name: `lot ${lot.code} itself began`, from: lot.startedAt};
  }
  const specimen = room.specimens.get(from.specimen);
  return specimen && {name: `${specimen.code} emerged`, from: specimen.at};
}

/** The lots whose life a record is part of; a lot in which eggs were laid is not. */
function lotsIn(room: RoomState, record: object): Lot[] {
  const codes = [
    'lot' in record ? record.lot : undefined,
    'into' in record ? record.into : undefined,
    'about' in record ? record.about : undefined,
  ];
  return codes.flatMap(code => (typeof code === 'string' ? (room.lots.get(code) ?? []) : []));
}
