// Where an animal was when it was found, as far as that says what it may be.

export const SAT = [
  'leaf',
  'mine',
  'rolled-leaf',
  'stem',
  'flower',
  'fruit',
  'seed',
  'gall',
  'bark',
  'wood',
  'soil',
  'litter',
  'dung',
  'carrion',
  'fungus',
  'stored-food',
  'still-water',
  'running-water',
  'web',
  'nest',
  'host',
  'host-egg',
  'aphid-colony',
] as const;

export type Sat = (typeof SAT)[number];

/** Words of a field note that say it too. */
const SAID: readonly (readonly [words: RegExp, sat: Sat])[] = [
  [/\bmines?\b|\bmined\b/i, 'mine'],
  [/\bgalls?\b/i, 'gall'],
  [/\brolled\b|\bspun\b|leaf roll/i, 'rolled-leaf'],
  [/\bbark\b/i, 'bark'],
  [/\bwood\b|\blogs?\b|\bbranch(es)?\b/i, 'wood'],
  [/\bstems?\b|\bstalks?\b|\bshoots?\b/i, 'stem'],
  [/\bflowers?\b|\bbuds?\b/i, 'flower'],
  [/\bfruits?\b|\bberr(y|ies)\b/i, 'fruit'],
  [/\bseeds?\b|\bpods?\b/i, 'seed'],
  [/\bdung\b|\bmanure\b/i, 'dung'],
  [/\bcarrion\b|\bcarcass\b/i, 'carrion'],
  [/\bfung(us|i)\b|\bmushrooms?\b/i, 'fungus'],
  [/\bstreams?\b|\brivers?\b|\bbrooks?\b|\brunning water\b/i, 'running-water'],
  [/\bponds?\b|\bpools?\b|\bditch(es)?\b|\blakes?\b|\bbutts?\b|\bstill water\b/i, 'still-water'],
  [/\blitter\b|\bcompost\b/i, 'litter'],
  [/\bsoil\b|\broots?\b/i, 'soil'],
  [/\bnests?\b/i, 'nest'],
  [/\bwebs?\b/i, 'web'],
  [/\bleaf\b|\bleaves\b|\bfoliage\b/i, 'leaf'],
];

/** Where a field note says that the animals were; undefined where it does not. */
export function satIn(note: string | undefined): Sat | undefined {
  if (note === undefined) return undefined;
  const word = note.trim().toLowerCase().replaceAll(' ', '-');
  return SAT.find(each => each === word) ?? SAID.find(([words]) => words.test(note))?.[1];
}
