// The order and family that a name belongs to, as far as the name tells.
import type {Profile} from './schema/index.ts';

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

/** What people call them, in the singular and without a blank. Common practice, no source. */
const TRADE_WORDS: Readonly<Record<string, string>> = {
  Lepidoptera: 'moth butterfly caterpillar looper cutworm armyworm hawkmoth skipper',
  Diptera: 'fly midge gnat mosquito maggot hoverfly blowfly housefly bluebottle cranefly beefly mothfly',
  Hymenoptera: 'wasp bee ant sawfly hornet ichneumon chalcid bumblebee horntail',
  Coleoptera: 'beetle weevil ladybird ladybug junebug chafer wireworm',
  Ephemeroptera: 'mayfly',
  Odonata: 'dragonfly damselfly',
  Plecoptera: 'stonefly',
  Trichoptera: 'caddis caddisfly sedge',
  Neuroptera: 'lacewing antlion',
  Hemiptera: 'bug aphid whitefly leafhopper planthopper froghopper cicada psyllid mealybug greenfly blackfly',
  Orthoptera: 'grasshopper cricket locust katydid',
  Thysanoptera: 'thrips',
  Megaloptera: 'alderfly',
  Raphidioptera: 'snakefly',
  Mecoptera: 'scorpionfly',
  Araneae: 'spider',
};

export interface Kin {
  readonly order: string;
  readonly family?: string | undefined;
}

const kinOfName = new Map<string, Kin>(
  Object.entries(FAMILIES).flatMap(([order, families]) => [
    [order.toLowerCase(), {order}] as const,
    ...families.split(' ').map(family => [family.toLowerCase(), {order, family}] as const),
  ]),
);
const orderOfWord = new Map(
  Object.entries(TRADE_WORDS).flatMap(([order, words]) =>
    words.split(' ').map(word => [word, order] as const),
  ),
);

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
  const order = orderOfTradeWords(words);
  return order === undefined ? undefined : {order};
}

/** The genus that a profile is of, or that its species is of, in lower case. */
export function genusOf({classification, rank, name}: Profile): string | undefined {
  if (classification.genus !== undefined) return classification.genus.toLowerCase();
  return rank === 'species' || rank === 'genus' ? wordsOf(name)[0] : undefined;
}

/** A wasp beetle is a beetle, a moth fly a fly, a stone fly a stonefly: the last word says it, with the one before it. */
function orderOfTradeWords(words: readonly string[]): string | undefined {
  const singular = words.map(word =>
    word === 'thrips' ? word : word.replace(/flies$/, 'fly').replace(/s$/, ''),
  );
  for (let last = singular.length - 1; last >= 0; last--) {
    const word = singular[last]!;
    const order = orderOfWord.get(`${singular[last - 1] ?? ''}${word}`) ?? orderOfWord.get(word);
    if (order !== undefined) return order;
  }
  return undefined;
}
