// Occurrences: the animals as they were collected, what came out of them, their hosts, and what was caught beside them.
import {keptParts} from '../../records/kept-parts.ts';
import type {Lot, Sample, Specimen} from '../../records/state.ts';
import {eventOf, remarks} from './events.ts';
import type {ArchiveFacts} from './facts.ts';
import {foundersOf, HIDDEN} from './founders.ts';
import {identificationOf} from './identifications.ts';
import {isLatin, partsOfName} from './names.ts';
import {type Origin, originsOf} from './origins.ts';
import {listOf, type OccurrenceRow} from './terms.ts';

export function occurrenceRows(facts: ArchiveFacts): OccurrenceRow[] {
  const {state} = facts;
  const writers = new Map(state.entries.map(({id, by}) => [id, by]));
  const rows = [
    ...[...state.lots.values()].flatMap(lot => founders(lot, facts)),
    ...[...state.specimens.values()].map(specimen => found(specimen, facts, writers)),
    ...[...state.samples.values()].flatMap(sample => [...host(sample, facts), ...bycatch(sample, facts)]),
  ];
  return rows.map(row => ({
    'dcterms:license': facts.licence,
    // Before 2026-05-26 the word was "present"; readers accept both.
    'dwc:occurrenceStatus': 'detected',
    ...row,
  }));
}

/** What was collected, or laid here, and began a lot: one record for every stage. Lots split off began elsewhere. */
function founders(lot: Lot, facts: ArchiveFacts): OccurrenceRow[] {
  const {idOf, state} = facts;
  const {code, origin, counted, within, material, taxon} = lot;
  const sample = state.samples.get(lot.sample);
  const isCollected = origin.kind === 'sample';
  return foundersOf(lot).map(({stage, count, instars}) => ({
    'dwc:eventID': idOf(isCollected ? {kind: 'sample', code: origin.code} : {kind: 'lot', code}),
    'dwc:occurrenceID': idOf({kind: 'founders', code, stage}),
    'dwc:basisOfRecord': 'LivingSpecimen',
    'dwc:recordNumber': code,
    'dwc:recordedBy': isCollected ? listOf(sample?.collectors ?? []) : undefined,
    'dwc:individualCount': count?.toString(),
    'dwc:lifeStage': stage === HIDDEN ? undefined : stage,
    'dwc:vitality': 'alive',
    'dwc:degreeOfEstablishment': isCollected ? undefined : 'captive',
    ...nameTerms(partsOfName(taxon)),
    'dwc:associatedTaxa': sample?.host === undefined ? undefined : quoted('host', sample.host),
    'dwc:occurrenceRemarks': remarks([
      instars,
      counted === 'estimated'
        ? `number estimated${within === undefined ? '' : `, within ${within}`}`
        : undefined,
      counted === 'unknown' ? 'number unknown' : undefined,
      material === undefined
        ? undefined
        : `hidden in ${material.amount} ${material.unit} of ${material.what}`,
    ]),
  }));
}

/** An adult, a parasitoid or a voucher. */
function found(specimen: Specimen, facts: ArchiveFacts, writers: ReadonlyMap<string, string>): OccurrenceRow {
  const {idOf, state} = facts;
  const {code, kind, lot, sample, sex, fate, condition, individuals, animal} = specimen;
  const parts = keptParts(specimen);
  return {
    'dwc:eventID': eventOf(specimen, facts),
    'dwc:occurrenceID': idOf({kind: 'specimen', code}),
    'dwc:basisOfRecord': basisOf(specimen),
    'dwc:catalogNumber': code,
    'dwc:otherCatalogNumbers': listOf(parts.map(part => part.code)),
    'dwc:recordNumber': lot ?? sample,
    'dwc:recordedBy':
      lot === undefined ? listOf(state.samples.get(sample)?.collectors ?? []) : writers.get(specimen.entry),
    'dwc:individualCount': String(individuals),
    'dwc:sex': sex === 'female' || sex === 'male' ? sex : undefined,
    'dwc:lifeStage': lifeStageOf(specimen),
    'dwc:vitality': fate === 'dead' || lot === undefined ? 'dead' : 'alive',
    'dwc:degreeOfEstablishment': lot === undefined ? undefined : 'captive',
    'dwc:organismID':
      animal === undefined || lot === undefined ? undefined : idOf({kind: 'animal', code: lot, animal}),
    ...identificationOf(specimen),
    ...preparationOf(specimen),
    'dwc:verbatimLabel': labelsOf(specimen),
    ...associationsOf(specimen, facts),
    'dwc:occurrenceRemarks': remarks([
      kind === 'adult' ? 'reared' : undefined,
      condition === undefined ? undefined : `condition: ${condition}`,
      fate === 'released' ? 'released' : undefined,
      ...parts.map(part =>
        part.association === undefined
          ? undefined
          : `association of ${part.code}: ${ASSOCIATION[part.association]}`,
      ),
    ]),
  };
}

const ASSOCIATION: Readonly<Record<number, string>> = {
  1: 'the same animal',
  2: 'the same container and day',
  3: 'the same lot',
  4: 'assumed',
};

