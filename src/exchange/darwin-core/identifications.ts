// Who named a specimen, when and how surely: the present name on its record, the earlier ones as a list.

import {nameIn} from '../../records/fold-specimens.ts';
import type {RecordOf} from '../../records/schema/index.ts';
import type {Specimen} from '../../records/state.ts';
import {partsOfName} from './names.ts';
import {listOf, type OccurrenceRow} from './terms.ts';

type Identification = RecordOf<'identification'>;

export function identificationOf({taxon, identifications}: Specimen): OccurrenceRow {
  const all = identifications.flatMap(({record, by}) =>
    record.record === 'identification' ? [{...record, by: record.by ?? by}] : [],
  );
  const last = all.at(-1);
  const {scientificName, qualifier, rank, verbatim} = partsOfName(taxon, last?.rank);
  return {
    'dwc:scientificName': scientificName,
    'dwc:taxonRank': rank,
    'dwc:verbatimIdentification': verbatim,
    'dwc:identificationQualifier': qualifier,
    'dwc:identifiedBy': last?.by,
    'dwc:dateIdentified': last === undefined ? undefined : dayOf(last),
    'dwc:identificationRemarks':
      last === undefined ? (taxon === undefined ? undefined : 'name of its lot') : last.note,
    'dwc:previousIdentifications': listOf(all.slice(0, -1).map(earlierWords)),
  };
}

function dayOf({on, at}: Identification): string | undefined {
  return on ?? at?.slice(0, 10);
}

function earlierWords(identification: Identification & {readonly by: string}): string {
  const day = dayOf(identification);
  return `${nameIn(identification)} (det. ${identification.by}${day === undefined ? '' : `, ${day}`})`;
}
