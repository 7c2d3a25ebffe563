// What people call animals who do not say it in Latin.

/** The narrowest class that is meant, by the word in the singular and without a blank. Common practice, no source. */
const CLASSES: Readonly<Record<string, string>> = {
  Lepidoptera: 'moth caterpillar looper cutworm armyworm hawkmoth',
  Papilionoidea: 'butterfly',
  Diptera: 'fly midge gnat maggot blowfly housefly bluebottle cranefly beefly mothfly',
  Culicidae: 'mosquito',
  Syrphidae: 'hoverfly',
  Hymenoptera: 'wasp bee ant hornet ichneumon bumblebee',
  Chalcidoidea: 'chalcid',
  Symphyta: 'sawfly horntail',
  Coleoptera: 'beetle grub chafer junebug wireworm',
  Coccinellidae: 'ladybird ladybug',
  Curculionidae: 'weevil',
  Ephemeroptera: 'mayfly',
  Odonata: 'dragonfly damselfly',
  Plecoptera: 'stonefly',
  Trichoptera: 'caddis caddisfly',
  Neuroptera: 'lacewing antlion',
  Hemiptera: 'bug cicada',
  Auchenorrhyncha: 'leafhopper planthopper froghopper',
  Sternorrhyncha: 'whitefly psyllid mealybug',
  Aphididae: 'aphid greenfly',
  Acrididae: 'grasshopper locust',
  Gryllidae: 'cricket',
  Tettigoniidae: 'katydid',
  Thysanoptera: 'thrips',
  Blattodea: 'cockroach',
  Mantodea: 'mantid mantis',
  Phasmatodea: 'stickinsect',
  Dermaptera: 'earwig',
  Megaloptera: 'alderfly',
  Raphidioptera: 'snakefly',
  Mecoptera: 'scorpionfly',
  Araneae: 'spider',
  Opiliones: 'harvestman',
};

const classOfWord = new Map(
  Object.entries(CLASSES).flatMap(([name, words]) => words.split(' ').map(word => [word, name] as const)),
);

/**
 * The class that a name in plain words means. The last word says it, with the one before it: a wasp beetle is a beetle,
 * a moth fly a fly, a stone fly a stonefly.
 * @param words in lower case
 */
export function classOfTradeName(words: readonly string[]): string | undefined {
  for (let last = words.length - 1; last >= 0; last--) {
    const word = words[last]!;
    const meant = singular(`${words[last - 1] ?? ''}${word}`) ?? singular(word);
    if (meant !== undefined) return meant;
  }
  return undefined;
}

function singular(word: string): string | undefined {
  return [word, word.replace(/s$/, ''), word.replace(/ies$/, 'y')]
    .map(one => classOfWord.get(one))
    .find(meant => meant !== undefined);
}
