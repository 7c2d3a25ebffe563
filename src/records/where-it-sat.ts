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
