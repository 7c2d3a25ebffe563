// What a specimen comes from: the animals that were collected, its host, its field sample.
import type {Lot, RoomState, Specimen} from '../../records/state.ts';
import type {ArchiveFacts} from './facts.ts';
import {foundersOf} from './founders.ts';

export interface Origin {
  /** In words, from the specimen to what it comes from. */
  readonly how: string;
  /** Of the Relation Ontology, where it has the relation. */
  readonly iri?: string;
  readonly of: 'occurrence' | 'event';
  readonly id: string;
}

const RO = 'http://purl.obolibrary.org/obo/RO_';
const relations = {
  'parasitoid of': `${RO}0002208`,
  'hyperparasitoid of': `${RO}0002553`,
  'has host': `${RO}0002454`,
} as const;

/** Nothing for what was taken out of its field sample: it lies in that event. */
export function originsOf(specimen: Specimen, facts: ArchiveFacts): Origin[] {
  const {state, idOf} = facts;
  const lot = state.lots.get(specimen.lot ?? '');
  if (lot === undefined) return [];
  const founders = rootsOf(lot, state).flatMap(root =>
    foundersOf(root).map(({stage}) => idOf({kind: 'founders', code: root.code, stage})),
  );
  const event = {
    how: 'reared from field sample',
    of: 'event',
    id: idOf({kind: 'sample', code: lot.sample}),
  } as const;
  const {kind, hyper, outOf = ''} = specimen;
  const how = kind !== 'parasitoid' ? 'reared from' : hyper === true ? 'hyperparasitoid of' : 'parasitoid of';
  const primary = state.specimens.has(outOf)
    ? [occurrence('parasitoid of', idOf({kind: 'specimen', code: outOf}))]
    : [];
  return [...primary, ...founders.map(id => occurrence(how, id)), event];
}

/** What the founders of a lot come from: their host in the field, or the mother that laid them here. */
export function originsOfLot({code, origin, sample}: Lot, {state, idOf}: ArchiveFacts): Origin[] {
  switch (origin.kind) {
    case 'sample': {
      const carrier = hostCarrier(sample, state);
      return carrier === undefined ? [] : [occurrence('has host', idOf({kind: 'host', code: carrier}))];
    }
    case 'specimen':
      return [
        occurrence('laid by', idOf({kind: 'specimen', code: origin.code})),
        {how: 'descended from field sample', of: 'event', id: idOf({kind: 'sample', code: sample})},
      ];
    case 'lot': {
      const mother = state.lots.get(origin.code);
      if (origin.how === 'split' || mother === undefined || origin.code === code) return [];
      return rootsOf(mother, state).flatMap(root =>
        foundersOf(root).map(({stage}) =>
          occurrence('laid by females reared from', idOf({kind: 'founders', code: root.code, stage})),
        ),
      );
    }
  }
}

function occurrence(how: string, id: string): Origin {
  const iri = how in relations ? relations[how as keyof typeof relations] : undefined;
  return {how, ...(iri === undefined ? {} : {iri}), of: 'occurrence', id};
}

/** The lots in which the animals of a lot began: before it was split off, and those merged into it. */
function rootsOf(lot: Lot, {lots}: RoomState): Lot[] {
  const roots = new Set<Lot>();
  const met = new Set<string>();
  const climb = (one: Lot | undefined) => {
    if (one === undefined || met.has(one.code)) return;
    met.add(one.code);
    if (one.origin.kind === 'lot' && one.origin.how === 'split') climb(lots.get(one.origin.code));
    else roots.add(one);
    for (const {how, fromLot} of one.cohorts) if (how === 'merged') climb(lots.get(fromLot ?? ''));
  };
  climb(lot);
  return [...roots];
}

/** The sample whose host record tells of the host: the whole, where the part has the same. */
function hostCarrier(code: string, {samples}: Pick<RoomState, 'samples'>): string | undefined {
  const sample = samples.get(code);
  if (sample?.host === undefined) return undefined;
  const whole = samples.get(sample.of ?? '');
  return whole?.host === sample.host ? hostCarrier(whole.code, {samples}) : code;
}
