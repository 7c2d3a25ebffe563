// Sentences about lots, their animals, and what came out of them.
import {materialInWords} from './plain-words.ts';
import type {RecordOf, RoomRecord} from './schema/index.ts';
import {animalsInWords, countsInWords, listed} from './stage-words.ts';

/** The sentence of a record about lots or specimens, undefined for any other. */
export function lifeSentence(record: RoomRecord): string | undefined {
  switch (record.record) {
    case 'lot':
      return lotBegun(record);
    case 'count': {
      const all = record.complete === true ? ', all there are' : '';
      return `${countsInWords(record.stages)} counted${all}${single(record.animal)}`;
    }
    case 'check':
      return record.found === 0
        ? 'looked for adults, none out'
        : `looked for adults, ${record.found} found${single(record.animal)}`;
    case 'hatch':
      return `${record.count} hatched`;
    case 'found':
      return `${animalsInWords(record.count, record.stage)} found that nobody knew of${because(record.why)}`;
    case 'loss':
      return `${animalsInWords(record.count, record.stage)} ${causes[record.cause]}${single(record.animal)}${because(record.note)}`;
    case 'voucher':
      return `${animalsInWords(record.count, record.stage)} preserved${single(record.animal)}${coded(record.codes ?? one(record.specimen))}`;
    case 'move':
      return `moved to unit ${record.unit}`;
    case 'split': {
      const unit = record.unit === undefined ? '' : `, into unit ${record.unit}`;
      return `${countsInWords(record.stages)} split off as lot ${record.into}${unit}`;
    }
    case 'merge':
      return `lot ${record.lot} merged into lot ${record.into}`;
    case 'emergence':
      return emergenceSentence(record);
    case 'imago':
      return `specimen ${record.specimen} moulted to the imago`;
    case 'parasitoid':
      return parasitoidSentence(record);
    case 'identification': {
      const {specimen, taxon, rank, by, on} = record;
      const how = [rank, by && `det. ${by}`, on].filter(part => part !== undefined);
      return `specimen ${specimen} identified as ${taxon}${how.length === 0 ? '' : ` (${how.join(', ')})`}${because(record.note)}`;
    }
    case 'print':
      return printSentence(record);
    case 'close':
      return `lot ${record.lot} closed${because(record.reason)}`;
    default:
      return undefined;
  }
}

const causes = {
  dead: 'dead',
  escaped: 'escaped',
  eaten: 'eaten',
  missing: 'missing',
  given: 'given away',
  other: 'lost',
} as const;

function lotBegun({code, sample, from, unit, stages, material, counted, taxon}: RecordOf<'lot'>): string {
  const origin =
    sample !== undefined
      ? `from sample ${sample}`
      : from === undefined
        ? ''
        : 'lot' in from
          ? `from eggs laid in lot ${from.lot}`
          : `from eggs of ${from.specimen}`;
  const how = {exact: '', estimated: ' (estimated)', unknown: ' (number unknown)'}[counted];
  const what =
    material === undefined
      ? `${countsInWords(stages ?? {})}${how}`
      : `${materialInWords(material)}, animals hidden`;
  return `lot ${code} begun ${origin} in unit ${unit}: ${what}${taxon === undefined ? '' : `, ${taxon}`}`;
}

function emergenceSentence(record: RecordOf<'emergence'>): string {
  const {adults, as, fate, condition, exuviae, codes, animal} = record;
  const noun = (count: number) => (count === 1 ? as : as === 'subimago' ? 'subimagines' : 'adults');
  const groups = adults.map(({sex, count}) =>
    sex === 'unknown' ? `${count} ${noun(count)}` : `${count} ${sex} ${noun(count)}`,
  );
  const skin = exuviae === undefined ? '' : `, exuviae ${exuviae.code}`;
  const state = [fate === 'kept' ? undefined : fate, condition].filter(part => part !== undefined);
  const after = state.length === 0 ? '' : `, ${state.join(', ')}`;
  return `${listed(groups)} emerged${single(animal)}${after}${skin}${coded(codes)}`;
}

function parasitoidSentence({count, taxon, hosts, hostStage, codes, animal}: RecordOf<'parasitoid'>): string {
  const name = taxon === undefined ? '' : ` (${taxon})`;
  const noun = count === 1 ? 'parasitoid' : 'parasitoids';
  const host = hosts === 0 ? 'hosts counted before' : animalsInWords(hosts, hostStage);
  return `${count} ${noun}${name} out of ${host}${single(animal)}${coded(codes)}`;
}

function printSentence({labels}: RecordOf<'print'>): string {
  const kinds = [...new Set(labels.map(({kind}) => kind))];
  const codes = [...new Set(labels.flatMap(label => label.for))];
  return `labels printed (${listed(kinds)})${coded(codes)}`;
}

function single(animal: string | undefined): string {
  return animal === undefined ? '' : `, animal ${animal}`;
}

function because(why: string | undefined): string {
  return why === undefined ? '' : `: ${why}`;
}

function one(code: string | undefined): string[] {
  return code === undefined ? [] : [code];
}

function coded(codes: readonly string[] = []): string {
  if (codes.length === 0) return '';
  return codes.length < 4 ? `, ${codes.join(', ')}` : `, ${codes[0]} … ${codes.at(-1)}`;
}
