// The order and family that a name belongs to, as far as the name tells.
import type {Profile} from './schema/index.ts';
import {classOfTradeName} from './trade-names.ts';

/** Families that rearing rooms meet, by their order. Handbook knowledge, from memory. */
const FAMILIES: Readonly<Record<string, string>> = {
  Lepidoptera:
    'Pieridae Nymphalidae Lycaenidae Papilionidae Hesperiidae Noctuidae Erebidae Geometridae Sphingidae Saturniidae Lasiocampidae Tortricidae Pyralidae Crambidae Gelechiidae Gracillariidae Nepticulidae Notodontidae Zygaenidae Psychidae Coleophoridae Yponomeutidae Plutellidae Tineidae',
  Diptera:
    'Tachinidae Sarcophagidae Calliphoridae Muscidae Anthomyiidae Phoridae Drosophilidae Agromyzidae Tephritidae Syrphidae Bombyliidae Conopidae Pipunculidae Culicidae Chironomidae Simuliidae Sciaridae Mycetophilidae Cecidomyiidae Tipulidae Fanniidae Chloropidae Asilidae Stratiomyidae Lonchaeidae',
  Hymenoptera:
    'Braconidae Ichneumonidae Chalcididae Pteromalidae Eulophidae Encyrtidae Torymidae Eurytomidae Eupelmidae Trichogrammatidae Mymaridae Aphelinidae Scelionidae Platygastridae Figitidae Cynipidae Bethylidae Dryinidae Tenthredinidae Argidae Diprionidae Apidae Megachilidae Vespidae Formicidae Crabronidae',
  Coleoptera:
    'Carabidae Staphylinidae Coccinellidae Chrysomelidae Curculionidae Scolytidae Cerambycidae Buprestidae Scarabaeidae Dermestidae Tenebrionidae Elateridae Dytiscidae Hydrophilidae Anobiidae Ptinidae Cleridae Silphidae',
  Ephemeroptera: 'Baetidae Heptageniidae Ephemeridae Leptophlebiidae Caenidae Ephemerellidae',
  Odonata: 'Coenagrionidae Lestidae Calopterygidae Aeshnidae Libellulidae Gomphidae Corduliidae',
  Plecoptera: 'Nemouridae Perlidae Perlodidae Leuctridae Capniidae Taeniopterygidae Chloroperlidae',
  Trichoptera: 'Limnephilidae Hydropsychidae Rhyacophilidae Leptoceridae Hydroptilidae Philopotamidae',
  Neuroptera: 'Chrysopidae Hemerobiidae Myrmeleontidae',
  Hemiptera: 'Miridae Pentatomidae Aphididae Cicadellidae Reduviidae Anthocoridae Lygaeidae',
  Orthoptera: 'Acrididae Gryllidae Tettigoniidae',
};

/** Classes between order and family, and orders of which no family is listed. Handbook knowledge, from memory. */
const OTHERS: Readonly<Record<string, string>> = {
  Lepidoptera: 'Papilionoidea Pyraloidea',
  Diptera: 'Calyptratae Brachycera Nematocera Cyclorrhapha',
  Hymenoptera: 'Symphyta Apocrita Aculeata Chalcidoidea Ichneumonoidea Cynipoidea',
  Odonata: 'Anisoptera Zygoptera',
  Hemiptera: 'Heteroptera Auchenorrhyncha Sternorrhyncha',
  Thysanoptera: '',
  Blattodea: '',
  Mantodea: '',
  Phasmatodea: '',
  Dermaptera: '',
  Megaloptera: '',
  Raphidioptera: '',
  Mecoptera: '',
  Araneae: '',
  Opiliones: '',
};

export interface Kin {
  readonly order: string;
  readonly family?: string | undefined;
}

const listed = (names: string) => names.split(' ').filter(name => name !== '');
const kinOfName = new Map<string, Kin>([
  ...[...Object.keys(FAMILIES), ...Object.keys(OTHERS)].map(order => [order.toLowerCase(), {order}] as const),
  ...Object.entries(OTHERS).flatMap(([order, names]) =>
    listed(names).map(name => [name.toLowerCase(), {order}] as const),
  ),
  ...Object.entries(FAMILIES).flatMap(([order, families]) =>
    listed(families).map(family => [family.toLowerCase(), {order, family}] as const),
  ),
]);

/** The order of every family that is listed, both in lower case. */
export const orderOfFamily: ReadonlyMap<string, string> = new Map(
  [...kinOfName].flatMap(([name, {order, family}]) =>
    family === undefined ? [] : [[name, order.toLowerCase()] as const],
  ),
);

/** The order of a class, both in lower case; undefined where it is not listed. */
export function orderOf(name: string): string | undefined {
  return kinOfName.get(name)?.order.toLowerCase();
}

/** The words of a name, in lower case. */
export function wordsOf(taxon: string): string[] {
  return taxon
    .toLowerCase()
    .split(/[^a-z]+/)
    .filter(word => word !== '');
}

/**
 * By an order or family, or an adjective made of one ("a tachinid"); by a genus that a profile knows; by what people
 * call them.
 * @param profiles those that may know the genus
 * @returns undefined where no word of the name says it
 */
export function kinOf(taxon: string, profiles: Iterable<Profile> = []): Kin | undefined {
  const words = wordsOf(taxon);
  for (const word of words) {
    const kin = kinOfName.get(word) ?? kinOfName.get(word.replace(/ids?$/, 'idae'));
    if (kin !== undefined) return kin;
  }
  for (const profile of profiles) {
    const {order, family} = profile.classification;
    if (order !== undefined && words.includes(genusOf(profile) ?? '')) return {order, family};
  }
  return kinOfName.get(classOfTradeName(words)?.toLowerCase() ?? '');
}

/** The genus that a profile is of, or that its species is of, in lower case. */
export function genusOf({classification, rank, name}: Profile): string | undefined {
  if (classification.genus !== undefined) return classification.genus.toLowerCase();
  return rank === 'species' || rank === 'genus' ? wordsOf(name)[0] : undefined;
}