/** Preserved once that is known of it: killed, found dead, prepared, labelled or a voucher. */
function basisOf({kind, fate, preparations, printed}: Specimen): string {
  if (fate === 'released') return 'HumanObservation';
  const isPreserved =
    kind === 'voucher' || fate === 'killed' || fate === 'dead' || preparations.length + printed.length > 0;
  return isPreserved ? 'PreservedSpecimen' : 'LivingSpecimen';
}

function lifeStageOf({kind, stage, subimagoAt, imagoAt}: Specimen): string | undefined {
  if (kind === 'voucher') return stage?.split('-')[0];
  return subimagoAt !== undefined && imagoAt === undefined ? 'subimago' : 'adult';
}

function preparationOf(specimen: Specimen): OccurrenceRow {
  const {preparations} = specimen;
  const done = preparations.flatMap(({record}) => (record.record === 'preparation' ? [record] : []));
  return {
    'dwc:preparations': listOf([
      ...done.map(({method, medium}) => listed([method, medium])),
      ...keptParts(specimen).map(({what, usual, code}) => `${what ?? usual} ${code}`),
    ]),
    'dwc:disposition': done.some(({store}) => store !== undefined) ? 'in collection' : undefined,
  };
}

function listed(parts: readonly (string | undefined)[]): string {
  return parts.filter(part => part !== undefined).join(', ');
}

/** As printed, lines parted by slashes; of every kind the newest. */
function labelsOf({printed}: Specimen): string | undefined {
  const newest = new Map(printed.map(({kind, text}) => [kind, text.join(' / ')]));
  return listOf([...newest.values()]);
}

/** In flat words, for readers that follow no relations. */
function associationsOf(specimen: Specimen, facts: ArchiveFacts): OccurrenceRow {
  const {kind, hyper, outOf, lot} = specimen;
  const {state} = facts;
  const plant = state.samples.get(specimen.sample)?.host;
  const animal =
    kind === 'parasitoid' ? (hyper === true ? outOf : state.lots.get(lot ?? '')?.taxon) : undefined;
  const origins = originsOf(specimen, facts).filter(({of}) => of === 'occurrence');
  return {
    'dwc:associatedTaxa': listOf([
      animal === undefined
        ? undefined
        : quoted(hyper === true ? 'hyperparasitoid of' : 'parasitoid of', animal),
      plant === undefined ? undefined : quoted('host', plant),
    ]),
    'dwc:associatedOccurrences': listOf(origins.map(({how, id}: Origin) => quoted(how, id))),
  };
}

/** The host of a field sample: a plant or an animal of its own. */
function host({code, host: name, hostPart, of}: Sample, {idOf, state}: ArchiveFacts): OccurrenceRow[] {
  if (name === undefined || state.samples.get(of ?? '')?.host === name) return [];
  return [
    {
      'dwc:eventID': idOf({kind: 'sample', code}),
      'dwc:occurrenceID': idOf({kind: 'host', code}),
      'dwc:basisOfRecord': 'HumanObservation',
      'dwc:recordNumber': code,
      'dwc:scientificName': isLatin(name.split(' ').slice(0, 2)) ? name : undefined,
      'dwc:verbatimIdentification': name,
      'dwc:occurrenceRemarks': remarks([
        'host of the animals collected',
        hostPart === undefined ? undefined : `part: ${hostPart}`,
      ]),
    },
  ];
}

function bycatch({code, of, bycatch}: Sample, {idOf, state}: ArchiveFacts): OccurrenceRow[] {
  const inherited = new Set(state.samples.get(of ?? '')?.bycatch.map(({entry}) => entry));
  return bycatch
    .filter(({entry}) => !inherited.has(entry))
    .map(({what, kind, count, alive, done, entry}) => {
      const {scientificName, rank} = partsOfName(what);
      const isNamed = scientificName !== 'Arthropoda' || kind === 'arthropod';
      return {
        'dwc:eventID': idOf({kind: 'sample', code}),
        'dwc:occurrenceID': idOf({kind: 'bycatch', code: entry}),
        'dwc:basisOfRecord': 'HumanObservation',
        'dwc:recordNumber': code,
        'dwc:individualCount': String(count),
        'dwc:vitality': alive === undefined ? 'notAssessed' : alive ? 'alive' : 'dead',
        'dwc:scientificName': isNamed ? scientificName : 'Animalia',
        'dwc:taxonRank': isNamed ? rank : 'kingdom',
        'dwc:verbatimIdentification': what,
        'dwc:occurrenceRemarks': `by-catch (${kind.replace('-', ' ')}): ${done}`,
      };
    });
}

function nameTerms({
  scientificName,
  rank,
  qualifier,
  verbatim,
}: ReturnType<typeof partsOfName>): OccurrenceRow {
  return {
    'dwc:scientificName': scientificName,
    'dwc:taxonRank': rank,
    'dwc:verbatimIdentification': verbatim,
    'dwc:identificationQualifier': qualifier,
  };
}

/** A pair of a relation and what it is to, as Darwin Core writes associatedTaxa. */
function quoted(how: string, what: string): string {
  return `"${how}":"${what}"`;
}
