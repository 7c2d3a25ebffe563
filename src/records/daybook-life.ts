// Sentences about lots, their animals, and what came out of them.
import {nameIn} from './fold-specimens.ts';
import {materialInWords, needsInWords, whenWritten} from './plain-words.ts';
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
      return voucherSentence(record);
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
      return `specimen ${record.specimen} moulted to the imago${record.exuviae === undefined ? '' : `, ${partWords(record.exuviae)}`}`;
    case 'parasitoid':
      return parasitoidSentence(record);
    case 'identification': {
      const {specimen, rank, by, on} = record;
      const how = [rank, by && `det. ${by}`, on].filter(part => part !== undefined);
      return `specimen ${specimen} identified as ${nameIn(record)}${how.length === 0 ? '' : ` (${how.join(', ')})`}${because(record.note)}`;
    }
    case 'revision': {
      const {taxon, candidates = [], needs, specimen} = record;
      const may = candidates.map(({profile, weight}) => `${profile} ${weight}`);
      const said = [
        ...(taxon === undefined ? [] : [`named ${taxon}`]),
        ...(may.length === 0 ? [] : [`may be ${may.join(', ')}`]),
        ...(needs === undefined
          ? []
          : [`needs ${needs === null ? 'what its profile says' : needsInWords(needs)}`]),
      ];
      const after = specimen === undefined ? '' : `, after ${specimen}`;
      return `lot ${record.lot} ${said.join('; ')}${after}${because(record.why)}`;
    }
    case 'preparation':
      return preparationSentence(record);
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

function voucherSentence(record: RecordOf<'voucher'>): string {
  const {count, stage, taxon, sample, together, animal, scavengerIn} = record;
  const name = taxon === undefined ? '' : ` (${taxon})`;
  const found =
    scavengerIn === undefined
      ? `taken out of sample ${sample} dead and`
      : `found as a scavenger in lot ${scavengerIn} and`;
  const out = sample === undefined ? 'preserved' : `${found} preserved`;
  const vial = together === true && count > 1 ? ' in one vial' : '';
  const codes = coded(record.codes ?? one(record.specimen));
  return `${animalsInWords(count, stage)}${name} ${out}${vial}${single(animal)}${codes}`;
}

function preparationSentence(record: RecordOf<'preparation'>): string {
  const {specimen, method, medium, store, killedAt, agent} = record;
  const killed =
    killedAt === undefined && agent === undefined
      ? undefined
      : `killed${killedAt === undefined ? '' : ` ${whenWritten(killedAt)}`}${agent === undefined ? '' : ` (${agent})`}`;
  const how = [killed, method, medium && `in ${medium}`, store && `kept in ${store}`];
  const said = how.filter(part => part !== undefined);
  return `specimen ${specimen} prepared${said.length === 0 ? '' : `: ${said.join(', ')}`}${because(record.note)}`;
}

function lotBegun(record: RecordOf<'lot'>): string {
  const {code, sample, from, unit, stages, material, counted, within, taxon, needs} = record;
  const origin =
    sample !== undefined
      ? `from sample ${sample}`
      : from === undefined
        ? ''
        : 'lot' in from
          ? `from eggs laid in lot ${from.lot}`
          : `from eggs of ${from.specimen}`;
  const give = within === undefined ? '' : ` ± ${within}`;
  const how = {exact: '', estimated: ` (estimated${give})`, unknown: ' (number unknown)'}[counted];
  const what =
    material === undefined
      ? `${countsInWords(stages ?? {})}${how}`
      : `${materialInWords(material)}, animals hidden`;
  const ask = needs === undefined ? '' : `; they need ${needsInWords(needs)}`;
  return `lot ${code} begun ${origin} in unit ${unit}: ${what}${taxon === undefined ? '' : `, ${taxon}`}${ask}`;
}

function emergenceSentence(record: RecordOf<'emergence'>): string {
  const {adults, as, fate, condition, exuviae, codes, animal} = record;
  const noun = (count: number) => (count === 1 ? as : as === 'subimago' ? 'subimagines' : 'adults');
  const groups = adults.map(({sex, count, fate: own, condition: state}) => {
    const differs = [own, state].filter(part => part !== undefined);
    const said = differs.length === 0 ? '' : ` (${differs.join(', ')})`;
    return `${count}${sex === 'unknown' ? '' : ` ${sex}`} ${noun(count)}${said}`;
  });
  const skin = exuviae === undefined ? '' : `, ${partWords(exuviae)}`;
  const state = [fate === 'kept' ? undefined : fate, condition].filter(part => part !== undefined);
  const after = state.length === 0 ? '' : `, ${state.join(', ')}`;
  return `${listed(groups)} emerged${single(animal)}${after}${skin}${coded(codes)}`;
}

function parasitoidSentence(record: RecordOf<'parasitoid'>): string {
  const {count, taxon, sex, hosts, hostStage, hyper, outOf, remains, cocoon, together, codes, animal} =
    record;
  const name = taxon === undefined ? '' : ` (${taxon})`;
  const kind = hyper === true ? 'hyperparasitoid' : 'parasitoid';
  const noun = `${sex === undefined || sex === 'unknown' ? '' : `${sex} `}${kind}${count === 1 ? '' : 's'}`;
  const host = hosts === 0 ? 'hosts counted before' : animalsInWords(hosts, hostStage);
  const through = outOf === undefined ? '' : ` through ${outOf}`;
  const vial = together === true && count > 1 ? ', in one vial' : '';
  const kept = [remains, cocoon].map(part => (part === undefined ? '' : `, ${partWords(part)}`)).join('');
  return `${count} ${noun}${name} out of ${host}${through}${single(animal)}${vial}${kept}${coded(codes)}`;
}

/** "exuviae 26-031-A-1a" */
export function partWords({code, what = 'exuviae'}: {code: string; what?: string | undefined}): string {
  return `${what.replace('-', ' ')} ${code}`;
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
