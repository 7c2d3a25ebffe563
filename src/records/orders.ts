// The order that a name belongs to, where that can be told from the name alone.

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

const orderOfName = new Map(
  Object.entries(FAMILIES).flatMap(([order, families]) =>
    [order, ...families.split(' ')].map(name => [name.toLowerCase(), order] as const),
  ),
);

/** Undefined where no word of the name is an order, or a family, that is known here. */
export function orderOf(taxon: string): string | undefined {
  for (const word of taxon.toLowerCase().split(/[^a-z]+/)) {
    const order = orderOfName.get(word);
    if (order !== undefined) return order;
  }
  return undefined;
}
