// Relations: from what was reared to what it was reared from, from parasitoids to hosts, from eggs to their mothers.
import {eventOf} from './events.ts';
import type {ArchiveFacts} from './facts.ts';
import {foundersOf} from './founders.ts';
import {type Origin, originsOf, originsOfLot} from './origins.ts';
import type {RelationshipRow} from './terms.ts';

export function relationshipRows(facts: ArchiveFacts): RelationshipRow[] {
  const {state, idOf, civil} = facts;
  const row = (event: string, resource: string, {how, iri, id}: Origin, on?: string): RelationshipRow => ({
    'dwc:eventID': event,
    'dwc:resourceRelationshipID': idOf({kind: 'relation', from: resource, to: id, how}),
    'dwc:resourceID': resource,
    'dwc:relationshipOfResourceID': iri,
    'dwc:relatedResourceID': id,
    'dwc:relationshipOfResource': how,
    'dwc:relationshipEstablishedDate': on,
  });
  const ofSpecimens = [...state.specimens.values()].flatMap(specimen => {
    const resource = idOf({kind: 'specimen', code: specimen.code});
    return originsOf(specimen, facts).map(origin =>
      row(eventOf(specimen, facts), resource, origin, civil.dayOf(specimen.at)),
    );
  });
  const ofLots = [...state.lots.values()].flatMap(lot => {
    const {code, origin} = lot;
    const event = idOf(origin.kind === 'sample' ? {kind: 'sample', code: origin.code} : {kind: 'lot', code});
    return foundersOf(lot).flatMap(({stage}) =>
      originsOfLot(lot, facts).map(each => row(event, idOf({kind: 'founders', code, stage}), each)),
    );
  });
  return [...ofSpecimens, ...ofLots];
}
