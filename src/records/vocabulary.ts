// The closed word lists of records, for what checks them and for what offers them.

/** What a catch fell into. Only `none` leaves no doubt that the animals are alive. */
export const MEDIUMS = [
  'none',
  'water',
  'water-detergent',
  'brine',
  'glycol',
  'ethanol',
  'isopropanol',
  'ethyl-acetate',
  'chloroform',
  'cyanide',
  'formalin',
  'other',
] as const;

/** How a specimen is made to last. */
export const PREPARATIONS = [
  'pinned',
  'pointed',
  'carded',
  'spread',
  'fluid',
  'slide',
  'papered',
  'dried',
  'frozen',
  'other',
] as const;
